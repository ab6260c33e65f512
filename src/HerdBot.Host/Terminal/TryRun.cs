using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.App.Records;
using HerdBot.Core.Herd;
using HerdBot.Host.LiteDb;
using HerdBot.Host.Rehearsal;
using NodaTime;

namespace HerdBot.Host.Terminal;

/// <summary>What a session at the terminal starts from.</summary>
/// <param name="Setup">The farm.</param>
/// <param name="Data">The data file; made where there is none.</param>
/// <param name="Speed">How many times as fast as the wall clock the farm's runs, from 1.</param>
/// <param name="Start">What the farm's clock shows at first, unless the data are of a later time already.</param>
/// <param name="Welcome">What is said first.</param>
internal sealed record TryStart(FarmSetup Setup, string Data, int Speed, Instant Start, string Welcome);

/// <summary>A session at the terminal, from opening the data to closing them.</summary>
internal static class TryRun
{
    private const int Recalled = 8;

    /// <summary>Runs until the lines end, somebody quits or it is told to stop. False where a fault ended it.</summary>
    /// <param name="start">What it starts from.</param>
    /// <param name="wall">The clock on the wall.</param>
    /// <param name="screen">Where the chat is shown; where it is empty, the end of an earlier chat is shown first.</param>
    /// <param name="lines">What is typed.</param>
    /// <param name="stop">Ends it.</param>
    /// <exception cref="DataFileException">The data file can't be used.</exception>
    public static async Task<bool> RunAsync(TryStart start, TimeProvider wall, ChatScreen screen, ITypedLines lines, CancellationToken stop)
    {
        var store = LiteDbHerdStore.Open(start.Data);
        var earlier = HerdState.Empty.Apply((await store.ReadGroupAsync(PlainHouse.Group, 0, stop)).SelectMany(stored => stored.Commit.Events.Select(EventCodec.Read)));
        var now = earlier.LastAt is { } lastAt && lastAt > start.Start ? lastAt : start.Start;
        var clock = new ScaledTimeProvider(wall, start.Speed, now.ToDateTimeOffset());
        screen.Announce(start.Welcome);
        screen.Follow(clock);
        screen.Recall(earlier, screen.IsEmpty ? Recalled : 0);
        var house = new PlainHouse(start.Setup, store, clock, screen, tick: true);
        var head = await store.HeadPositionAsync(stop);
        var mark = string.Create(CultureInfo.InvariantCulture, $"terminal/{now.ToUnixTimeTicks()}/{head}");
        try
        {
            await house.StartAsync(stop);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(stop, house.Stopping);
            await new TrySession(house, screen, start.Setup.Farm, clock, mark).RunAsync(lines, either.Token);
            return true;
        }
        catch (OperationCanceledException)
        {
            return stop.IsCancellationRequested;
        }
        catch (StoreOutcomeUnknownException)
        {
            return false;
        }
        finally
        {
            await house.EndAsync();
        }
    }
}
