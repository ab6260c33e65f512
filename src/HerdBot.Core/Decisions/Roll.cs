using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using HerdBot.Core.Care;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>The herd as the reader knows it: the same list as long as it says the same, so that what the reader makes of it is made once.</summary>
internal static class Roll
{
    /// <summary>A newborn that has no name after so long is meant by nobody any more.</summary>
    private static readonly Duration UnnamedKept = Duration.FromDays(400);

    private static readonly ConditionalWeakTable<ImmutableList<HerdEvent.AnimalAdded>, StrongBox<ImmutableArray<HerdEntry>>> Kept = [];

    public static ImmutableArray<HerdEntry> Of(Draft draft, Instant at)
    {
        var labouring = draft.Plan.Where(task => task.Key.Name is CareTaskName.Labour or CareTaskName.Presentation && task.OpenAt(draft.Now)).Select(task => task.Key.Animal).ToHashSet();
        ImmutableArray<HerdEntry> herd = [.. draft.State.Animals.Where(animal => animal.Role != HerdRole.Newborn || animal.Born > at - UnnamedKept).Select(animal => Entry(draft, animal, labouring))];
        var kept = Kept.GetValue(draft.State.Added, _ => new(herd));
        if (!kept.Value.AsSpan().SequenceEqual(herd.AsSpan(), Same.Entry))
        {
            kept.Value = herd;
        }
        return kept.Value;
    }

    private static HerdEntry Entry(Draft draft, Animal animal, HashSet<AnimalId> labouring) => new(animal.Name, animal.Role)
    {
        Species = animal.Species,
        Sex = animal.Sex,
        Dam = draft.State.Find(animal.Dam)?.Name,
        Colour = animal.Colour,
        Born = animal.Born is { } born ? FactTime.Of(draft.Farm.Clock.Local(born)) : null,
        State = StateOf(draft, animal, labouring),
        Tag = animal.Tag,
        OtherNames = draft.Farm.Nicknames.IsEmpty ? draft.State.OtherNames(animal.Id)
            : [.. draft.State.OtherNames(animal.Id), .. draft.State.OtherNames(animal.Id).Prepend(animal.Name).SelectMany(draft.Farm.NicknamesOf)],
    };

    private static HerdEntryState? StateOf(Draft draft, Animal animal, HashSet<AnimalId> labouring) =>
        animal.Role != HerdRole.Dam ? animal.State
            : labouring.Contains(animal.Id) ? HerdEntryState.InLabour
            : animal.State == HerdEntryState.Due && draft.State.NewbornsOf(animal.Id).Any() ? null
            : animal.State;

    /// <summary>Two entries say the same where their other names do too, name by name.</summary>
    private sealed class Same : IEqualityComparer<HerdEntry>
    {
        public static Same Entry { get; } = new();

        public bool Equals(HerdEntry? x, HerdEntry? y) => x is null || y is null ? x is null && y is null
            : x.OtherNames.AsSpan().SequenceEqual(y.OtherNames.AsSpan()) && x == y with { OtherNames = x.OtherNames };

        public int GetHashCode(HerdEntry entry) => entry.Name.GetHashCode(StringComparison.Ordinal);
    }
}
