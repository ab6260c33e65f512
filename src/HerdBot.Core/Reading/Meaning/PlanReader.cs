using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Turns what somebody means to do into a claim.</summary>
internal static class PlanReader
{
    public static void Read(Statement statement, Clause clause, int from)
    {
        if (clause.HasAny(Tag.Call, Tag.CallAsked) && clause.Has(Tag.Vet) && !VetCalls(clause) || (clause.Has(Tag.Call) && clause.Items.Count <= 2 && statement.Known.Reply?.Task is "vet_today"))
        {
            CallsVet(statement, clause, from);
        }
        else if (clause.Has(Tag.Redo))
        {
            Claim(statement, clause, statement.Drafts.LastOrDefault(draft => draft.Value is not null || draft.Unsure)?.Kind is { } kind ? FactWords.Word(kind) : null);
        }
        else if (clause.Has(Tag.GiveUp) && !clause.HasAny(Tag.HasQuantity))
        {
            statement.Drafts.RemoveRange(from, statement.Drafts.Count - from);
            Claim(statement, clause, statement.Known.Context.Log.LastOrDefault(fact => fact.Fact.Kind == FactKind.Claim)?.Fact.Task ?? statement.Known.SoleReminder?.Task).Neg = true;
        }
        else if ((clause.Has(Tag.Claim) || Continues(statement, clause)) && IsPlan(clause))
        {
            Planned(statement, clause, from);
        }
    }

    // "I'll weigh and temp her"
    private static bool Continues(Statement statement, Clause clause)
    {
        var at = statement.Clauses.IndexOf(clause) - 1;
        return at >= 0 && statement.Clauses[at] is var before && before.Sentence == clause.Sentence && before.EndMark.Length == 0 && !clause.HasAny(Tag.HasNumber, Tag.HasQuantity, Tag.Done, Tag.Not)
            && statement.Of(before).Any(draft => draft.Kind == FactKind.Claim);
    }

    // "vet texted, IgG is 1340": it is the vet who calls
    private static bool VetCalls(Clause clause) =>
        !clause.Has(Tag.CallAsked) && clause.Items.Find(item => !item.Tags.HasAny(TagSet.Of(Tag.Article))) is { } first && first.Is(Tag.Vet) && !first.Is(Tag.Call);

    private static bool IsPlan(Clause clause) => !clause.HasAny(Tag.Born, Tag.Had) && !clause.Asked;

    private static void CallsVet(Statement statement, Clause clause, int from)
    {
        statement.Drafts.RemoveRange(from, statement.Drafts.Count - from);
        if (clause.Has(Tag.CallAsked))
        {
            statement.Add(FactKind.Note, clause, clause.First(Tag.CallAsked)).Mention = statement.Named;
            return;
        }

        Claim(statement, clause, Care.CareTaskWords.CallVet).Mention = statement.Drafts.Count > 1 ? statement.Drafts[0].Mention : statement.Named;
    }

    private static void Planned(Statement statement, Clause clause, int from)
    {
        var planned = statement.Drafts.Skip(from).FirstOrDefault(draft => draft.Kind is not (FactKind.Note or FactKind.Roster));
        if (planned is { Value: not null } && planned.Kind is FactKind.Temperature or FactKind.Weight)
        {
            if (clause.First(Tag.Claim) is { } plan && plan.First < planned.Position && !statement.SentenceHas(clause, Tag.Weighed))
            {
                statement.Drafts.Remove(planned);
            }

            return;
        }

        if (planned is { Kind: FactKind.Presentation or FactKind.LabourSign or FactKind.WaterBroke or FactKind.Birth or FactKind.Death })
        {
            return;
        }

        var task = planned is null ? TaskOf(clause) : FactWords.Word(planned.Kind);
        if (task is null)
        {
            return;
        }

        var mention = planned?.Mention ?? clause.Mentions.FirstOrDefault() ?? statement.Named;
        statement.Drafts.RemoveRange(from, statement.Drafts.Count - from);
        Claim(statement, clause, task).Mention = mention;
        if (planned is null && clause.Has(Tag.And) && clause.Has(Tag.Weight) && task == "temperature")
        {
            Claim(statement, clause, "weight").Mention = mention;
        }
    }

    /// <summary>The task that a clause's words name, though they state nothing.</summary>
    public static string? TaskOf(Clause clause) =>
        clause.Has(Tag.Temperature) || clause.Has(Tag.TookReading) ? "temperature"
        : clause.Has(Tag.Weight) ? "weight"
        : clause.HasAny(Tag.Cord, Tag.Dip, Tag.Iodine) ? "cord_dip"
        : clause.Has(Tag.Colostrum) ? "colostrum"
        : clause.HasAny(Tag.Bottle, Tag.Tube, Tag.Milk) ? "feed"
        : clause.Has(Tag.Placenta) ? "placenta"
        : clause.Has(Tag.Nurse) ? "nursing"
        : clause.HasAny(Tag.Ate, Tag.NurseWeak) && clause.Has(Tag.Question) ? "nursing"
        : clause.HasAny(Tag.Standing) ? "standing"
        : clause.Has(Tag.Meconium) ? "meconium"
        : clause.Has(Tag.Urine) ? "urine"
        : clause.Has(Tag.Igg) ? "igg"
        : clause.Has(Tag.Vaccine) ? "vaccination"
        : null;

    private static Draft Claim(Statement statement, Clause clause, string? task)
    {
        var claim = statement.Add(FactKind.Claim, clause, clause.First(Tag.Claim));
        claim.Task = task;
        claim.Mention ??= statement.Named;
        return claim;
    }
}
