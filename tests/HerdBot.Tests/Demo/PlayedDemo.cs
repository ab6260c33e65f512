using HerdBot.Demo;
using HerdBot.Tests.Support.StoreContract;
using Xunit;

namespace HerdBot.Tests.Demo;

/// <summary>The demo, played once for all tests that look at it.</summary>
public sealed class PlayedDemo : IAsyncLifetime
{
    /// <summary>What it printed.</summary>
    public IReadOnlyList<string> Lines { get; private set; } = [];

    /// <summary>What the transcript asked for and could not be done.</summary>
    public string Faults { get; private set; } = "";

    public async ValueTask InitializeAsync()
    {
        using var output = new StringWriter();
        using var faults = new StringWriter();
        using var folder = new StoreFolder();
        await DemoCommand.PlayAsync(DemoCommand.FileScreen(output), folder.DataFile, wall: null, faults, CancellationToken.None);
        (Lines, Faults) = (output.ToString().Split('\n'), faults.ToString());
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
