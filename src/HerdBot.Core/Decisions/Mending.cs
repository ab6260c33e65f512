using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>What was mended or taken back.</summary>
/// <param name="Sentence">To be said.</param>
/// <param name="Records">The records as they stand now.</param>
internal sealed record Mended(string Sentence, IReadOnlyList<HerdRecord> Records);

/// <summary>Corrections, undo and edited messages: events that amend; nothing is deleted.</summary>
internal static class Mending
{
    private static readonly Duration Reach = Duration.FromHours(48);

    /// <summary>Mends the record that a correction means; null where no record fits.</summary>
    public static Mended? Correct(Draft draft, Fact correction, string by, Instant saidAt)
    {
        if (Target(draft.State, correction, saidAt) is not { } target)
        {
            return null;
        }
        var was = draft.FactLines.Say(target);
        if (correction.Neg)
        {
            return Withdraw(draft, [target], by, saidAt);
        }
        var becomes = Becomes(target.Fact, correction);
        var animal = Recording.AnimalOf(draft.State, becomes) ?? draft.State.Find(target.Animal);
        Amend(draft, target, becomes, animal?.Id, by, saidAt, correction);
        return Told(draft, target.Id, was);
    }

    /// <summary>Takes back one's own last message, or what is named; null where there is nothing.</summary>
    public static Mended? Undo(Draft draft, Fact undo, string by, Instant saidAt)
    {
        var named = undo.Field is not null ? Target(draft.State, undo, saidAt) : null;
        var newest = named ?? draft.State.Record(undo.Target)
            ?? draft.State.Records.LastOrDefault(record => !record.Withdrawn && record.By == by && saidAt - record.SaidAt < Reach);
        return newest is null ? null : Withdraw(draft, [.. draft.State.Records.Where(record => !record.Withdrawn
            && (record.Id == newest.Id || (named is null && newest.Message is not null && record.Message == newest.Message)))], by, saidAt);
    }

    private static void Amend(Draft draft, HerdRecord target, Fact becomes, AnimalId? animal, string by, Instant saidAt, Fact correction) =>
        draft.Add(new HerdEvent.FactAmended(target.Id, becomes, animal, becomes.At is null ? target.At : Recording.At(draft, becomes, target.SaidAt), saidAt, by, correction));

    private static Mended Told(Draft draft, FactId id, string was)
    {
        var record = draft.State.Record(id)!;
        return new Mended(draft.Phrases.Say("reply.mended", ("what", Whole(draft, record)), ("was", was)), [record]);
    }

    private static Mended Withdraw(Draft draft, IReadOnlyList<HerdRecord> records, string by, Instant saidAt)
    {
        var what = draft.Speaker.List(records.Select(record => Whole(draft, record)));
        foreach (var record in records)
        {
            draft.Add(new HerdEvent.FactWithdrawn(record.Id, saidAt, by));
        }
        return new Mended(draft.Phrases.Say("reply.withdrawn", ("what", what)), [.. records.Select(record => draft.State.Record(record.Id)!)]);
    }

    /// <summary>A record with its animal.</summary>
    private static string Whole(Draft draft, HerdRecord record) =>
        draft.State.Find(record.Newborn ?? record.Animal) is { } animal ? $"{draft.Called(animal)} {draft.FactLines.Say(record)}" : draft.FactLines.Say(record);

    /// <summary>An edited message: mends what changed, records what is new, and takes back at the end what is gone.</summary>
    internal sealed class Edit(Draft draft, string message, string by)
    {
        private readonly List<HerdRecord> before = [.. draft.State.Records.Where(record => record.Message == message && !record.Withdrawn)];

        public List<HerdRecord> Recorded { get; } = [];
        public List<Mended> Mended { get; } = [];

        public void Take(Fact fact)
        {
            var animal = Recording.AnimalOf(draft.State, fact)?.Id;
            var same = before.Find(record => record.Fact.Kind == fact.Kind && record.Animal == animal) ?? before.Find(record => record.Fact.Kind == fact.Kind);
            if (same is null)
            {
                if (Naming.Refusal(draft, fact) is { } refusal)
                {
                    Mended.Add(new Mended(refusal, []));
                    return;
                }
                Recorded.Add(Recording.Record(draft, fact, by, message, draft.Now));
                return;
            }
            before.Remove(same);
            var at = Recording.At(draft, fact, same.SaidAt);
            if (same.Fact with { Text = fact.Text } != fact || same.Animal != animal || same.At != at)
            {
                var was = draft.FactLines.Say(same);
                Amend(draft, same, fact, animal, by, draft.Now, new Fact(FactKind.Correction) { Animal = fact.Animal, Value = fact.Value, Unit = fact.Unit, At = fact.At, Field = FactWords.Word(fact.Kind), Was = was, Sex = fact.Sex, Target = same.Id });
                Mended.Add(Told(draft, same.Id, was));
            }
        }

        /// <summary>What the message says no more.</summary>
        public void Finish()
        {
            if (before.Count > 0)
            {
                Mended.Add(Withdraw(draft, before, by, draft.Now));
            }
        }
    }

    private static HerdRecord? Target(HerdState state, Fact correction, Instant saidAt)
    {
        if (state.Record(correction.Target) is { Withdrawn: false } named)
        {
            return correction.Field == "sex" && named.Fact.Kind != FactKind.Birth ? BirthOf(state, named.Animal) : named;
        }
        var animal = Recording.AnimalOf(state, correction)?.Id;
        if (correction.Field == "sex")
        {
            return BirthOf(state, animal);
        }
        return state.Records.LastOrDefault(record => !record.Withdrawn && saidAt - record.SaidAt < Reach
            && (correction.Field is not { } field || !FactWords.TryKind(field, out var kind) || record.Fact.Kind == kind)
            && (animal is null || record.Animal == animal || correction.Field == "animal"));
    }

    private static HerdRecord? BirthOf(HerdState state, AnimalId? animal) =>
        state.Records.LastOrDefault(record => !record.Withdrawn && record.Newborn is not null && (record.Newborn == animal || record.Animal == animal));

    private static Fact Becomes(Fact was, Fact correction) => correction.Field switch
    {
        "animal" => was with { Animal = correction.Animal },
        "time" => was with { At = correction.At },
        "unit" => was with { Unit = correction.Unit, Value = correction.Value ?? was.Value },
        "sex" => was with { Sex = correction.Sex },
        "sire" => was with { Sire = correction.Sire },
        _ => was with
        {
            Value = correction.Value ?? was.Value,
            Unit = correction.Unit ?? was.Unit,
            At = correction.At ?? was.At,
            Sex = correction.Sex ?? was.Sex,
            Sire = correction.Sire ?? was.Sire,
            Unsure = false,
        },
    };
}
