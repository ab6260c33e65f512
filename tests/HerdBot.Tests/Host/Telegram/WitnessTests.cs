using System.Diagnostics;
using FluentAssertions;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support;
using HerdBot.Tests.Support.FakeBotApi;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

/// <summary>Run by .ci/witnesses alone, which has the programs that look at us from outside.</summary>
public sealed class WitnessTests
{
    [Fact(Explicit = true)]
    public async Task GrammY_takes_the_stand_in_for_Telegram()
    {
        await using var fake = await FakeBotApi.StartAsync();
        var group = fake.Group();
        var before = fake.Say(group, TelegramRig.Ana, "Juniper is up");
        using var grammy = Start(fake);

        await fake.WaitForAsync(now => now.Sent.Count == 1 && now.ReactionsOn(group, before).Count == 1);
        fake.Press(group, fake.Sent[0].MessageId, "v1:up:7", TelegramRig.Tom);
        await fake.WaitForAsync(now => now.TextOf(now.Sent[0]) != now.Sent[0].Text);
        fake.Edit(group, before, "Juniper is down");
        await fake.WaitForAsync(now => now.Sent.Count == 2);
        fake.Add(group, TelegramRig.Tom);
        await fake.WaitForAsync(now => now.Sent.Count == 3);
        fake.Say(group, TelegramRig.Ana, "that is all");
        await grammy.WaitForExitAsync().WaitAsync(Patience.Hang);

        grammy.ExitCode.Should().Be(0, because: await grammy.StandardError.ReadToEndAsync());
        fake.Sent.Select(post => post.Text).Should().Equal("Ana said: Juniper is up", "now: Juniper is down", "I am member of Willow Bend");
        fake.Sent[0].ReplyTo.Should().Be(before);
        fake.TextOf(fake.Sent[0]).Should().Be("Tom pressed v1:up:7");
        fake.Answered.Should().ContainSingle();
        fake.Unconfirmed.Should().Be(0, because: "grammY confirms when it stops");
    }

    [Fact(Explicit = true)]
    public async Task Every_mark_is_shown_to_the_witness()
    {
        await using var rig = await TelegramRig.StartAsync();
        var group = rig.Fake.Group();
        var message = rig.Fake.Say(group, TelegramRig.Ana, "Juniper is up");

        foreach (var mark in ReactionMarks.All)
        {
            await rig.Chat.SendAsync(TelegramReceiverTests.Post(group, mark) with { Kind = OutgoingKind.Mark, Target = $"{group.Id}/{message}" });
        }

        rig.Fake.CallsOf("setMessageReaction").Should().HaveCount(ReactionMarks.All.Count);
    }

    private static Process Start(FakeBotApi fake)
    {
        var folder = Environment.GetEnvironmentVariable("HERDBOT_WITNESSES")
            ?? throw new InvalidOperationException("Run .ci/witnesses: it knows where the witnesses are.");
        return Process.Start(new ProcessStartInfo("node", [Path.Combine(folder, "grammy-witness.mjs"), fake.Url, fake.Token])
        {
            RedirectStandardError = true,
        })!;
    }
}
