using System.Collections.Immutable;
using System.Text.Json;
using HerdBot.App.Records;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading;
using NodaTime;

namespace HerdBot.Tests.Core.Reading;

/// <summary>Scores the reader against labelled messages, by the rules the labels were made for.</summary>
internal sealed record CorpusScore(int Messages, int Exact, int FalseRecords, int Spanish, int SpanishExact, ImmutableArray<string> Wrong)
{
    private const decimal ValueSlack = 0.01m;
    private static readonly Period TimeSlack = Period.FromMinutes(2);

    private static readonly HashSet<FactKind> Loose =
        [FactKind.Note, FactKind.Claim, FactKind.Weather, FactKind.Kit, FactKind.LabourSign, FactKind.Presentation, FactKind.Assistance];

    public double Percent => 100.0 * Exact / Math.Max(1, Messages);

    public static CorpusScore Of(IEnumerable<string> lines)
    {
        var score = new CorpusScore(0, 0, 0, 0, 0, []);
        foreach (var line in lines.Where(line => line.Length > 0))
        {
            score = score.With(line);
        }

        return score;
    }

    private CorpusScore With(string line)
    {
        using var json = JsonDocument.Parse(line);
        var message = CorpusLine.Parse(line, out _, out var error) ?? throw new InvalidOperationException(error);
        var (wanted, ask) = CorpusLine.Expected(json.RootElement);
        var read = Reader.Read(message.Text, message.Context);
        var (missed, extra) = Pair(wanted, read.Facts, message.Context.Now.LocalDateTime);
        var exact = missed.Count == 0 && extra.Count == 0 && ask == read.Ask;
        var death = wanted.Any(fact => fact.Kind == FactKind.Death);
        var spanish = message.Context.Language == Language.Spanish;
        return new CorpusScore(
            Messages + 1,
            Exact + (exact ? 1 : 0),
            FalseRecords + extra.Count(fact => IsFalse(fact, read.Ask, death)),
            Spanish + (spanish ? 1 : 0),
            SpanishExact + (spanish && exact ? 1 : 0),
            exact ? Wrong : Wrong.Add($"{message.Id}: {message.Text}"));
    }

    private static (List<Fact> Missed, List<Fact> Extra) Pair(ImmutableArray<Fact> wanted, ImmutableArray<Fact> got, LocalDateTime now)
    {
        var left = got.ToList();
        var missed = new List<Fact>();
        foreach (var want in wanted)
        {
            var hit = left.FindIndex(fact => IsSame(want, fact, now));
            if (hit < 0)
            {
                missed.Add(want);
            }
            else
            {
                left.RemoveAt(hit);
            }
        }

        var note = left.FindIndex(fact => fact.Kind == FactKind.Note);
        if (note >= 0)
        {
            left.RemoveAt(note);
        }

        return (missed, left);
    }

    private static bool IsSame(Fact want, Fact got, LocalDateTime now)
    {
        if (want.Kind != got.Kind || !string.Equals(want.Animal, got.Animal, StringComparison.OrdinalIgnoreCase) || want.Neg != got.Neg)
        {
            return false;
        }

        return Loose.Contains(want.Kind) || (IsSameInDetail(want, got) && IsSameTime(want.At, got.At, now));
    }

    private static bool IsSameInDetail(Fact want, Fact got)
    {
        var sex = want.Sex is null ? !(want.Kind == FactKind.Birth && got.Sex is not null) : want.Sex == got.Sex;
        var name = want.Kind != FactKind.Roster || string.Equals(want.Name, got.Name, StringComparison.OrdinalIgnoreCase);
        var value = want.Value is null ? got.Value is null : got.Value is { } figure && Math.Abs(want.Value.Value - figure) <= ValueSlack && want.Unit == got.Unit;
        return sex && name && value && want.Unsure == got.Unsure && (want.Task is null || want.Task == got.Task);
    }

    private static bool IsSameTime(FactTime? want, FactTime? got, LocalDateTime now)
    {
        if (want is null)
        {
            return got is null || IsNear(Moment(got.Value), now);
        }

        return got is { } at && (want.Value.Time is null ? at.Date == want.Value.Date : IsNear(Moment(at), Moment(want.Value)));
    }

    private static LocalDateTime Moment(FactTime at) => at.Date + (at.Time ?? LocalTime.Midnight);

    private static bool IsNear(LocalDateTime a, LocalDateTime b) => a >= b - TimeSlack && a <= b + TimeSlack;

    private static bool IsFalse(Fact fact, Ask? ask, bool deathWanted)
    {
        if (Loose.Contains(fact.Kind) || fact.Kind is FactKind.QuestionDue or FactKind.QuestionHowto or FactKind.QuestionStatus or FactKind.QuestionTasks)
        {
            return false;
        }

        var waits = ask is not null && (fact.Animal == Fact.AskAnimal || (fact.Value is null && ask is Ask.Value or Ask.Unit) || (ask == Ask.Sure && deathWanted));
        return !waits;
    }
}
