using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Gives a bare weight its unit: what was said with it, the farm's habit, what the log holds.</summary>
internal static class UnitGuess
{
    public static void Weigh(Statement statement, Draft draft)
    {
        var said = statement.Drafts.LastOrDefault(other => other != draft && other.Kind == FactKind.Weight && other.Unit is not null)?.Unit;
        draft.Unit = said ?? Habit(statement.Known);
        draft.Ask = draft.Unit is null ? Ask.Unit : null;
    }

    private static FactUnit? Habit(Circumstances known)
    {
        if (known.Context.Units is { } system)
        {
            return system == UnitSystem.Us ? FactUnit.Lb : FactUnit.Kg;
        }

        var logged = known.Context.Log.Where(fact => fact.Fact.Kind == FactKind.Weight && fact.Fact.Unit is not null).Select(fact => fact.Fact.Unit).Distinct().ToArray();
        return logged.Length == 1 ? logged[0] : null;
    }
}
