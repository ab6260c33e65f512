using HerdBot.App.Access;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.App.Records;
using HerdBot.Core.Events;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.App.Herds;

/// <summary>Takes a list of animals into the data file: the farm's groups know them from the next start on.</summary>
public static class HerdImport
{
    /// <summary>The history that holds the animals of lists, whether or not there is a group yet.</summary>
    public static GroupId Stream { get; } = new("herd");

    /// <summary>Takes in what is new in a list. Run again with the same list it adds nothing.</summary>
    /// <param name="store">Where the history is.</param>
    /// <param name="setup">The farm and the animals that its settings name.</param>
    /// <param name="rows">The lines of the list.</param>
    /// <param name="now">When.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<HerdListing> RunAsync(IHerdStore store, FarmSetup setup, IEnumerable<HerdRow> rows, Instant now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(setup);
        var states = new List<HerdState> { HerdState.Empty.Apply(setup.Herd.Select(animal => new HerdEvent.AnimalAdded(animal))) };
        foreach (var group in (await store.ReadGroupsAsync(cancellation)).Where(group => group != AccessState.BotStream && group != Pipeline.Aside))
        {
            states.Add(HerdState.Empty.Apply((await store.ReadGroupAsync(group, 0, cancellation)).SelectMany(stored => stored.Commit.Events).Select(EventCodec.Read)));
        }
        var listing = HerdTable.Read(rows, setup.Farm, [.. states.SelectMany(state => state.Animals)], name => states.Select(state => state.Named(name)).FirstOrDefault(animal => animal is not null), now);
        if (!listing.Added.IsEmpty)
        {
            var version = (await store.ReadGroupAsync(Stream, 0, cancellation)).LastOrDefault()?.Version ?? 0;
            var key = FormattableString.Invariant($"{Stream.Value}/{version + 1}/import");
            await store.AppendAsync(new Commit(Stream, version, key, now, [.. listing.Added.Select(animal => EventCodec.Write(new HerdEvent.AnimalAdded(animal)))]), cancellation);
        }
        return listing;
    }

    /// <summary>The animals of all lists so far, in that order.</summary>
    public static async Task<IReadOnlyList<Animal>> ReadAsync(IHerdStore store, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        return [.. (await store.ReadGroupAsync(Stream, 0, cancellation)).SelectMany(stored => stored.Commit.Events).Select(EventCodec.Read).OfType<HerdEvent.AnimalAdded>().Select(added => added.Animal)];
    }
}
