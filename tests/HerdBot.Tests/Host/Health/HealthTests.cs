using FluentAssertions;
using HerdBot.Host.Commands;
using HerdBot.Host.Composition;
using HerdBot.Tests.Host.Program;
using HerdBot.Tests.Support.FakeBotApi;
using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using Xunit;

namespace HerdBot.Tests.Host.Health;

/// <summary>"herdbot health" asks the running program.</summary>
public sealed class HealthTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("herdbot-health-");
    private readonly StringWriter output = new();
    private readonly StringWriter faults = new();

    private string Settings => Path.Combine(folder.FullName, "bot.settings.json");

    [Fact]
    public async Task A_program_that_runs_says_how_it_is_and_one_that_does_not_is_silent()
    {
        await using var fake = await FakeBotApi.StartAsync(time: SystemClocks.Real);
        RealProgram.WriteSettings(folder, fake);
        var settings = JsonNode.Parse(await File.ReadAllTextAsync(Settings))!;
        settings["healthPort"] = FreePort();
        await File.WriteAllTextAsync(Settings, settings.ToJsonString());
        (await HealthCommand.RunAsync(Settings, output, faults)).Should().Be(2);
        await using var program = RealProgram.Serve(folder);
        await fake.WaitForAsync(it => it.Polled);

        var status = await HealthCommand.RunAsync(Settings, output, faults);

        faults.ToString().Should().Contain("the bot does not run");
        JsonNode.Parse(output.ToString())!["troubles"]!.AsArray().Count.Should().Be(status, "0 where all is well, 1 where something is wrong");
        output.ToString().Should().Contain("\"heard\"").And.Contain("\"free_bytes\"");
    }

    [Fact]
    public async Task Without_a_port_nobody_is_asked()
    {
        await File.WriteAllTextAsync(Settings, """{"farm": {"zone": "America/Denver"}}""");

        (await HealthCommand.RunAsync(Settings, output, faults)).Should().Be(2);

        faults.ToString().Should().Contain("healthPort");
    }

    public void Dispose() => folder.Delete(recursive: true);

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
