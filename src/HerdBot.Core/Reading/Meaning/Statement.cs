using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Animals;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>The message while it is being understood: its clauses, the facts so far, what carries over.</summary>
internal sealed class Statement(Scan scan, Circumstances known, List<Clause> clauses)
{
    private readonly TagSet[] sentences = SentenceTags(clauses);

    public Scan Scan { get; } = scan;

    public Circumstances Known { get; } = known;

    public List<Clause> Clauses { get; } = clauses;

    public List<Draft> Drafts { get; } = [];

    /// <summary>Why clauses gave nothing.</summary>
    public List<(Clause Clause, string Why)> Reasons { get; } = [];

    /// <summary>The animal named last.</summary>
    public Mention? Named { get; set; }

    public Draft Add(FactKind kind, Clause clause, Item? anchor)
    {
        var draft = new Draft(kind, clause, anchor?.First ?? (clause.Items.Count > 0 ? clause.Items[0].First : 0)) { Anchor = anchor };
        Drafts.Add(draft);
        return draft;
    }

    public bool SentenceHas(Clause clause, Tag tag) => sentences[clause.Sentence].Has(tag);

    private static TagSet[] SentenceTags(List<Clause> clauses)
    {
        var tags = new TagSet[clauses.Count == 0 ? 0 : clauses[^1].Sentence + 1];
        foreach (var clause in clauses)
        {
            tags[clause.Sentence] |= clause.Tags;
        }

        return tags;
    }

    public IEnumerable<Draft> Of(Clause clause) => Drafts.Where(draft => draft.Clause == clause);

    public void Because(Clause clause, string why) => Reasons.Add((clause, why));
}
