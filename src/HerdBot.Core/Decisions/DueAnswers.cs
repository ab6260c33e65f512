using System.Globalization;
using HerdBot.Core.Due;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>Answers when a dam is due, who is next, and on which days to breed.</summary>
internal static class DueAnswers
{
    private const int MostLines = 8;
    private const double Doubtful = 0.25;
    private const double Surely = 0.85;

    public static string Answer(Draft draft, Fact question) => question.Field switch
    {
        MatingTopics.If => Planning.If(draft, question),
        MatingTopics.Months => Planning.Months(draft, question),
        MatingTopics.Calendar => Next(draft),
        _ => question.Animal is null ? Next(draft) : Of(draft, question),
    };

    /// <summary>The window in one line: "about Apr 20, most likely Apr 9 to May 2".</summary>
    public static (string, string)[] Window(Draft draft, DueForecast due)
    {
        var likely = due.Window(0.8);
        return [("date", draft.Speaker.Date(due.Median)), ("from", draft.Speaker.Date(likely.From)), ("to", draft.Speaker.Date(likely.To)), ("days", Whole(due.Days))];
    }

    private static LocalDate Today(Draft draft) => draft.Farm.Clock.Day(draft.Now);

    private static string Next(Draft draft)
    {
        var awaited = draft.State.Due(draft.Farm).Awaited(Today(draft)).Take(MostLines).ToList();
        return awaited.Count == 0 ? draft.Phrases.Say("answer.due.nobody")
            : draft.Phrases.Say("answer.due.next", ("list", draft.Speaker.List(awaited.Select(dam => $"{dam.Dam.Name} {draft.Speaker.Date(dam.Due.Median)}"))));
    }

    private static string Of(Draft draft, Fact question)
    {
        if (Recording.AnimalOf(draft.State, question) is not { } dam)
        {
            return draft.Phrases.Say("answer.status.none", ("animal", question.Animal!));
        }
        if (draft.State.Due(draft.Farm).PregnancyOf(dam.Id) is not { } pregnancy || draft.State.Due(draft.Farm).Of(dam.Id, Today(draft)) is not { } due)
        {
            return None(draft, dam);
        }
        if (due.Open >= Surely && pregnancy.LastCheck is { Result: CheckResult.Open } open)
        {
            return draft.Phrases.Say("answer.due.open", ("animal", dam.Name), ("date", draft.Speaker.Date(open.On)));
        }
        var reasons = new DueReasons(draft.Phrases, draft.Speaker.Date);
        (string, string)[] values = [("animal", dam.Name), ("chance", Percent(due.Next7)), .. Window(draft, due)];
        var late = Today(draft) >= due.OverdueFrom;
        var first = draft.Phrases.Say(late ? "answer.due.overdue" : "answer.due", [.. values, ("n", Whole(Math.Max(1, due.Overdue * 100))), ("open", reasons.OpenWords(due.Open))]);
        var doubt = !late && due.Open >= Doubtful ? " " + Sentence(reasons.OpenWords(due.Open)) : "";
        return $"{first}{doubt}\n{Why(draft, pregnancy, due, reasons)}";
    }

    private static string Why(Draft draft, Pregnancy pregnancy, DueForecast due, DueReasons reasons)
    {
        var gestation = Gestation.Of(draft.Farm.TableOf(pregnancy.Dam.Species)!);
        var sire = pregnancy.SireOf(due.Mating) is { } male ? $" ({male})" : "";
        string?[] why =
        [
            due.Case.FromVetsDate ? null : reasons.Counted(due) + sire, reasons.Season(due, gestation), reasons.Record(due), pregnancy.LastCheck is { } check ? reasons.Check(check) : null,
        ];
        return Sentence(string.Join("; ", why.OfType<string>()));
    }

    private static string None(Draft draft, Animal dam)
    {
        var baby = draft.State.Newborns.LastOrDefault(newborn => newborn.Dam == dam.Id);
        return baby is null or { State: HerdEntryState.Dead } ? draft.Phrases.Say("answer.due.none", ("animal", dam.Name))
            : draft.Phrases.Say("answer.due.with_cria", ("animal", dam.Name), ("baby", baby.Name), ("at", draft.Speaker.Clock(baby.Born!.Value)));
    }

    private static string Sentence(string words) => words.Length == 0 ? "" : $"{char.ToUpperInvariant(words[0])}{words[1..]}.";

    public static string Percent(double chance) => chance < 0.005 ? "0 %" : $"{Whole(Math.Max(1, chance * 100))} %";

    public static string Whole(double number) => Math.Round(number, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);
}
