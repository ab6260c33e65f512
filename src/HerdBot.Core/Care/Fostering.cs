using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>A newborn whose dam does not feed it: dead, or it was put to another.</summary>
public static class Fostering
{
    /// <summary>The dam that it was put to, by her name in the words; null where none is named.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="newborn">What is on record of it.</param>
    public static AnimalId? DamOf(HerdState state, ToldRecords newborn)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(newborn);
        var words = newborn.About(NoteTopics.Grafted).LastOrDefault(record => !record.Fact.Unsure)?.Fact.Text;
        return words is null ? null : state.Roster.Where(animal => animal.Role == HerdRole.Dam)
            .Select(dam => (dam.Id, At: words.LastIndexOf(dam.Name, StringComparison.OrdinalIgnoreCase)))
            .Where(dam => dam.At >= 0 && !words[dam.At..].Contains("'s", StringComparison.Ordinal))
            .OrderBy(dam => dam.At).Select(dam => dam.Id).LastOrDefault();
    }

    /// <summary>Since when it is raised by hand: its dam's death, a graft, or somebody's word; null where its dam feeds it.</summary>
    /// <param name="newborn">What is on record of it.</param>
    /// <param name="dam">What is on record of the dam that bore it.</param>
    /// <param name="born">The birth.</param>
    public static Instant? ByHandSince(ToldRecords newborn, ToldRecords dam, Instant born)
    {
        ArgumentNullException.ThrowIfNull(newborn);
        ArgumentNullException.ThrowIfNull(dam);
        var since = NewbornPlan.Earliest(Died(dam, born), newborn.Said(born, NoteTopics.Grafted, NoteTopics.ByHand));
        return since is { } at ? Instant.Max(at, born) : null;
    }

    /// <summary>When the dam died; a stillbirth of hers is no death of hers.</summary>
    private static Instant? Died(ToldRecords dam, Instant born) => dam.Certain(FactKind.Death)
        .Where(record => record.Newborn is null && record.At >= born - Duration.FromDays(1)).Select(record => (Instant?)record.At).FirstOrDefault();
}
