using System.Collections.Immutable;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Times;
using NodaTime;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Settles animals and times, drops what was said twice, and finds the one thing to ask.</summary>
internal sealed class Completion(Statement statement)
{
    // The lexicon's number for "whole herd" among the words for all.
    public const int WholeHerd = 9;
    private static readonly ImmutableArray<Ask> Gravest = [Ask.Sure, Ask.Animal, Ask.Value, Ask.Unit, Ask.Time];
    private readonly AnimalResolver resolver = new(statement.Known);
    private readonly Dictionary<string, LocalDateTime> births = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<Settled> facts = [];
    private readonly Dictionary<(FactKind Kind, string? Animal), List<Settled>> alike = [];
    private readonly HashSet<Ask> asks = [];

    /// <summary>The facts, and where in the message each was said.</summary>
    public IEnumerable<(Fact Fact, int Position)> Origins => facts.OrderBy(one => one.Position).Select(one => (one.Fact, one.Position));

    public (ImmutableArray<Fact> Facts, Ask? Ask) Finish()
    {
        foreach (var draft in statement.Drafts.Where(draft => draft.Kind == FactKind.Birth).ToList())
        {
            Birth(draft);
        }

        TemperatureOfBoth();
        TwinsInTurn();
        // Names that the message gives are known before what it says of their bearers.
        foreach (var draft in statement.Drafts.Where(draft => draft.Kind == FactKind.Roster))
        {
            Settle(draft);
        }

        foreach (var draft in statement.Drafts.Where(draft => draft.Kind is not (FactKind.Birth or FactKind.Roster)))
        {
            Settle(draft);
        }

        Notes();
        Ask? ask = asks.Count == 0 ? null : Gravest.First(asks.Contains);
        return ([.. facts.OrderBy(pair => pair.Position).Select(pair => pair.Fact)], ask);
    }

    private void Birth(Draft draft)
    {
        var names = resolver.Resolve(draft.Mention, Whom.Dam, "birth");
        foreach (var dam in names.Count == 0 ? [Fact.AskAnimal] : names)
        {
            var fact = Base(draft) with { Animal = dam, Sex = draft.Sex, N = draft.N, Name = draft.Mention?.Name };
            fact = Timed(draft, fact, null);
            Add(fact, draft);
            if (dam != Fact.AskAnimal)
            {
                resolver.Born(dam, draft.Sex);
                if (fact.At is { Time: { } time } at)
                {
                    births[dam] = at.Date + time;
                }
            }
        }
    }

    // "5.8 and 6.4 kilos": a figure for each of the twins, in the order of birth
    private void TwinsInTurn()
    {
        if (resolver.Births.Count != 1 || resolver.Births.First() is not { Value.Count: > 1 } litter)
        {
            return;
        }

        var figures = statement.Drafts.Where(draft => draft is { Kind: FactKind.Weight, Value: not null } && !draft.Clause.Has(Lexicon.Tag.Sex)).ToList();
        for (var i = 0; i < figures.Count && figures.Count == litter.Value.Count; i++)
        {
            (figures[i].Animal, figures[i].Settled) = ($"{litter.Key}'s baby {i + 1}", true);
        }
    }

    // "Clover 100.2, her baby 99.8": the first is the dam's own.
    private void TemperatureOfBoth()
    {
        foreach (var draft in statement.Drafts.Where(draft => draft is { Kind: FactKind.Temperature, Mention: { Kind: MentionKind.Named, BareGenitive: false, Plural: false } }))
        {
            var dam = draft.Mention!.Entries[0];
            if (statement.Scan.Herd.Entry(dam).Role == HerdRole.Dam
                && statement.Drafts.Exists(other => other != draft && other.Kind == FactKind.Temperature && OfBaby(other, dam)))
            {
                (draft.Animal, draft.Settled) = (statement.Scan.Herd.Entry(dam).Name, true);
            }
        }
    }

    // "her baby 99.8", "the baby 98.3", "hers 38.9"
    private static bool OfBaby(Draft draft, int dam) =>
        draft.Mention is { Kind: MentionKind.BabyOf } baby ? baby.Entries.Contains(dam)
        : draft.Mention is { Kind: MentionKind.SomeBaby } || draft.Clause.Has(Lexicon.Tag.Hers);

    private void Settle(Draft draft)
    {
        if (draft.Kind is FactKind.Breeding or FactKind.SpitOff)
        {
            SireReader.Read(statement, draft, resolver);
        }

        foreach (var animal in Animals(draft).Where(animal => !IsAfterBirth(draft, animal) && !IsIdleTalk(draft, animal) && !IsRestless(draft, animal)))
        {
            var fact = Base(draft) with
            {
                Animal = animal,
                Value = draft.Value,
                Unit = draft.Unit,
                Sire = draft.Sire,
                Route = draft.Route,
                Task = draft.Task,
                Text = draft.Text ?? Words(draft),
                Until = EndOf(draft),
                Expected = draft.Expected,
                Field = draft.Kind == FactKind.Roster ? RosterField(draft, animal) : draft.Field is { } field ? field
                    : draft.Neg && draft.Kind is not (FactKind.Nursing or FactKind.Standing) ? null : Topics.Of(draft.Kind, Tokens(draft)),
                Sex = draft.Sex,
                Traits = draft.Traits,
                Name = draft.Name ?? (animal == Fact.AskAnimal ? draft.Mention?.Name : null),
            };
            fact = draft.Ask == Ask.Value ? fact with { Value = null, Unit = null } : fact;
            Add(Timed(draft, fact, animal), draft);
            if (draft is { Kind: FactKind.Roster, Name: { } name } && animal is not (null or Fact.AskAnimal))
            {
                resolver.NewNames[name] = animal;
            }
        }
    }

    // A time in the pen ends on the day that was named; where that has no year, in the winter after.
    private static LocalDate? EndOf(Draft draft) => draft is not { When: { Kind: WhenKind.Range, Date: { } from, EndDate: { } to }, Kind: FactKind.Breeding or FactKind.QuestionDue } ? null
        : to < from && Period.DaysBetween(from, to.PlusYears(1)) <= LongestPen ? to.PlusYears(1) : to;

    private const int LongestPen = 150;

    // A newborn gets its name; one that has a name is called otherwise.
    private string RosterField(Draft draft, string? animal) =>
        draft.Field is not (null or RosterWords.Nickname or RosterWords.Renamed) ? draft.Field
        : statement.Scan.Herd.Find(animal) is >= 0 and var entry && statement.Scan.Herd.Entry(entry).Role != HerdRole.Newborn ? draft.Field ?? RosterWords.Nickname
        : RosterWords.Named;

    /// <summary>What was said, for facts whose words are the fact.</summary>
    private string? Words(Draft draft) => draft.Clause.Items.Count > 0 && draft.Kind is FactKind.Note or FactKind.LabourSign or FactKind.Presentation or FactKind.Assistance
        or FactKind.Kit or FactKind.Medication or FactKind.Vaccination or FactKind.Placenta or FactKind.CordBleeding or FactKind.Breeding
        ? statement.Scan.Slice(draft.Clause.Items[0], draft.Clause.Items[^1]) : null;

    /// <summary>The words that a fact was said in; of a placenta all of the message, since "but torn" is a clause of its own.</summary>
    private ReadOnlySpan<Tokens.Token> Tokens(Draft draft) => draft.Kind == FactKind.Placenta ? statement.Scan.Tokens.AsSpan()
        : draft.Clause.Items.Count == 0 ? [] : statement.Scan.Tokens.AsSpan(draft.Clause.Items[0].First..draft.Clause.Items[^1].End);

    // Nobody was named among jokes and greetings: not worth a question.
    private bool IsIdleTalk(Draft draft, string? animal) =>
        animal == Fact.AskAnimal && draft.Mention is null && draft.Value is null && statement.SentenceHas(draft.Clause, Lexicon.Tag.Banter);

    // "up, down, up again" of a dam near birth
    private bool IsRestless(Draft draft, string? animal) =>
        draft.Kind == FactKind.Standing && animal == Fact.AskAnimal && draft.Mention is null or { Kind: MentionKind.Pronoun } && statement.Drafts.Exists(other => other.Kind == FactKind.LabourSign) && !statement.Scan.Herd.Young.Any(young => statement.Scan.Herd.Entry(young).Role is HerdRole.Newborn);

    // Straining after the birth is no labour.
    private bool IsAfterBirth(Draft draft, string? animal) =>
        draft.Kind == FactKind.LabourSign && draft.Mention is null or { Kind: MentionKind.Pronoun } && animal is not null
        && statement.Scan.Herd.BabiesOf(statement.Scan.Herd.Find(animal)).Any(baby => statement.Known.BornAt(baby) is { } born && born.PlusDays(7) > statement.Known.Context.Now.LocalDateTime)
        && statement.Scan.Herd.Entry(statement.Scan.Herd.Find(animal)).State != HerdEntryState.InLabour;

    private IEnumerable<string?> Animals(Draft draft)
    {
        if (draft.Settled)
        {
            return [draft.Animal];
        }

        var whom = draft.Kind is FactKind.Claim or FactKind.Done or FactKind.NotDone or FactKind.QuestionStatus ? Kinship.OfTask(draft.Task) : Kinship.Of(draft.Kind);
        var names = draft.Kind switch
        {
            FactKind.Kit or FactKind.Weather or FactKind.QuestionTasks or FactKind.QuestionHowto => [],
            FactKind.QuestionDue => draft.Mention is null ? [] : resolver.Resolve(draft.Mention, Whom.Dam, "labour"),
            FactKind.QuestionStatus => draft.Mention is null ? [] : resolver.Resolve(draft.Mention, whom, draft.Task),
            FactKind.Breeding when draft.Mention is null && draft.Sire is not null => [],
            FactKind.Death => Deaths(draft),
            FactKind.Done when draft.Task == LookReader.Task && draft.Mention is null => [],
            FactKind.Roster => Rosters(draft),
            FactKind.Claim => Claims(draft, whom),
            FactKind.Note => Noted(draft) is [Fact.AskAnimal] && draft.Mention is null && !draft.Clause.Has(Lexicon.Tag.NoteBaby) ? [] : Noted(draft),
            FactKind.Medication or FactKind.Vaccination => Dosed(draft),
            FactKind.Temperature or FactKind.Weight when IsGrown(draft) => resolver.Resolve(draft.Mention, Whom.Anyone, FactWords.Word(draft.Kind)),
            _ => resolver.Resolve(Twin(draft), whom, FactWords.Word(draft.Kind)),
        };
        return names.Count > 0 ? names.AsEnumerable<string?>() : draft.Kind is FactKind.Kit or FactKind.Weather or FactKind.Claim or FactKind.Note || draft.Task == LookReader.Task || FactWords.Word(draft.Kind).StartsWith("question", StringComparison.Ordinal) ? [null] : [Fact.AskAnimal];
    }

    // A figure that only a grown animal can weigh is the dam's own; so is a temperature that was asked of her.
    private bool IsGrown(Draft draft) => (draft is { Kind: FactKind.Temperature, Mention: { Kind: MentionKind.Named, Entries: [var dam, ..] } }
            && statement.Known.Context.Reminders.Any(reminder => reminder.Task == "temperature" && reminder.Animal == statement.Scan.Herd.Entry(dam).Name))
        || draft is { Kind: FactKind.Weight, Mention.Kind: MentionKind.Named } && draft.Value > (draft.Unit == FactUnit.Kg ? 45m : 100m);

    // "ewe lamb 9#, ram lamb 10.5#": the sex told next to the figure says which twin.
    private Mention? Twin(Draft draft)
    {
        if (draft.Mention is null or { Kind: MentionKind.Pronoun } && draft.Kind is FactKind.Feed or FactKind.Colostrum && statement.SentenceHas(draft.Clause, Lexicon.Tag.Each))
        {
            return new Mention(MentionKind.Pronoun) { Plural = true };
        }

        if (draft.Mention is { Kind: MentionKind.Named or MentionKind.Unknown or MentionKind.BabyOf } && resolver.Births.Count == 0)
        {
            return draft.Mention;
        }

        var sexItem = draft.Clause.Items.FindLast(item => item.First <= draft.Position && item.Is(Lexicon.Tag.Sex) && item.Argument is 1 or 2)
            ?? draft.Clause.Items.Find(item => item.Is(Lexicon.Tag.Sex) && item.Argument is 1 or 2);
        var own = draft.Clause.Items.Exists(item => item.Mention == draft.Mention);
        return sexItem is null || (draft.Mention is { Plural: true } && (own || draft.Value is null)) ? draft.Mention
            : new Mention(MentionKind.SomeBaby) { Sex = sexItem.Argument == 1 ? Sex.Female : Sex.Male };
    }

    private IReadOnlyList<string> Deaths(Draft draft)
    {
        asks.Add(Ask.Sure);
        var dam = draft.Mention is { Kind: MentionKind.Named, Entries.Count: 1 } named ? named.Entries[0] : -1;
        var stillborn = draft.Clause.Has(Lexicon.Tag.Stillborn) || draft.Clause.Has(Lexicon.Tag.Born);
        if (stillborn)
        {
            var dams = resolver.Resolve(draft.Mention, Whom.Dam, "birth");
            var number = draft.Mention?.Ordinal is { } n ? $" {n}" : "";
            return [.. dams.Select(name => name == Fact.AskAnimal ? name : $"{name}'s baby{number}")];
        }

        // "Kestrel lost her baby": it is not the dam who died.
        if (dam >= 0 && draft.Clause.Has(Lexicon.Tag.Lost) && draft.Clause.HasAny(Lexicon.Tag.HasBaby, Lexicon.Tag.Baby))
        {
            var baby = new Mention(MentionKind.BabyOf);
            baby.Entries.Add(dam);
            return resolver.Resolve(baby, Whom.Baby, null);
        }

        return dam >= 0 ? resolver.Resolve(draft.Mention, Whom.Anyone, null) : resolver.Resolve(draft.Mention, Whom.Baby, null);
    }

    private IReadOnlyList<string> Rosters(Draft draft) =>
        resolver.Resolve(draft.Mention, draft.Mention is { Kind: MentionKind.Named } ? Whom.Anyone : Whom.Baby, null);

    private IReadOnlyList<string> Claims(Draft draft, Whom whom)
    {
        if (draft.Task == Care.CareTaskWords.CallVet)
        {
            return draft.Mention is { Kind: not MentionKind.Pronoun } ? resolver.Resolve(draft.Mention, statement.Drafts.Exists(other => Kinship.Of(other.Kind) == Whom.Dam) ? Whom.Dam : Whom.Anyone, null)
                : statement.Drafts.Exists(other => other != draft && Kinship.Of(other.Kind) == Whom.Dam) || statement.Known.Labour ? resolver.Resolve(draft.Mention, Whom.Dam, "birth")
                : resolver.Resolve(draft.Mention, Whom.Baby, null);
        }

        if (draft.Mention is null or { Kind: MentionKind.Pronoun } && statement.Known.Reply is { } reply && reply.Task == draft.Task)
        {
            return reply.Animal is null ? [] : [reply.Animal];
        }

        return draft.Task == "look_in" && draft.Mention is null ? [] : resolver.Resolve(draft.Mention, whom, draft.Task);
    }

    private IReadOnlyList<string> Noted(Draft draft)
    {
        if (draft.Mention is { Kind: MentionKind.Named or MentionKind.BabyOf or MentionKind.Unknown })
        {
            return resolver.Resolve(draft.Mention, draft.Clause.Has(Lexicon.Tag.NoteBaby) && draft.Mention.Kind == MentionKind.Named && !draft.Clause.Has(Lexicon.Tag.HasDam) ? Whom.Baby : Whom.Anyone, null);
        }

        var dams = draft.Clause.HasAny(Lexicon.Tag.NoMilk, Lexicon.Tag.NoteDam) || statement.Drafts.Exists(other => other.Kind is FactKind.LabourSign or FactKind.Presentation);
        return resolver.Resolve(draft.Mention, dams ? Whom.Dam : Whom.Baby, dams ? "placenta" : null);
    }

    // A pronoun or nobody: the newborn, unless only dams are spoken of.
    private IReadOnlyList<string> Dosed(Draft draft) =>
        draft.Mention is null && draft.Clause.Items.Exists(item => item.Is(Lexicon.Tag.All) && item.Argument == WholeHerd)
            ? [.. Enumerable.Range(0, statement.Scan.Herd.Count).Select(statement.Scan.Herd.Entry).Where(one => one.State is not (HerdEntryState.Sold or HerdEntryState.Dead)).Select(one => one.Name)]
        : draft.Mention is null && draft.Clause.Has(Lexicon.Tag.All) ? [Fact.AskAnimal]
            : resolver.Resolve(draft.Mention, draft.Mention is { Kind: MentionKind.Named } ? Whom.Anyone : Whom.Baby, FactWords.Word(draft.Kind));

    private static Fact Base(Draft draft) => new(draft.Kind) { Neg = draft.Neg, Unsure = draft.Unsure };

    private Fact Timed(Draft draft, Fact fact, string? animal)
    {
        if (draft is { Kind: FactKind.Breeding, Neg: false } && (draft.When?.DayOffset > 0 || draft.Clause.Has(Lexicon.Tag.Tomorrow)))
        {
            asks.Add(Ask.Time);
            return fact;
        }

        if (draft.When is not { } when)
        {
            return fact;
        }

        if (draft.Kind is FactKind.Claim)
        {
            return fact with { At = WhenResolver.Ahead(when, statement.Known.Context.Now) };
        }

        if (draft.Ask == Ask.Value && when.Since)
        {
            return fact;
        }

        if (draft.Neg && when.Kind is WhenKind.Age or WhenKind.HourOrAge or WhenKind.Ago)
        {
            return fact;
        }

        var at = WhenResolver.Past(when, statement.Known.Context.Now, BornAt(draft.Kind, animal), out var impossible);
        if (impossible)
        {
            asks.Add(Ask.Time);
        }

        return fact with { At = at };
    }

    private LocalDateTime? BornAt(FactKind kind, string? animal)
    {
        if (animal is null || (Kinship.Of(kind) == Whom.Dam && kind != FactKind.Placenta))
        {
            return null;
        }

        var dam = Core.Herd.BabyName.Read(animal)?.Dam ?? animal;
        var herd = statement.Scan.Herd;
        if (births.TryGetValue(dam, out var now))
        {
            return now;
        }

        if (statement.Known.BornAt(herd.Find(animal)) is { } own)
        {
            return own;
        }

        return kind is FactKind.Placenta && herd.BabiesOf(herd.Find(animal)) is { Count: > 0 } babies ? babies.Select(statement.Known.BornAt).OfType<LocalDateTime>().Cast<LocalDateTime?>().Max() : null;
    }

    private void Add(Fact fact, Draft draft)
    {
        if (fact.Animal == Fact.AskAnimal)
        {
            asks.Add(Ask.Animal);
        }

        if (draft.Ask is { } ask)
        {
            asks.Add(ask);
        }

        var about = (fact.Kind, fact.Animal);
        var others = alike.TryGetValue(about, out var known) ? known : alike[about] = [];
        if (fact is { Neg: true, Kind: FactKind.Vaccination or FactKind.Medication })
        {
            others.RemoveAll(other => !other.Fact.Neg && facts.Remove(other));
        }

        var twin = others.Find(other => IsSame(other.Fact, fact));
        if (twin is null)
        {
            var settled = new Settled(fact, draft.Position);
            facts.Add(settled);
            others.Add(settled);
        }
        else
        {
            var told = twin.Fact;
            twin.Fact = Both(told.At is null ? told with { At = fact.At, Until = told.Until ?? fact.Until, Unsure = told.Unsure && fact.Unsure } : told, fact);
        }
    }

    /// <summary>What is told loosely in two clauses is one fact, about all that either speaks of.</summary>
    private static Fact Both(Fact one, Fact other) => one.Kind is FactKind.Presentation or FactKind.LabourSign or FactKind.Note && one.Text != other.Text
        ? one with
        {
            Field = string.Join(' ', $"{one.Field} {other.Field}".Split(' ', StringSplitOptions.RemoveEmptyEntries).Distinct()) is { Length: > 0 } topics ? topics : null,
            Text = string.Join(", ", new[] { one.Text, other.Text }.OfType<string>()),
        }
        : one;

    private static bool IsSame(Fact a, Fact b) =>
        a.Kind == b.Kind && a.Animal == b.Animal && a.N == b.N && a.Task == b.Task && a.Name == b.Name
        && (a.Kind is FactKind.Presentation or FactKind.LabourSign or FactKind.Note || (a.Value == b.Value && a.Neg == b.Neg && (a.At is null || b.At is null || a.At == b.At)))
        && !(a.Kind == FactKind.Birth && a.Animal == Fact.AskAnimal);

    // Beside facts, one note is enough.
    private void Notes()
    {
        var others = facts.Exists(pair => pair.Fact.Kind != FactKind.Note);
        for (var i = facts.Count - 1; i >= 0 && others; i--)
        {
            if (facts[i].Fact.Kind == FactKind.Note && facts.FindIndex(pair => pair.Fact.Kind == FactKind.Note) < i)
            {
                facts.RemoveAt(i);
            }
        }
    }

    private sealed class Settled(Fact fact, int position)
    {
        public Fact Fact { get; set; } = fact;

        public int Position { get; } = position;
    }
}
