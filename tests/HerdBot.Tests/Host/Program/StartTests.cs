using FluentAssertions;
using HerdBot.App.Access;
using HerdBot.App.Ports;
using HerdBot.Host.Composition;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support.FakeBotApi;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Program;

/// <summary>How the real program starts, and how it says that it cannot.</summary>
public sealed class StartTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("herdbot-start-");

    [Fact]
    public async Task A_second_program_on_the_same_data_file_ends_with_status_2_and_a_plain_sentence()
    {
        await using var fake = await FakeBotApi.StartAsync(time: SystemClocks.Real);
        RealProgram.WriteSettings(folder, fake);
        await using var first = RealProgram.Serve(folder);
        await fake.WaitForAsync(it => it.Polled);

        await using var second = RealProgram.Serve(folder);

        (await second.EndAsync()).Should().Be(2);
        ShouldBePlain(second.Errors, "farm.db");
        second.Output.Should().BeEmpty();
        fake.CallsOf("getMe").Should().ContainSingle("every program says who it is first; the second never called");
    }

    [Fact]
    public async Task Without_a_token_it_ends_with_status_2_and_says_where_one_belongs()
    {
        await using var fake = await FakeBotApi.StartAsync(time: SystemClocks.Real);
        RealProgram.WriteSettings(folder, fake, token: "");

        await using var program = RealProgram.Serve(folder);

        (await program.EndAsync()).Should().Be(2);
        ShouldBePlain(program.Errors, "HERDBOT_TOKEN");
        folder.GetFiles("farm*").Should().BeEmpty();
    }

    [Fact]
    public async Task Broken_settings_end_with_status_2_and_the_place_where_they_are_broken()
    {
        await File.WriteAllTextAsync(Path.Combine(folder.FullName, "bot.settings.json"), "{\"token\": \"1:x\",\n \"farm\": {");

        await using var program = RealProgram.Serve(folder);

        (await program.EndAsync()).Should().Be(2);
        ShouldBePlain(program.Errors, "line 2");
    }

    [Fact]
    public async Task Missing_settings_end_with_status_2_and_how_to_get_some()
    {
        await using var program = RealProgram.Serve(folder);

        (await program.EndAsync()).Should().Be(2);
        ShouldBePlain(program.Errors, "bot.settings.example.json");
    }

    [Fact]
    public async Task History_of_a_newer_program_ends_it_with_status_2_before_it_calls_anybody()
    {
        await using var fake = await FakeBotApi.StartAsync(time: SystemClocks.Real);
        var group = TelegramIds.GroupOf(fake.Group().Id);
        await WriteAsync(AccessState.BotStream, AccessEventFormat.Write(new AccessEvent.GroupApproved(group, "Barn")));
        await WriteAsync(group, new EventRecord("something_of_tomorrow", 1, "{}"));
        RealProgram.WriteSettings(folder, fake);

        await using var program = RealProgram.Serve(folder);

        (await program.EndAsync()).Should().Be(2);
        ShouldBePlain(program.Errors, "something_of_tomorrow");
        fake.Requests.Should().BeEmpty();
    }

    [Fact]
    public async Task A_fault_of_ours_while_it_runs_ends_it_with_status_1_so_that_a_supervisor_starts_it_anew()
    {
        await using var fake = await FakeBotApi.StartAsync(time: SystemClocks.Real);
        var (group, home) = (fake.Group(), fake.Private(ProgramRig.Ana));
        await WriteAsync(TelegramIds.GroupOf(group.Id), new EventRecord("line_heard", 1, "{\"message\": 5}"));
        RealProgram.WriteSettings(folder, fake);
        await using var program = RealProgram.Serve(folder);

        fake.Say(home, ProgramRig.Ana, $"/start {await program.SetUpCodeAsync()}");
        fake.Add(group, ProgramRig.Ana);

        (await program.EndAsync()).Should().Be(1);
        program.Errors.Should().Contain("Stopped by a fault of HerdBot's own");
    }

    [Fact]
    public async Task Nothing_that_a_troubled_program_prints_holds_its_token()
    {
        await using var fake = await FakeBotApi.StartAsync(time: SystemClocks.Real);
        fake.ReadsAll = false;
        fake.Break("setMyCommands", new Fault.Error(400, "Bad Request: BOT_COMMAND_INVALID"));
        fake.Break("sendMessage", new Fault.Html(502));
        fake.Break("getUpdates", new Fault.Dropped());
        var home = fake.Private(ProgramRig.Ana);
        RealProgram.WriteSettings(folder, fake);
        await using var program = RealProgram.Serve(folder);

        fake.Say(home, ProgramRig.Ana, $"/start {await program.SetUpCodeAsync()}");
        await fake.WaitForAsync(it => it.CallsOf("sendMessage").Count > 0 && it.Polled && it.Unconfirmed == 0);
        await program.UntilItSaysAsync("Receiving failed");
        await program.UntilItSaysAsync("privacy mode");
        await fake.DisposeAsync();
        await program.KillAsync();

        program.Output.Trim().Split('\n').Should().ContainSingle("the invitation is an answer, the log is none");
        var printed = program.Output + program.Errors;
        printed.Should().Contain("Receiving failed").And.Contain("privacy mode");
        printed.Should().NotContainEquivalentOf(fake.Token.Split(':')[1]);
    }

    public void Dispose() => folder.Delete(recursive: true);

    private async Task WriteAsync(GroupId group, EventRecord happened)
    {
        await using var store = LiteDbHerdStore.Open(Path.Combine(folder.FullName, "farm.db"));
        await store.AppendAsync(new Commit(group, 0, $"before/{group}", Instant.FromUtc(2027, 4, 18, 12, 0), [happened]));
    }

    private static void ShouldBePlain(string errors, string part)
    {
        errors.Should().Contain(part).And.NotContain("   at ").And.NotContain("Exception");
        errors.Trim().Split('\n').Should().ContainSingle();
    }
}
