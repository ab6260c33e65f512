using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support.FakeBotApi;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

public sealed class TelegramServicesTests
{
    [Fact]
    public async Task A_host_with_an_intake_and_a_clock_needs_one_call()
    {
        await using var fake = await FakeBotApi.StartAsync();
        var intake = new HeldIntake();
        var builder = Microsoft.Extensions.Hosting.Host.CreateEmptyApplicationBuilder(null);
        builder.Services.AddLogging(logging => logging.ClearProviders());
        builder.Services.AddSingleton<IIntake>(intake);
        builder.Services.AddSingleton<TimeProvider>(new FakeTimeProvider());
        builder.Services.AddTelegram(TelegramRig.OptionsFor(fake), _ => name => name == "Tom" ? 4712 : null);
        using var host = builder.Build();

        await host.StartAsync();
        fake.Private(TelegramRig.Tom);
        fake.Say(fake.Group(), TelegramRig.Ana, "Juniper is up");
        await intake.WaitForAsync(1);
        var read = host.Services.GetRequiredService<IInboundFormat>().Read(intake.Entries[0]);
        var sent = await host.Services.GetRequiredService<IChat>().SendAsync(
            new Outgoing(new GroupId("tg:-1"), 1, OutgoingKind.Send, "Tom, you are next.") { ToPerson = "Tom" });
        await host.StopAsync();

        read.Should().BeOfType<Inbound.Line>();
        sent.Should().Be(new SendResult.Sent("4712/1"));
    }

    [Fact]
    public void A_set_up_code_is_made_new_each_time_and_easy_to_read()
    {
        var now = Instant.FromUtc(2026, 5, 2, 4, 30);

        var codes = Enumerable.Range(0, 50).Select(_ => SetUpCodes.New(now)).ToList();

        codes.Select(code => code.Code).Should().OnlyHaveUniqueItems();
        codes.Should().OnlyContain(code => code.Code.Length == 8 && !"0O1IL".Any(code.Code.Contains) && code.MadeAt == now);
        SetUpCodes.Invitation(codes[0], "WillowHerdBot").Should()
            .Be($"To own this bot, write to @WillowHerdBot in a private chat: /start {codes[0].Code}  (good once, for 30 minutes)");
    }
}
