using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Records;
using HerdBot.App.Settings;
using HerdBot.Core.Events;
using HerdBot.Host.Commands;
using HerdBot.Host.Composition;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support;
using HerdBot.Tests.Support.FakeBotApi;
using HerdBot.Tests.Support.StoreDisk;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Xunit;

namespace HerdBot.Tests.Host.Program;

/// <summary>The real program in a process of its own, killed with SIGKILL while people write.</summary>
[Trait("Category", "Kill")]
public sealed class KillTests
{
    private const int MessagesALife = 30;
    private const int QuietTicks = 150;
    private static readonly int Kills = LongRun.Of("HERDBOT_KILLS", 10);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("herdbot-kill-");
    private readonly List<int> said = [];
    private int struckAtWork;

    [Fact]
    public async Task Kills_in_the_middle_of_the_work_lose_no_message_and_record_none_twice()
    {
        await using var fake = await FakeBotApi.StartAsync(time: SystemClocks.Real);
        var chance = new Chance(20270418);
        var (group, home) = (fake.Group(), fake.Private(ProgramRig.Ana));
        RealProgram.WriteSettings(folder, fake);

        for (var kill = 1; kill <= Kills; kill++)
        {
            await using var program = RealProgram.Serve(folder);
            if (kill == 1)
            {
                await MoveInAsync(program, fake, group, home);
            }
            await fake.WaitForAsync(it => it.CallsOf("getMe").Count >= kill && it.Polled);
            await LiveAsync(fake, group, kill * MessagesALife, changes: 1 + chance.Below(60), burst: kill % 2 == 0);
            await program.KillAsync();
            SayUpTo(fake, group, kill * MessagesALife);
        }
        await FinishAsync(fake);
        var heard = await HeardAsync(group);

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{said.Count} said, {heard.Count} in the history, {heard.Distinct().Count()} different ones; {Kills} kills, {struckAtWork} of them before everything said so far was confirmed.");
        said.Should().HaveCount(Kills * MessagesALife);
        heard.Should().OnlyHaveUniqueItems("no message may count twice");
        heard.Should().BeEquivalentTo(said.Select(message => TelegramIds.MessageOf(group.Id, message)), "none may be lost");
        struckAtWork.Should().BePositive("kills that only ever strike an idle program show nothing");
        folder.Delete(recursive: true);
    }

    private static async Task MoveInAsync(RealProgram program, FakeBotApi fake, FakeChat group, FakeChat home)
    {
        fake.Say(home, ProgramRig.Ana, $"/start {await program.SetUpCodeAsync()}");
        await fake.WaitForAsync(it => it.Sent.Count == 1);
        fake.Add(group, ProgramRig.Ana);
        await fake.WaitForAsync(it => it.Sent.Count == 2);
    }

    /// <summary>
    /// People write, half of it at once and the rest at every sign of life, until so many of those were seen or all is
    /// quiet; or all the rest at once, right before the end.
    /// </summary>
    private async Task LiveAsync(FakeBotApi fake, FakeChat group, int upTo, int changes, bool burst)
    {
        SayUpTo(fake, group, upTo - (MessagesALife / 2));
        using var look = new PeriodicTimer(TimeSpan.FromMilliseconds(1), SystemClocks.Real);
        var (seen, quiet) = (Trace(fake), 0);
        while (changes > 0 && quiet < QuietTicks && await look.WaitForNextTickAsync())
        {
            var now = Trace(fake);
            quiet = now == seen ? quiet + 1 : 0;
            if (now != seen)
            {
                SayUpTo(fake, group, burst ? said.Count : Math.Min(upTo, said.Count + 1));
                changes--;
            }
            seen = now;
        }
        SayUpTo(fake, group, burst ? upTo : said.Count);
        struckAtWork += fake.Unconfirmed > 0 ? 1 : 0;
    }

    /// <summary>What can be seen of the program from outside: its calls, and its data growing.</summary>
    private (int, long) Trace(FakeBotApi fake) =>
        (fake.Requests.Count, folder.GetFiles("farm*").Sum(file => file.Length));

    private void SayUpTo(FakeBotApi fake, FakeChat group, int count)
    {
        while (said.Count < count)
        {
            said.Add(fake.Say(group, ProgramRig.Ana, $"Trough {said.Count + 1} is full."));
        }
    }

    /// <summary>One more life, in this process, that may take up all that the kills left behind.</summary>
    private async Task FinishAsync(FakeBotApi fake)
    {
        var (settings, _) = BotSettings.Read(await File.ReadAllTextAsync(Path.Combine(folder.FullName, "bot.settings.json")));
        await using var store = LiteDbHerdStore.Open(Path.Combine(folder.FullName, "farm.db"));
        var builder = ServeCommand.Compose(settings!, new TelegramOptions { Token = fake.Token, BaseUrl = fake.Url }, store, SystemClocks.Real);
        builder.Logging.ClearProviders();
        using var host = builder.Build();
        await host.StartAsync();
        await fake.WaitForAsync(it => it.Polled && it.Unconfirmed == 0);
        await host.Services.GetRequiredService<Pipeline>().IdleAsync();
        await host.StopAsync();
    }

    private async Task<List<string>> HeardAsync(FakeChat group)
    {
        await using var store = LiteDbHerdStore.Open(Path.Combine(folder.FullName, "farm.db"));
        var history = await store.ReadGroupAsync(TelegramIds.GroupOf(group.Id));
        return [.. history.SelectMany(stored => stored.Commit.Events).Select(EventCodec.Read).OfType<HerdEvent.LineHeard>().Select(line => line.Message)];
    }
}
