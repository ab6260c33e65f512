using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Finds births, their number and sexes.</summary>
internal static class BirthReader
{
    private static readonly TagSet Never = TagSet.Of(
        Tag.Stillborn, Tag.Died, Tag.Lost, Tag.NameIs, Tag.Sold, Tag.Placenta, Tag.Pregnant, Tag.Scan, Tag.OrderBorn, Tag.Bred, Tag.Weather, Tag.Medicine, Tag.Vaccine, Tag.Meconium, Tag.Urine);

    private static readonly TagSet Young = TagSet.Of(Tag.Baby, Tag.Sex, Tag.Twins, Tag.Triplets, Tag.Hers, Tag.LittleOnes);

    // A birth is told by one of these.
    private static readonly TagSet Signs = TagSet.Of(Tag.Born, Tag.B, Tag.Had, Tag.Dropped, Tag.Out, Tag.Found, Tag.Assist, Tag.Sex, Tag.Twins, Tag.Baby);

    public static void Read(Statement statement, Clause clause)
    {
        if (!clause.Tags.HasAny(Signs))
        {
            return;
        }

        if (statement.Drafts.Find(draft => draft.Kind == FactKind.Birth) is { } told && !IsAnother(statement, clause, told))
        {
            told.When ??= clause.Has(Tag.Born) ? Clock(clause) : null;
            return;
        }

        if (clause.Tags.HasAny(Never) || !Says(statement, clause) || Restates(statement, clause))
        {
            return;
        }

        var birth = statement.Add(FactKind.Birth, clause, clause.First(Tag.Born) ?? clause.First(Tag.Had) ?? clause.First(Tag.Out));
        foreach (var item in clause.Items.Where(item => item.Tags.HasAny(TagSet.Of(Tag.Born, Tag.Had, Tag.Dropped, Tag.Out, Tag.Found, Tag.B, Tag.Baby, Tag.Hers, Tag.Twins, Tag.Gave))))
        {
            item.Used = (item.Kind == ItemKind.Sense && !item.Is(Tag.Assist)) || item.Used;
        }

        birth.When = clause.Has(Tag.Assist) ? Clock(clause) : null;
        Litter(statement, clause, birth);
    }

    private static Times.When? Clock(Clause clause) => clause.Items.Find(item => item is { Kind: ItemKind.Time, When.Kind: Times.WhenKind.Clock or Times.WhenKind.Ago })?.When;

    // "Star had a boy, Sky had a girl": a birth of a dam's own
    private static bool IsAnother(Statement statement, Clause clause, Draft told) =>
        told.Mention is { Kind: MentionKind.Named } && clause.Mentions.Any(mention => mention.Kind == MentionKind.Named
            && statement.Scan.Herd.Entry(mention.Entries[0]).Role == HerdRole.Dam && !told.Mention.Entries.Contains(mention.Entries[0]));

    private static bool Says(Statement statement, Clause clause)
    {
        var young = clause.Tags.HasAny(Young) || clause.Has(Tag.HasBaby);
        var two = clause.Items.Exists(item => item is { Kind: ItemKind.Number, Value: 2 or 3 });
        return clause.Has(Tag.Born)
            || (clause.Has(Tag.B) && clause.Has(Tag.HasTime))
            || (clause.Has(Tag.Had) && !BabyHas(clause) && (young || (two && clause.Has(Tag.HasDam))) && !clause.HasAny(Tag.Nurse, Tag.Bottle, Tag.Medicine, Tag.Bleed, Tag.Vaccine, Tag.HasVolume, Tag.Colostrum) && !HasNewborn(statement, clause))
            || (clause.Has(Tag.Had) && clause.Has(Tag.OneWord) && clause.Has(Tag.HasDam) && Next(statement, clause) is { } told && told.Items.Exists(IsSex))
            || (clause.Has(Tag.Dropped) && (young || (clause.Has(Tag.HasDam) && Next(statement, clause)?.Has(Tag.Sex) == true)))
            || (clause.Has(Tag.Out) && !clause.HasAny(Tag.Part, Tag.Presents, Tag.Bubble, Tag.Meconium, Tag.Weather) && (young || Announced(statement, clause)))
            || (clause.Has(Tag.Found) && young && !HasNewborn(statement, clause) && !(clause.Mentions.Any(mention => mention.Kind == MentionKind.SomeBaby) && !clause.Has(Tag.Baby)))
            || Pulled(statement, clause)
            || Second(statement, clause)
            || Listed(statement, clause);
    }

    // "the baby has scours": what it has, and nobody was born
    private static bool BabyHas(Clause clause) =>
        clause.First(Tag.Baby) is { } baby && clause.First(Tag.Had) is { } had && baby.First < had.First && !clause.HasAny(Tag.HasDam, Tag.Sex);

    // "8:41 out, boy": a bare "out" where a birth is under way and the sex or hour is told
    private static bool Announced(Statement statement, Clause clause) =>
        statement.Known.Labour && (clause.Has(Tag.HasTime) || Next(statement, clause)?.Has(Tag.Sex) == true) || (statement.Clauses.Exists(other => other.HasAny(Tag.WaterBroke, Tag.Assist)) && Next(statement, clause)?.Has(Tag.Sex) == true);

    // "pulled her 4:22, breathing"
    private static bool Pulled(Statement statement, Clause clause) =>
        clause.Has(Tag.Assist) && !clause.HasAny(Tag.Part, Tag.Presents, Tag.Not) && statement.Known.Labour && clause.HasAny(Tag.HasTime, Tag.Out, Tag.Alive) && clause.Mentions.Any(mention => mention.Kind is not MentionKind.Named);

    // "and another one! boy", "the second is out": one more of a dam that has just given birth
    private static bool Second(Statement statement, Clause clause)
    {
        var more = clause.Has(Tag.Another) || (clause.Mentions.Any(mention => mention is { Ordinal: 2, Other: false }) && clause.HasAny(Tag.Be, Tag.Found, Tag.Out)) || (clause.Has(Tag.Twins) && clause.EndMark == "!");
        var told = clause.HasAny(Tag.Sex, Tag.Out, Tag.Born, Tag.Had) || Next(statement, clause) is { } next && next.Has(Tag.Sex) && next.Items.Count <= 3;
        return more && told && !clause.HasAny(Tag.HasQuantity, Tag.HasNumber, Tag.Bottle, Tag.Weight, Tag.Temperature, Tag.Standing, Tag.Nurse, Tag.Claim, Tag.Not, Tag.Gave)
            && (statement.Known.JustBorn || statement.Known.Labour);
    }

    private static Clause? Next(Statement statement, Clause clause)
    {
        var at = statement.Clauses.IndexOf(clause) + 1;
        return at < statement.Clauses.Count ? statement.Clauses[at] : null;
    }

    // "Sage girl on the ground", "half six, wee hembra, 7.9 kilos": a sex and an hour or weight, where a birth is awaited
    private static bool Listed(Statement statement, Clause clause)
    {
        if (!clause.HasAny(Tag.Sex, Tag.Twins, Tag.Baby) || clause.HasAny(Tag.Correct, Tag.Not, Tag.Nurse, Tag.Standing, Tag.Labour, Tag.Due, Tag.When, Tag.Claim) || HasNewborn(statement, clause) || !Awaited(statement, clause))
        {
            return false;
        }

        if (clause.Has(Tag.HasDam) && (clause.Has(Tag.Twins) || clause.HasAny(Tag.Sex)) && clause.EndMark == "!")
        {
            return true;
        }

        var alone = clause.Items.TrueForAll(item => item.Is(Tag.Sex) || item.Tags.HasAny(TagSet.Of(Tag.Article, Tag.Baby, Tag.It, Tag.Be)));
        var at = statement.Clauses.IndexOf(clause);
        if (alone && statement.Clauses.Exists(other => other.Has(Tag.Assist) && other.Sentence == clause.Sentence && statement.Clauses.IndexOf(other) < at))
        {
            return true;
        }

        return statement.Clauses.Exists(other => (alone || other.Sentence == clause.Sentence) && (other.Has(Tag.HasTime) || other.Has(Tag.HasMass) || other.Items.Exists(item => IsWeight(statement, item))));
    }

    // "girl, 10.9": a figure that can only be the newborn's weight
    private static bool IsWeight(Statement statement, Item item) =>
        item.Kind == ItemKind.Number && Readings.TemperatureScale(item.Value) is null && Readings.IsYoungWeight(item.Value, statement.Known.Context.Units == UnitSystem.Metric) && item.Value >= (statement.Known.Context.Units == UnitSystem.Metric ? 4m : 10m);

    private static bool Awaited(Statement statement, Clause clause)
    {
        var named = clause.Mentions.FirstOrDefault(mention => mention.Kind == MentionKind.Named) ?? statement.Named;
        if (named is { Kind: MentionKind.Named, Entries.Count: > 0 })
        {
            return statement.Scan.Herd.Entry(named.Entries[0]) is { Role: HerdRole.Dam, State: HerdEntryState.Due or HerdEntryState.InLabour };
        }

        return named is null && (statement.Known.Labour || statement.Known.Said.Any(line => line.Mention.Entries.Exists(entry => statement.Scan.Herd.Entry(entry).State is HerdEntryState.Due or HerdEntryState.InLabour)));
    }

    private static bool HasNewborn(Statement statement, Clause clause) =>
        clause.Mentions.Any(mention => mention.Kind == MentionKind.BabyOf && mention.Entries.Exists(dam => statement.Scan.Herd.BabiesOf(dam).Any(baby => statement.Scan.Herd.Entry(baby).Role == HerdRole.Newborn)));

    // "born 3 weeks early" about a newborn that is known already
    private static bool Restates(Statement statement, Clause clause) =>
        clause.Has(Tag.Born) && clause.HasAny(Tag.NoteBaby, Tag.OrderBorn) && !statement.Known.Labour && !clause.Has(Tag.HasDam) && !clause.Has(Tag.Sex);

    private static void Litter(Statement statement, Clause clause, Draft birth)
    {
        var sexes = Sexes(statement, clause, birth).ToArray();
        var count = Count(statement, clause, sexes);
        if (count < 2)
        {
            birth.Sex = sexes.Length > 0 ? sexes[0] : null;
            return;
        }

        for (var n = 1; n <= count; n++)
        {
            var one = n == 1 ? birth : new Draft(FactKind.Birth, clause, birth.Position);
            one.N = n;
            one.When = Hour(statement, clause, n, count);
            one.Sex = n <= sexes.Length ? sexes[n - 1] : sexes.Length == 1 && (clause.Items.Exists(item => item is { Kind: ItemKind.Number, Value: 2 }) || Next(statement, clause)?.Items[0] is { Kind: ItemKind.Number, Value: 2 }) ? sexes[0] : null;
            if (n > 1)
            {
                statement.Drafts.Add(one);
            }
        }
    }

    // "6:10 and 6:25": an hour for each
    private static Times.When? Hour(Statement statement, Clause clause, int n, int count)
    {
        var hours = statement.Clauses.Where(other => other.Sentence == clause.Sentence).SelectMany(other => other.Items)
            .Where(item => item is { Kind: ItemKind.Time, When.Kind: Times.WhenKind.Clock }).ToList();
        if (hours.Count != count)
        {
            return null;
        }

        hours[n - 1].Used = true;
        return hours[n - 1].When;
    }

    // "two rams": the word for a grown male, of newborns
    private static bool IsSex(Item item) => IsKindred(item) ||
        (item.Is(Tag.Sex) && item.Argument is 1 or 2 && item.Mention?.Kind is not MentionKind.Pronoun && item.Mention is not { Colour: > 0 }) || item is { Mention: { Kind: MentionKind.SomeMale, AfterPreposition: false } };

    // "buck at 2:10 and doe at 2:25": the word for a grown female, of newborns
    private static bool IsKindred(Item item) => item.Is(Tag.DamWord) && item.Argument is 1 or 2 && item.Mention is null or { Kind: MentionKind.SomeDam };

    private static int Count(Statement statement, Clause clause, Sex?[] sexes) =>
        clause.Has(Tag.Triplets) ? 3
        : clause.Has(Tag.Twins) || clause.Mentions.Any(mention => mention.Count == 2) ? 2
        : clause.Items.Exists(item => item is { Kind: ItemKind.Number, Value: 2, Used: false }) && clause.HasAny(Tag.Had, Tag.Dropped, Tag.Born) ? 2
        : clause.Items.FindIndex(item => item is { Kind: ItemKind.Number, Value: 2, Used: false }) is >= 0 and var two && two + 1 < clause.Items.Count && clause.Items[two + 1].Tags.HasAny(TagSet.Of(Tag.Sex, Tag.Baby, Tag.DamWord)) ? 2
        : Next(statement, clause)?.Items is [{ Kind: ItemKind.Number, Value: 2, Used: false }, var pair, ..] && pair.Tags.HasAny(TagSet.Of(Tag.Sex, Tag.Baby, Tag.DamWord)) ? 2
        : sexes.Length > 1 && statement.Clauses.Count > 0 ? sexes.Length
        : 1;

    // The sexes told from here on; one told twice is the same young one.
    private static IEnumerable<Sex?> Sexes(Statement statement, Clause clause, Draft birth)
    {
        var seen = new HashSet<int>();
        foreach (var other in statement.Clauses.Skip(statement.Clauses.IndexOf(clause)))
        {
            if (other != clause && (birth.Mention is not null || clause.Has(Tag.HasDam)) && other.Mentions.Any(mention => mention.Kind == MentionKind.Named))
            {
                break;
            }

            foreach (var item in other.Items.Where(IsSex))
            {
                var female = item.Is(Tag.DamWord) || item.Argument == 1;
                if (seen.Add(female ? 1 : 2))
                {
                    yield return female ? Sex.Female : Sex.Male;
                }
            }

            if (other != clause && seen.Count == 1 && !other.Has(Tag.Sex) && birth.Clause != other && other.HasAny(Tag.Standing, Tag.Nurse))
            {
                break;
            }
        }

        if (seen.Count == 0 && clause.Mentions.FirstOrDefault(mention => mention.Kind == MentionKind.BabyOf)?.Sex is { } told)
        {
            yield return told;
        }
        else if (seen.Count == 0 && clause.Has(Tag.Assist) && clause.Mentions.FirstOrDefault(mention => mention.Kind == MentionKind.Pronoun)?.Sex is { } pulled)
        {
            yield return pulled;
        }
        else if (seen.Count == 0 && statement.Clauses.Where(other => other.Sentence == clause.Sentence && statement.Clauses.IndexOf(other) > statement.Clauses.IndexOf(clause)).SelectMany(other => other.Mentions).Any(mention => mention is { Kind: MentionKind.Pronoun, Sex: Sex.Male }))
        {
            yield return Sex.Male;
        }
    }
}
