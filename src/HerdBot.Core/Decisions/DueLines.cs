using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;

namespace HerdBot.Core.Decisions;

/// <summary>What is new to say about a mating, a check, or a birth by its mating's day.</summary>
internal static class DueLines
{
    private const int FewDams = 2;
    private const double Surely = 0.85;

    /// <summary>When she is due now; nothing where a message tells of many dams.</summary>
    public static IEnumerable<string> Of(Draft draft, HerdRecord record, Animal dam)
    {
        var many = record.Message is not null && draft.State.Records.Where(other => other.Message == record.Message).Select(other => other.Animal).Distinct().Count() > FewDams;
        if (many || draft.State.Due(draft.Farm).Of(dam.Id, draft.Farm.Clock.Day(draft.Now)) is not { } due)
        {
            yield break;
        }
        yield return due.Open >= Surely && record.Fact.Neg ? draft.Phrases.Say("reply.due.open", ("animal", dam.Name))
            : draft.Phrases.Say(record.Fact.Kind == FactKind.Breeding ? "reply.due.bred" : "reply.due.checked", [("animal", dam.Name), .. DueAnswers.Window(draft, due)]);
    }

    /// <summary>Of a mating that nobody told.</summary>
    public static IEnumerable<string> Born(Draft draft, NewbornView baby)
    {
        if (draft.State.Due(draft.Farm).UnexplainedOf(baby.Animal.Id) is { } days)
        {
            yield return draft.Phrases.Say("reply.other_mating", ("animal", draft.TaskLines.Name(baby.Pair)), ("days", DueAnswers.Whole(days)));
        }
    }
}
