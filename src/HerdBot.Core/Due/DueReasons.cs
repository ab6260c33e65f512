using System.Globalization;
using HerdBot.Core.Wording;
using NodaTime;

namespace HerdBot.Core.Due;

/// <summary>Says in plain words why a dam is due when she is.</summary>
/// <param name="Phrases">The language.</param>
/// <param name="Date">How a day is said.</param>
public sealed record DueReasons(Phrases Phrases, Func<LocalDate, string> Date)
{
    private const int MostLengths = 5;

    /// <summary>The reasons, the species first.</summary>
    /// <param name="due">A forecast.</param>
    /// <param name="gestation">The species' numbers.</param>
    public IEnumerable<string> Of(DueForecast due, Gestation gestation)
    {
        ArgumentNullException.ThrowIfNull(due);
        ArgumentNullException.ThrowIfNull(gestation);
        yield return Phrases.Say("why.species", ("species", Phrases.Say($"why.species.{due.Case.Species.ToString().ToLowerInvariant()}")), ("n", Whole(gestation.Median)));
        if (Season(due, gestation) is { } season)
        {
            yield return season;
        }
        if (Record(due) is { } record)
        {
            yield return record;
        }
        if (!due.Case.FromVetsDate)
        {
            yield return Counted(due);
        }
        foreach (var check in due.Case.Checks.Where(check => check.On <= due.Case.Today))
        {
            yield return Check(check);
        }
        foreach (var doubt in Doubts(due))
        {
            yield return doubt;
        }
    }

    /// <summary>"mated in spring: 5 days longer"; null where the season does not tell.</summary>
    public string? Season(DueForecast due, Gestation gestation)
    {
        ArgumentNullException.ThrowIfNull(due);
        ArgumentNullException.ThrowIfNull(gestation);
        var shift = gestation.ShiftOf(due.ConceivedOn, due.Case.Hemisphere);
        return Math.Abs(shift) < 0.5 ? null
            : Phrases.Say("why.season", ("season", Phrases.Say(SeasonOf(due.ConceivedOn, due.Case.Hemisphere!.Value))), ("by", By(shift)));
    }

    /// <summary>"carried 353 and 350 before: 3 days longer"; null where there is no record that tells.</summary>
    public string? Record(DueForecast due)
    {
        ArgumentNullException.ThrowIfNull(due);
        var by = Math.Abs(due.Lean.Mean) < 0.5 ? Phrases.Say("why.as_usual") : By(due.Lean.Mean);
        if (due.Case.Past.Length > 0)
        {
            var lengths = due.Case.Past.TakeLast(MostLengths).Select(length => Whole(length.Days)).ToList();
            var list = lengths.Count < 2 ? lengths[0] : string.Join(", ", lengths.SkipLast(1)) + Phrases.Say("list.and") + lengths[^1];
            return Phrases.Say("why.own", ("list", list), ("by", by));
        }
        return due.Case.HerdPast.Any(dam => dam.Length > 0) && Math.Abs(due.Lean.Mean) >= 0.5 ? Phrases.Say("why.herd", ("by", by)) : null;
    }

    /// <summary>"mated May 3", or the days in the pen.</summary>
    public string Counted(DueForecast due)
    {
        ArgumentNullException.ThrowIfNull(due);
        return Phrases.Say(due.Mating.IsPen ? "why.pen" : due.Case.Matings.Length > 1 ? "why.mating.likeliest" : "why.mating",
            ("from", Date(due.Mating.From)), ("to", Date(due.Mating.To)), ("date", Date(due.ConceivedOn)));
    }

    /// <summary>"pregnant by the check of Jul 1".</summary>
    public string Check(PregnancyCheck check) =>
        Phrases.Say(CheckKey(check), ("date", Date(check.On)), ("expected", check.Expected is { } expected ? Date(expected) : ""));

    private IEnumerable<string> Doubts(DueForecast due)
    {
        if (due.Overdue <= 0.05)
        {
            yield return Phrases.Say("why.overdue", ("n", Math.Max(1, Math.Round(due.Overdue * 100)).ToString(CultureInfo.InvariantCulture)));
        }
        if (due.Open >= 0.25)
        {
            yield return OpenWords(due.Open);
        }
    }

    /// <summary>"about a half that she carries nothing".</summary>
    public string OpenWords(double open) => open is >= 0.4 and <= 0.65 ? Phrases.Say("why.open.half")
        : Phrases.Say("why.open", ("n", Whole(Math.Clamp(open * 10, 1, 9))));

    private string By(double days) => Whole(Math.Abs(days)) switch
    {
        "1" => Phrases.Say(days > 0 ? "why.longer.one" : "why.shorter.one"),
        var n => Phrases.Say(days > 0 ? "why.longer" : "why.shorter", ("n", n)),
    };

    private static string CheckKey(PregnancyCheck check) => check switch
    {
        { Expected: not null } => "why.check.expected",
        { Result: CheckResult.Pregnant } => "why.check.pregnant",
        { Result: CheckResult.Open } => "why.check.open",
        { Result: CheckResult.SpitOff } => "why.check.spit_off",
        _ => "why.check.receptive",
    };

    /// <summary>The season of a day by its month, as people say it: the key of its phrase.</summary>
    private static string SeasonOf(LocalDate day, Hemisphere hemisphere)
    {
        string[] north = ["season.winter", "season.spring", "season.summer", "season.autumn"];
        return north[(day.Month % 12 / 3 + (hemisphere == Hemisphere.South ? 2 : 0)) % 4];
    }

    private static string Whole(double number) => Math.Round(number, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);
}
