using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Finds what a clause says by the frames of the grammar.</summary>
internal static class FrameReader
{
    // A scan sees nothing before; common practice, no source.
    private const double FewestDaysSeen = 20;
    private static readonly TagSet Topics = TagSet.Of(Tag.Cord, Tag.Placenta);

    public static void Read(Statement statement, Clause clause)
    {
        var need = clause.Has(Tag.Need) && !clause.HasAny(Tag.Not, Tag.NoAssist, Tag.Claim);
        var carried = Carried(statement, clause);
        foreach (var frame in Frames.Within(clause.Tags | carried))
        {
            if (!(frame.Alone && statement.Of(clause).Any()) && !(need && IsDeed(frame.Give)) && Fits(statement, clause, frame, carried))
            {
                if (frame.Give is FactKind.Medication or FactKind.Vaccination && IsToldAlready(statement, clause))
                {
                    continue;
                }

                var draft = statement.Add(frame.Give, clause, clause.Unused(frame.All[0]) ?? clause.Unused(frame.All[^1]));
                draft.Neg = frame.Neg;
                draft.Unsure = frame.Unsure;
                Use(clause, frame);
            }
        }

        Days(statement, clause);
    }

    // "scanned: Opal open, Boots 90 days"
    private static void Days(Statement statement, Clause clause)
    {
        if ((statement.Scan.Has(Tag.Scan) || statement.Known.SaidScan) && clause.Has(Tag.HasDam) && !statement.Of(clause).Any(draft => draft.Kind != FactKind.Note)
            && clause.Items.Find(item => item.When is { Kind: Times.WhenKind.Length } when && when.Length.TotalDays >= FewestDaysSeen) is { } days)
        {
            statement.Add(FactKind.PregnancyCheck, clause, days);
            days.Used = true;
        }
    }

    // "the wormer is on the shelf" gives nobody anything; "wormed Ruthie, fenbendazole 20 ml" is one dose.
    private static bool IsToldAlready(Statement statement, Clause clause) =>
        statement.Of(clause).Any(draft => draft.Kind is FactKind.Kit)
        || (!clause.Has(Tag.HasAnimal) && statement.Drafts.Exists(draft => draft is { Kind: FactKind.Medication or FactKind.Vaccination, Value: null } && draft.Clause != clause && draft.Clause.Sentence == clause.Sentence));

    private static bool Fits(Statement statement, Clause clause, Frame frame, TagSet carried)
    {
        if (!clause.Tags.HasAny(frame.Needs) || clause.Tags.HasAny(frame.No) || !(frame.Any.IsEmpty || clause.Tags.HasAny(frame.Any)))
        {
            return false;
        }

        foreach (var tag in frame.All)
        {
            if (clause.Unused(tag) is null && !IsSign(tag) && !carried.Has(tag))
            {
                return false;
            }
        }

        if (frame.Give == FactKind.LabourSign && clause.Mentions.Any() && clause.Mentions.All(mention => mention.Kind == Animals.MentionKind.BabyOf))
        {
            return false;
        }

        if (frame.Condition == "labour" && statement.Drafts.Exists(draft => draft.Kind == FactKind.Birth))
        {
            return false;
        }

        return frame.Condition switch
        {
            "scan" => statement.Scan.Has(Tag.Scan) || statement.Known.SaidScan,
            "feeding" => statement.Drafts.Exists(draft => draft.Kind is FactKind.Feed or FactKind.Colostrum) || statement.Known.Reply?.Task is "feed" or "colostrum" || statement.SentenceHas(clause, Tag.Bottle),
            "male" => statement.Clauses.Exists(other => other.Has(Tag.HasMale)) || statement.Known.Said.Any(line => line.Mention.Entries.Exists(entry => statement.Scan.Herd.Entry(entry).Role == Core.Herd.HerdRole.Sire)),
            "short" => clause.Items.Count <= 2,
            _ => statement.Known.Holds(frame.Condition),
        };
    }

    // "the cord snapped short and is oozing": what the clause before spoke of, where it said nothing of it
    private static TagSet Carried(Statement statement, Clause clause)
    {
        var at = statement.Clauses.IndexOf(clause) - 1;
        return at >= 0 && statement.Clauses[at] is var before && before.Sentence == clause.Sentence && before.Tags.HasAny(Topics) && !clause.HasAny(Tag.HasAnimal, Tag.Cord, Tag.Placenta) && !statement.Of(before).Any()
            ? before.Tags & Topics
            : default;
    }

    // What needs doing has not been done.
    private static bool IsDeed(FactKind kind) =>
        kind is FactKind.CordDip or FactKind.Medication or FactKind.Vaccination or FactKind.Nursing or FactKind.Standing or FactKind.Assistance or FactKind.Breeding;

    // Signs say what sort of items a clause holds; they are not words and do not wear out.
    private static bool IsSign(Tag tag) => tag is >= Tag.HasAnimal;

    private static void Use(Clause clause, Frame frame)
    {
        foreach (var tag in frame.All)
        {
            foreach (var item in clause.Items)
            {
                if (item.Is(tag) && tag is not (Tag.Not or Tag.Done or Tag.She or Tag.Tried))
                {
                    item.Used = true;
                }
            }
        }
    }
}
