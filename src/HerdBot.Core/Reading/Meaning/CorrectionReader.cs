using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using HerdBot.Core.Reading.Times;
using NodaTime;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Reads messages that mend or withdraw an earlier record.</summary>
internal static class CorrectionReader
{
    private static readonly TagSet SexWords = TagSet.Of(Tag.Not, Tag.Sex, Tag.Article, Tag.Be, Tag.It, Tag.Baby, Tag.But, Tag.MaleWord, Tag.Correct);
    private static readonly Duration Fresh = Duration.FromHours(24);

    /// <summary>The mending facts; empty where the message mends nothing.</summary>
    public static IReadOnlyList<Fact> Read(Statement statement)
    {
        if (statement.Clauses.Count == 0)
        {
            return [];
        }

        return Undo(statement) ?? (Mends(statement) && Mend(statement) is { } fact ? [fact] : []);
    }

    private static Fact[]? Undo(Statement statement)
    {
        var clause = statement.Clauses.Find(one => one.HasAny(Tag.Undo, Tag.Delete));
        if (clause is null || statement.Clauses.IndexOf(clause) > 1 || statement.Clauses.Exists(one => one.Has(Tag.HasQuantity) || (one.Has(Tag.HasNumber) && !one.Has(Tag.Weight))))
        {
            return null;
        }

        var task = PlanReader.TaskOf(clause);
        var whose = Items(statement).FirstOrDefault(item => item.Mention?.Entries.Count > 0)?.Mention;
        if (task is not null && LogOf(statement, task, whose) is { } named)
        {
            return [new Fact(FactKind.Undo) { Animal = named.Fact.Animal, Field = task, Was = Format(named.Fact.Value), Target = named.Id }];
        }

        return clause.Has(Tag.Undo) ? [new Fact(FactKind.Undo) { Target = (statement.Known.ReplyLog ?? statement.Known.LastLog)?.Id }] : null;
    }

    private static LoggedFact? LogOf(Statement statement, string task, Mention? whose) =>
        statement.Known.Context.Log.LastOrDefault(one => FactWords.Word(one.Fact.Kind) == task && IsAbout(statement, one.Fact, whose));

    private static string? Format(decimal? value) => value?.ToString(System.Globalization.CultureInfo.InvariantCulture);

    // It must say that it mends, or answer a record; and there must be a record to mend.
    private static bool Mends(Statement statement)
    {
        var known = statement.Known;
        if (known.Context.Log.IsDefaultOrEmpty)
        {
            return false;
        }

        var first = statement.Clauses[0];
        var opens = first.Items[0].Is(Tag.Correct) || first.Items[0].IsMark('*') || first.Items[0] is { } no && no.Is(Tag.Not) && no.Is(Tag.NotDone) && statement.Clauses.Count > 1;
        opens |= first.Items[0].Is(Tag.Not) && first.Has(Tag.Sex) && first.Items.TrueForAll(item => item.Tags.HasAny(SexWords) || item.Mention is not null);
        opens |= Contrasts(statement);
        if (MendsItself(statement))
        {
            return false;
        }

        var stated = first.HasAny(Tag.Weight, Tag.Temperature) && first.HasAny(Tag.HasNumber, Tag.HasQuantity) && !first.Items[0].Is(Tag.Correct);
        return !stated && (opens || statement.Clauses.Exists(one => one.Has(Tag.Correct)) || (known.ReplyLog is not null && first.Items.Count <= 4));
    }

    // "24.6 wait no, 24.9": a figure mended in the same breath, where nothing like the first is on record
    private static bool MendsItself(Statement statement)
    {
        var items = Items(statement).ToList();
        var mend = items.FindIndex(item => item.Is(Tag.Correct));
        var first = items.FindIndex(item => item.Kind is ItemKind.Number or ItemKind.Quantity);
        return first >= 0 && first < mend && items.FindIndex(mend, item => item.Kind is ItemKind.Number or ItemKind.Quantity) > mend
            && !statement.Known.Context.Log.Any(one => one.Fact.Value == items[first].Value);
    }

    // "sire was Solo not Baxter", "99.2 not 92.9": the one denied is on record
    private static bool Contrasts(Statement statement)
    {
        var items = Items(statement).ToList();
        var not = items.FindIndex(item => item.Is(Tag.Not) && !item.Used && item.End == item.First + 1);
        if (not < 1 || not + 1 >= items.Count)
        {
            return false;
        }

        var (meant, denied) = (items[not - 1], items[not + 1]);
        var log = statement.Known.Context.Log;
        return (meant is { Kind: ItemKind.Time, When.Kind: WhenKind.Clock } && denied is { Kind: ItemKind.Time, When.Kind: WhenKind.Clock })
            || (meant.Kind is ItemKind.Number or ItemKind.Quantity && denied.Kind is ItemKind.Number or ItemKind.Quantity && log.Any(one => one.Fact.Value == denied.Value))
            || (meant.Mention is { Kind: MentionKind.Named } && denied.Mention is { Kind: MentionKind.Named } wrong && statement.Scan.Herd.Entry(wrong.Entries[0]).Name is var name && log.Any(one => one.Fact.Sire == name || one.Fact.Animal == name));
    }

    private static Fact? Mend(Statement statement) =>
        MendUnit(statement) ?? MendHalf(statement) ?? MendSex(statement) ?? MendValue(statement) ?? MendSire(statement) ?? MendAnimal(statement) ?? MendTime(statement) ?? Deny(statement);

    private static IEnumerable<Item> Items(Statement statement) => statement.Clauses.SelectMany(clause => clause.Items);

    private static bool Has(Statement statement, Tag tag) => statement.Clauses.Exists(clause => clause.Has(tag));

    private static Fact From(LoggedFact target, string field, string? was) =>
        new(FactKind.Correction) { Animal = target.Fact.Animal, Field = field, Was = was, Target = target.Id };

    private static LoggedFact? Target(Statement statement, Func<Fact, bool> fits) =>
        statement.Known.ReplyLog is { } reply && fits(reply.Fact) ? reply : statement.Known.Context.Log.LastOrDefault(one => fits(one.Fact));

    // "oops kg not lb"
    private static Fact? MendUnit(Statement statement)
    {
        var units = Items(statement).Where(item => item.Kind == ItemKind.Sense && item.Tags.HasAny(QuantityReader.Units)).ToList();
        if (units.Count == 0 || Items(statement).Any(item => item.Kind is ItemKind.Number or ItemKind.Quantity) || Target(statement, fact => fact.Unit is not null && units.Exists(unit => IsAlike(QuantityReader.UnitOf(unit), fact.Unit))) is not { } target)
        {
            return null;
        }

        var not = Items(statement).FirstOrDefault(item => item.Is(Tag.Not) && !item.Is(Tag.NotDone))?.First ?? int.MaxValue;
        var meant = units.Find(item => item.First < not) ?? units[^1];
        return From(target, "unit", FactWords.Word(target.Fact.Unit!.Value)) with { Value = target.Fact.Value, Unit = QuantityReader.UnitOf(meant) };
    }

    private static bool IsAlike(FactUnit a, FactUnit? b) =>
        (Readings.IsMass(a) && Readings.IsMass(b)) || (Readings.IsVolume(a) && Readings.IsVolume(b)) || (Readings.IsDegree(a) && Readings.IsDegree(b)) || a == b;

    // "meant am not pm"
    private static Fact? MendHalf(Statement statement)
    {
        var half = Items(statement).FirstOrDefault(item => item.Kind == ItemKind.Sense && item.Tags.HasAny(TagSet.Of(Tag.Am, Tag.Pm)) && !item.Is(Tag.Be));
        if (half is null || Target(statement, fact => fact.At?.Time is not null) is not { Fact.At.Time: { } time } target)
        {
            return null;
        }

        var hour = half.Is(Tag.Am) ? time.Hour % 12 : (time.Hour % 12) + 12;
        var at = target.Fact.At!.Value.Date.At(new LocalTime(hour, time.Minute));
        return From(target, "time", time.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture))
            with
        { At = FactTime.Of(at > statement.Known.Context.Now.LocalDateTime ? at.PlusDays(-1) : at) };
    }

    // "it's a boy", where a girl is on record
    private static Fact? MendSex(Statement statement)
    {
        var sexes = Items(statement).Where(item => item.Is(Tag.Sex) && item.Argument is 1 or 2 && item.Mention?.Kind is null or MentionKind.SomeBaby or MentionKind.SomeMale or MentionKind.BabyOf).ToList();
        var no = statement.Clauses[0] is { Items: [var only] } ? only : null;
        var not = Items(statement).FirstOrDefault(item => item.Is(Tag.Not) && item != no)?.First ?? int.MaxValue;
        var denied = sexes.Find(item => item.First > not);
        var told = sexes.Find(item => item != denied) ?? sexes.FirstOrDefault();
        if (told is null || Has(statement, Tag.HasNumber) || Has(statement, Tag.HasQuantity) || Target(statement, fact => fact.Kind == FactKind.Birth) is not { Fact.Animal: { } dam } target)
        {
            return null;
        }

        var sex = told.Argument == 1 ^ told == denied ? Sex.Female : Sex.Male;
        var baby = target.Fact.N is { } n ? $"{dam}'s baby {n}" : statement.Scan.Herd.BabiesOf(statement.Scan.Herd.Find(dam)) is { Count: 1 } one ? statement.Scan.Herd.Entry(one[0]).Name : $"{dam}'s baby";
        return target.Fact.Sex == sex ? null : From(target, "sex", target.Fact.Sex is { } was ? FactWords.Word(was) : null) with { Animal = baby, Sex = sex };
    }

    // "sorry 99.2 not 92.9", "*23.6"
    private static Fact? MendValue(Statement statement)
    {
        var figures = Items(statement).Where(item => item.Kind is ItemKind.Number or ItemKind.Quantity).ToList();
        if (figures.Count == 0)
        {
            return null;
        }

        var not = Items(statement).FirstOrDefault(item => item.Is(Tag.Not) && !(item.Is(Tag.NotDone) && item.First == 0))?.First ?? int.MaxValue;
        var meant = figures.Find(item => item.First < not) ?? figures[^1];
        var wrong = figures.Find(item => item != meant)?.Value;
        var kind = statement.Clauses.Select(PlanReader.TaskOf).FirstOrDefault(task => task is not null);
        var named = Items(statement).FirstOrDefault(item => item.Mention?.Entries.Count > 0)?.Mention;
        // "Thistle's was the 98.3": the figure stands, it is another's
        if (named is not null && statement.Known.Context.Log.LastOrDefault(one => one.Fact.Value == meant.Value) is { } same && !IsAbout(statement, same.Fact, named) && MendAnimal(statement) is { } moved)
        {
            return moved;
        }

        var target = Target(statement, fact => fact.Value is not null && fact.Value == wrong)
            ?? Target(statement, fact => fact.Value is { } was && Likes(fact.Kind, meant, was) && (kind is null || FactWords.Word(fact.Kind) == kind) && IsAbout(statement, fact, named));
        return target is null ? null : From(target, FactWords.Word(target.Fact.Kind), Format(target.Fact.Value))
            with
        { Value = meant.Value, Unit = meant.Unit ?? (target.Fact.Kind == FactKind.Temperature ? Readings.TemperatureScale(meant.Value) : null) ?? target.Fact.Unit };
    }

    private static bool IsAbout(Statement statement, Fact fact, Mention? named) =>
        named is null || named.Entries.Exists(entry => statement.Scan.Herd.Entry(entry).Name == fact.Animal || statement.Scan.Herd.BabiesOf(entry).Any(baby => statement.Scan.Herd.Entry(baby).Name == fact.Animal));

    private static bool Likes(FactKind kind, Item meant, decimal was) =>
        kind switch
        {
            FactKind.Temperature => (meant.Unit is null || Readings.IsDegree(meant.Unit)) && Readings.TemperatureScale(meant.Value) is not null,
            FactKind.Weight => (meant.Unit is null || Readings.IsMass(meant.Unit)) && meant.Value > was / 3m && meant.Value < was * 3m,
            FactKind.Feed or FactKind.Colostrum or FactKind.Medication => meant.Unit is null || Readings.IsVolume(meant.Unit),
            _ => meant.Unit is null,
        };

    // "it was Gus not Flint"
    private static Fact? MendSire(Statement statement)
    {
        var male = Items(statement).FirstOrDefault(item => item.Mention is { Kind: MentionKind.Named } mention && statement.Scan.Herd.Entry(mention.Entries[0]).Role == HerdRole.Sire);
        return male is null || Target(statement, fact => fact.Kind == FactKind.Breeding) is not { } target ? null
            : From(target, "sire", target.Fact.Sire) with { Sire = statement.Scan.Herd.Entry(male.Mention!.Entries[0]).Name };
    }

    // "no wait that was Clover's"
    private static Fact? MendAnimal(Statement statement)
    {
        var item = Items(statement).FirstOrDefault(one => one.Mention is { Entries.Count: > 0 });
        if (item is null || Target(statement, fact => fact.Kind is not (FactKind.Claim or FactKind.Roster or FactKind.Birth)) is not { } target || Has(statement, Tag.Not) && Deny(statement) is not null)
        {
            return null;
        }

        var resolver = new AnimalResolver(statement.Known);
        var names = resolver.Resolve(item.Mention, Kinship.Of(target.Fact.Kind), FactWords.Word(target.Fact.Kind));
        return names.Count != 1 || names[0] == target.Fact.Animal ? null
            : From(target, "animal", target.Fact.Animal) with { Animal = names[0], Value = target.Fact.Value, Unit = target.Fact.Unit };
    }

    private static Fact? MendTime(Statement statement)
    {
        var item = Items(statement).FirstOrDefault(one => one.Kind == ItemKind.Time && one.When!.Kind is WhenKind.Clock or WhenKind.Ago);
        if (item is null || statement.Known.ReplyLog is null && statement.Clauses.Exists(one => one.HasAny(Tag.Standing, Tag.Nurse, Tag.Born)) && !Has(statement, Tag.Correct)
            || (Target(statement, fact => fact.Kind is not FactKind.Claim && statement.Clauses.Exists(one => PlanReader.TaskOf(one) == FactWords.Word(fact.Kind))) ?? Target(statement, fact => fact.Kind is not FactKind.Claim)) is not { } target)
        {
            return null;
        }

        var at = WhenResolver.Past(item.When!, statement.Known.Context.Now, null, out _);
        return at is null ? null : From(target, "time", target.Fact.At?.Time?.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)) with { At = at };
    }

    // "she wasn't nursing after all"
    private static Fact? Deny(Statement statement)
    {
        var task = statement.Clauses.Where(clause => clause.Has(Tag.Not)).Select(PlanReader.TaskOf).FirstOrDefault(one => one is not null);
        return task is null || Target(statement, fact => FactWords.Word(fact.Kind) == task && !fact.Neg) is not { } target || !statement.Known.IsFresh(target, Fresh) ? null
            : From(target, task, null) with { Neg = true };
    }
}
