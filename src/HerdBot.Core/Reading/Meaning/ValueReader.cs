using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Makes readings of the figures in a clause.</summary>
internal static class ValueReader
{
    private static readonly TagSet NoReading = TagSet.Of(Tag.Banter, Tag.Total, Tag.Due, Tag.History);
    private static readonly TagSet FeedWords = TagSet.Of(Tag.Ate, Tag.Bottle, Tag.Tube, Tag.Syringe, Tag.Milk, Tag.Gave, Tag.Colostrum, Tag.Nurse);

    public static void Read(Statement statement, Clause clause)
    {
        for (var i = 0; i < clause.Items.Count; i++)
        {
            var item = clause.Items[i];
            if (!item.Used && item.Kind is ItemKind.Quantity or ItemKind.Number && !item.Used && !IsCount(clause, i))
            {
                One(statement, clause, i, item);
            }
        }

        Missing(statement, clause);
    }

    // "two boys", "both 2 of them", "foot 2": a number that counts things
    private static bool IsCount(Clause clause, int i) =>
        (clause.Items[i].Kind == ItemKind.Number && i + 1 < clause.Items.Count && (clause.Items[i + 1].Kind == ItemKind.Unknown || clause.Items[i + 1].Tags.HasAny(TagSet.Of(Tag.Thing, Tag.Goods)))) ||
        clause.Items[i].Kind == ItemKind.Number && i + 1 < clause.Items.Count && clause.Items[i].Value <= 12m && clause.Items[i].Value % 1 == 0
        && clause.Items[i + 1].Tags.HasAny(TagSet.Of(Tag.Baby, Tag.Sex, Tag.LittleOnes, Tag.Part, Tag.Twins, Tag.GirlsWord, Tag.DamWord, Tag.KitThing, Tag.Bottle, Tag.OneWord));

    private static void One(Statement statement, Clause clause, int i, Item item)
    {
        if (statement.SentenceHas(clause, Tag.Goods) && !clause.Has(Tag.HasAnimal) && SubjectGate.SpeaksOfGoods(statement, clause))
        {
            statement.Because(clause, "figures of goods, not of an animal");
        }
        else if (IsDenied(clause, i))
        {
            item.Used = true;
        }
        else if (WeatherReader.Takes(statement, clause, item))
        {
            WeatherReader.Read(statement, clause, item);
        }
        else if (OfGoods(statement, clause, item))
        {
            statement.Because(clause, "so much of something that is not fed to a newborn");
        }
        else if (Fed(statement, clause, i, item))
        {
            statement.Because(clause, "a feed in the unit of the farm");
        }
        else if (Dose(statement, clause, item) is { } dose)
        {
            (dose.Value, dose.Unit, item.Used) = (item.Value, item.Unit, true);
        }
        else if (Kind(statement, clause, i, item) is { } kind && !Mended(statement, clause, i, item, kind))
        {
            var draft = statement.Add(kind, clause, item);
            Fill(statement, clause, draft, item);
            item.Used = true;
        }
    }

    private static bool IsDashed(Statement statement, Item item)
    {
        var scan = statement.Scan;
        var at = scan.Items.IndexOf(item);
        return (scan.At(at + 1)?.IsMark('-') == true && scan.At(at + 2) is { Kind: ItemKind.Number or ItemKind.Quantity } end && scan.TokenOf(end).Tight && end.Value > item.Value)
            || (scan.At(at - 1)?.IsMark('-') == true && scan.TokenOf(item).Tight && scan.At(at - 2) is { Kind: ItemKind.Number or ItemKind.Quantity } start && item.Value > start.Value);
    }

    // "crate alone 11, crate and baby 34, so 23": what is left when the one is taken from the other
    private static decimal? Tare(Statement statement, Item item)
    {
        if (!statement.Scan.Has(Tag.So))
        {
            return null;
        }

        var figures = statement.Scan.Items.Where(one => one.Kind is ItemKind.Number or ItemKind.Quantity).Select(one => one.Value).ToList();
        return figures.Count == 3 && Math.Abs(figures[0] - figures[1]) == figures[2] && figures.Contains(item.Value) ? figures[2] : null;
    }

    // "102-103": from here to there, not a reading
    private static bool IsRange(Clause clause, int i) =>
        (i + 2 < clause.Items.Count && clause.Items[i].Kind == ItemKind.Number && clause.Items[i + 1].Is(Tag.To) && clause.Items[i + 2] is { Kind: ItemKind.Number or ItemKind.Quantity } end && end.Value > clause.Items[i].Value)
        || (i > 1 && clause.Items[i - 1].Is(Tag.To) && clause.Items[i - 2] is { Kind: ItemKind.Number or ItemKind.Quantity } start && clause.Items[i].Value > start.Value);

    // "sorry 99.2 not 92.9": the figure that it was not
    private static bool IsDenied(Clause clause, int i) =>
        i > 1 && clause.Items[i - 1].Is(Tag.Not) && clause.Has(Tag.Correct) && clause.Items.Take(i - 1).Any(before => before.Kind is ItemKind.Number or ItemKind.Quantity);

    private static Draft? Dose(Statement statement, Clause clause, Item item) =>
        item.Kind == ItemKind.Quantity && Readings.IsVolume(item.Unit) && !clause.HasAny(Tag.Colostrum, Tag.Milk)
            ? statement.Drafts.LastOrDefault(draft => draft.Kind is FactKind.Medication or FactKind.Vaccination && draft.Value is null
                && draft.Clause.Sentence == clause.Sentence && !(draft.Clause != clause && clause.HasAny(Tag.Bottle, Tag.Tube)))
            : null;

    private static FactKind? Kind(Statement statement, Clause clause, int i, Item item)
    {
        if (IsRange(clause, i) || IsDashed(statement, item))
        {
            return null;
        }

        if (Tare(statement, item) is { } tare)
        {
            return tare == item.Value && clause.Has(Tag.So) ? FactKind.Weight : null;
        }

        if (item.Kind == ItemKind.Quantity)
        {
            return OfUnit(statement, clause, item);
        }

        if (clause.Tags.HasAny(NoReading) || (clause.Has(Tag.KitThing) && clause.Has(Tag.KitState)) || statement.Scan.Has(Tag.WithMe) && statement.Scan.Has(Tag.So) && !clause.Has(Tag.So))
        {
            return null;
        }

        return Told(clause, i) ?? OfDegrees(statement, clause, item) ?? ToldBefore(statement, clause) ?? Supposed(statement, clause, item);
    }

    private static FactKind? OfUnit(Statement statement, Clause clause, Item item)
    {
        if (Readings.IsDegree(item.Unit))
        {
            return FactKind.Temperature;
        }

        if (item.Unit == FactUnit.MgPerDl)
        {
            return FactKind.Igg;
        }

        if (Readings.IsVolume(item.Unit) && clause.Has(Tag.Total))
        {
            return null;
        }

        if (Readings.IsVolume(item.Unit) && !(item.Unit == FactUnit.Oz && clause.Has(Tag.Weight)))
        {
            var colostrum = clause.Has(Tag.Colostrum) || (statement.SentenceHas(clause, Tag.Colostrum) && !clause.Has(Tag.Milk)) || statement.Known.Reply?.Task == "colostrum";
            return colostrum ? FactKind.Colostrum
                : clause.Tags.HasAny(FeedWords) || statement.Drafts.Exists(draft => draft.Kind == FactKind.Feed) || statement.Known.Reply?.Task == "feed" || statement.SentenceHas(clause, Tag.Bottle)
                    || statement.Known.Context.Reminders.Any(one => one.Task == "feed")
                    ? FactKind.Feed
                    : null;
        }

        return Readings.IsMass(item.Unit) && !clause.HasAny(Tag.Total, Tag.Medicine) && !(clause.Has(Tag.KitThing) && clause.Has(Tag.KitState)) ? FactKind.Weight : null;
    }

    // The word nearest before the figure says what it is, else the one after.
    private static FactKind? Told(Clause clause, int i)
    {
        for (var k = i - 1; k >= 0; k--)
        {
            if (OfWord(clause.Items[k]) is { } kind)
            {
                return kind;
            }
        }

        for (var k = i + 1; k < clause.Items.Count; k++)
        {
            if (OfWord(clause.Items[k]) is { } kind)
            {
                return kind;
            }
        }

        return null;
    }

    // "only 100 degrees"; degrees that no body has are the weather's
    private static FactKind? OfDegrees(Statement statement, Clause clause, Item item) =>
        !clause.Has(Tag.Degrees) ? null
        : Readings.TemperatureScale(item.Value) is { } scale && (scale == FactUnit.F || statement.Known.Context.Units != UnitSystem.Us || clause.Has(Tag.HasAnimal)) ? FactKind.Temperature
        : null;

    // "weighed him, 17.4"
    private static FactKind? ToldBefore(Statement statement, Clause clause)
    {
        var at = statement.Clauses.IndexOf(clause) - 1;
        return at >= 0 && statement.Clauses[at] is var before && before.Sentence == clause.Sentence && Alone(clause) && !before.HasAny(Tag.HasNumber, Tag.HasQuantity)
            ? before.Items.Select(OfWord).LastOrDefault(kind => kind is not null)
            : null;
    }

    private static FactKind? OfWord(Item item) =>
        item.Is(Tag.Igg) ? FactKind.Igg
        : item.Is(Tag.Weight) || item.Is(Tag.Weighed) ? FactKind.Weight
        : item.Is(Tag.Temperature) || item.Is(Tag.TookReading) ? FactKind.Temperature
        : null;

    private static FactKind? Supposed(Statement statement, Clause clause, Item item)
    {
        var before = statement.Drafts.LastOrDefault(draft => draft.Value is not null || draft.Ask == Ask.Value);
        if (before is { Kind: FactKind.Colostrum or FactKind.Feed, Unit: not null } && clause.HasAny(Tag.HasTime, Tag.Another, Tag.Gave, Tag.Ate))
        {
            return before.Kind;
        }

        if (statement.Known.SaidIdle && statement.Known.Reply is null && !clause.HasAny(Tag.HasDam, Tag.HasBaby) && clause.Items.Exists(one => one.Mention?.Kind == Animals.MentionKind.Pronoun))
        {
            return null;
        }

        var topic = statement.Known.Topic();
        var scale = Readings.TemperatureScale(item.Value);
        if (before is { Kind: FactKind.Igg } && item.Value >= 100m && (Alone(clause) || clause.Has(Tag.Correct)))
        {
            return FactKind.Igg;
        }

        if (before is { Kind: FactKind.Weight } && (scale is null || (scale == FactUnit.C && statement.Known.Context.Units == UnitSystem.Us && before.Unit == FactUnit.Lb)) && (before.Value is not { } earlier || (item.Value < earlier * 2.5m && earlier < item.Value * 2.5m)))
        {
            return FactKind.Weight;
        }

        var metric = statement.Known.Context.Units == UnitSystem.Metric;
        var weighable = Readings.IsYoungWeight(item.Value, metric) && !clause.HasAny(Tag.Labour, Tag.Presents, Tag.Part, Tag.Not);
        if (topic == FactKind.Weight && weighable && (scale is null || statement.Known.Reply?.Task == "weight" || !statement.Known.IsTopic(FactKind.Temperature)))
        {
            return FactKind.Weight;
        }

        if (scale is not null && (topic == FactKind.Temperature || statement.Known.IsTopic(FactKind.Temperature) || IsDecimal(statement, item) || Alone(clause)))
        {
            return FactKind.Temperature;
        }

        if (topic == FactKind.Temperature && statement.Known.Reply is not null && OnlyFigure(statement))
        {
            return FactKind.Temperature;
        }

        // "he was 18.2", "Dixie's boy 23 1/2"
        if (scale is null && weighable && Alone(clause) && clause.Has(Tag.HasAnimal) && (IsDecimal(statement, item) || statement.Scan.TokenOf(item).Decimals == 2 || (item.Value >= 13m && OfYoung(clause))))
        {
            return FactKind.Weight;
        }

        var born = statement.Drafts.Exists(draft => draft.Kind == FactKind.Birth);
        return topic == FactKind.Igg && item.Value >= 100m ? FactKind.Igg
            : weighable && (born || (statement.Known.IsTopic(FactKind.Weight) && Alone(clause))) && !metric == item.Value is >= 8m and <= 60m | metric ? FactKind.Weight
            : null;
    }

    private static bool OfYoung(Clause clause) => clause.Items.Exists(item => item.Mention is { Kind: Animals.MentionKind.BabyOf or Animals.MentionKind.SomeBaby } or { BareGenitive: true });

    // "took her bottle at 3, 150", "biberón 180 a las 8": a bare figure of a feed, in what the farm measures in
    private static bool Fed(Statement statement, Clause clause, int i, Item item)
    {
        var open = statement.Drafts.LastOrDefault(draft => draft is { Kind: FactKind.Feed or FactKind.Colostrum, Value: null, Neg: false } && draft.Clause.Sentence == clause.Sentence);
        var feeding = open is not null || statement.Drafts.Exists(draft => draft.Kind is FactKind.Feed or FactKind.Colostrum && draft.Clause.Sentence == clause.Sentence)
            || clause.HasAny(Tag.Bottle, Tag.Tube, Tag.Syringe) || statement.Known.Reply?.Task is "feed" or "colostrum";
        if (item.Kind != ItemKind.Number || !feeding || clause.Tags.HasAny(NoReading) || clause.HasAny(Tag.Not, Tag.KitState, Tag.Change) || Told(clause, i) is not null || FeedUnit(statement, item) is not { } unit || clause.Items.Exists(one => one.Is(Tag.Mood)))
        {
            return false;
        }

        var draft = open ?? statement.Add(clause.Has(Tag.Colostrum) || statement.Known.Reply?.Task == "colostrum" ? FactKind.Colostrum : statement.Drafts.LastOrDefault(one => one.Kind is FactKind.Feed or FactKind.Colostrum)?.Kind ?? FactKind.Feed, clause, item);
        (draft.Value, draft.Unit, item.Used) = (item.Value, unit, true);
        draft.Route ??= RouteOf(statement, clause);
        return true;
    }

    private static FactUnit? FeedUnit(Statement statement, Item item)
    {
        var said = statement.Drafts.LastOrDefault(draft => draft.Kind is FactKind.Feed or FactKind.Colostrum && draft.Unit is not null)?.Unit;
        var whole = item.Value % 1 == 0;
        return said is not null ? (Readings.TemperatureScale(item.Value) is null || whole ? said : null)
            : statement.Known.Context.Units == UnitSystem.Metric ? (whole && item.Value is >= 20m and <= 2000m ? FactUnit.Ml : null)
            : item.Value is >= 1m and <= 24m ? FactUnit.Oz
            : whole && item.Value is >= 30m and <= 2000m && Readings.TemperatureScale(item.Value) != FactUnit.F ? FactUnit.Ml
            : null;
    }

    // "25 kilos de balanceado", "4 oz of grain": so much of something that is no milk
    private static bool OfGoods(Statement statement, Clause clause, Item item)
    {
        var at = clause.Items.IndexOf(item) + 1;
        if (at >= clause.Items.Count || !clause.Items[at].Is(Tag.Prep) || statement.Scan.TokenOf(clause.Items[at]).Text is not ("of" or "de"))
        {
            return false;
        }

        if (clause.Items.Skip(at + 1).Take(3).Any(one => one.Tags.HasAny(TagSet.Of(Tag.Milk, Tag.Colostrum))))
        {
            return false;
        }

        var of = clause.Items.Skip(at + 1).FirstOrDefault(one => !one.Is(Tag.Article));
        return of is not null && ((of.Kind == ItemKind.Unknown && !statement.Scan.TokenOf(of).Capital) || (of.Kind == ItemKind.Sense && of.Tags.HasAny(TagSet.Of(Tag.Thing, Tag.Goods, Tag.KitThing)) && !of.Tags.HasAny(TagSet.Of(Tag.Milk, Tag.Colostrum))));
    }

    private static bool IsDecimal(Statement statement, Item item) => statement.Scan.TokenOf(item).Decimals == 1 || item.End > item.First + 1;

    private static bool Alone(Clause clause) => clause.Items.TrueForAll(item => item.Kind is ItemKind.Number or ItemKind.Animal or ItemKind.Time
        || item.Tags.HasAny(TagSet.Of(Tag.Be, Tag.Article, Tag.JustNow, Tag.Prep, Tag.Hedge, Tag.So, Tag.Correct, Tag.At, Tag.Exact, Tag.Plain, Tag.Still)));

    private static bool OnlyFigure(Statement statement) => statement.Clauses.Count == 1 && Alone(statement.Clauses[0]);

    // "20, no 21, hang on 21.2": the later figure stands.
    private static bool Mended(Statement statement, Clause clause, int i, Item item, FactKind kind)
    {
        var at = statement.Clauses.IndexOf(clause);
        var corrects = (i == 0 && at > 0 && statement.Clauses[at - 1] is var told && told.Sentence == clause.Sentence && told.Items[^1].Tags.HasAny(TagSet.Of(Tag.Correct, Tag.Not)) && told.Items.Exists(before => before.Kind is ItemKind.Number or ItemKind.Quantity))
            || clause.Items.Take(i).Any(before => before.Is(Tag.Correct) || (before.Is(Tag.Not) && before.First == clause.Items[0].First) || before.Is(Tag.So));
        if (!corrects || statement.Drafts.LastOrDefault(draft => draft.Kind == kind && (draft.Value is not null || draft.Ask == Ask.Value)) is not { } earlier)
        {
            return false;
        }

        earlier.Ask = null;
        Fill(statement, clause, earlier, item);
        item.Used = true;
        return true;
    }

    private static void Fill(Statement statement, Clause clause, Draft draft, Item item)
    {
        draft.Value = item.Value;
        draft.Unit = item.Unit;
        draft.Route = draft.Kind is FactKind.Feed or FactKind.Colostrum ? RouteOf(statement, clause) : null;
        if (clause.Items.IndexOf(item) is > 0 and var at && clause.Items[at - 1].Is(Tag.Over) && draft.Kind is FactKind.Temperature or FactKind.Weight or FactKind.Igg)
        {
            draft.Ask = Ask.Value;
            return;
        }

        switch (draft.Kind)
        {
            case FactKind.Temperature when !Readings.IsPossible(item.Value, item.Unit) && (item.Unit is null || Readings.TemperatureScale(item.Value) is null || Readings.TemperatureScale(item.Value) != item.Unit):
                draft.Unit = Readings.TemperatureScale(item.Value);
                draft.Ask = draft.Unit is null ? Ask.Value : null;
                break;
            case FactKind.Colostrum or FactKind.Feed when item.Unit is null:
                draft.Unit = statement.Drafts.LastOrDefault(other => other != draft && other.Kind == draft.Kind && other.Unit is not null)?.Unit;
                break;
            case FactKind.Weight when item.Unit is null:
                UnitGuess.Weigh(statement, draft);
                break;
            case FactKind.Igg when item.Unit is null:
                draft.Value = statement.Scan.TokenOf(item) is { Comma: true, Decimals: 3 } ? item.Value * 1000m : item.Value;
                draft.Unit = FactUnit.MgPerDl;
                break;
        }
    }

    private static FeedRoute? RouteOf(Statement statement, Clause clause) =>
        clause.Has(Tag.Tube) ? FeedRoute.Tube
        : clause.Has(Tag.Syringe) ? FeedRoute.Syringe
        : clause.Has(Tag.Bottle) ? FeedRoute.Bottle
        : clause.Mentions.Any(mention => mention.Kind is MentionKind.Named or MentionKind.BabyOf or MentionKind.Unknown) ? null
        : statement.Drafts.LastOrDefault(draft => draft.Route is not null && draft.Clause.Sentence == clause.Sentence)?.Route;

    // "up .4", "gained half a pound": how much it changed, not what it weighs
    public static bool Change(Statement statement, Clause clause)
    {
        if (!clause.HasAny(Tag.HasNumber, Tag.HasQuantity) || !clause.HasAny(Tag.Change, Tag.Standing, Tag.Down, Tag.Lost))
        {
            return false;
        }

        for (var i = 0; i + 1 < clause.Items.Count; i++)
        {
            var figure = clause.Items.Skip(i + 1).FirstOrDefault(item => item.Kind is ItemKind.Number or ItemKind.Quantity);
            var adjacent = figure is not null && clause.Items[i].End == figure.First;
            var first = clause.Items[i];
            var small = figure is not null && (figure.Value < 5m || figure.Unit is FactUnit.Oz or FactUnit.G);
            if (figure is null || !small || !((first.Is(Tag.Change) && !first.Is(Tag.Lost)) || (adjacent && (first.Is(Tag.Standing) || first.Is(Tag.Down) || first.Is(Tag.Lost)))) || figure.Unit is FactUnit.F or FactUnit.C)
            {
                continue;
            }

            var draft = statement.Add(FactKind.Weight, clause, first);
            draft.Ask = Ask.Value;
            (first.Used, figure.Used) = (true, true);
            return true;
        }

        return false;
    }

    // A reading that is told of without its figure.
    private static void Missing(Statement statement, Clause clause)
    {
        if (statement.Clauses.Exists(other => other.HasAny(Tag.HasNumber, Tag.HasQuantity)))
        {
            return;
        }

        if (clause.Has(Tag.ReadsLow))
        {
            var low = clause.First(Tag.ReadsLow)!;
            statement.Add(FactKind.Temperature, clause, low).Text = statement.Scan.Slice(low, low);
        }
        else if (clause.Has(Tag.Weighed) && !clause.HasAny(Tag.Not, Tag.Claim) && !clause.Asked)
        {
            statement.Add(FactKind.Weight, clause, clause.First(Tag.Weighed)).Ask = Ask.Value;
        }
        else if (clause.Has(Tag.Temperature) && clause.Has(Tag.Fine) && !clause.HasAny(Tag.Not, Tag.Claim) && !clause.Asked)
        {
            statement.Add(FactKind.Temperature, clause, clause.First(Tag.Temperature)).Ask = Ask.Value;
        }
        else if (clause.Has(Tag.Igg) && statement.Known.Reply?.Task == "igg" && !clause.HasAny(Tag.Not, Tag.Claim, Tag.Done) && !clause.Asked)
        {
            statement.Add(FactKind.Igg, clause, clause.First(Tag.Igg)).Ask = Ask.Value;
        }
        else if (clause.Has(Tag.TookReading) && !clause.HasAny(Tag.Not, Tag.Claim) && !clause.Asked)
        {
            statement.Add(FactKind.Temperature, clause, clause.First(Tag.TookReading)).Ask = Ask.Value;
        }
    }
}
