using System.Reflection;
using System.Text.Json;
using HerdBot.Core.Facts;

namespace HerdBot.Core.Reading.Lexicon;

/// <summary>Which meanings in one clause make which fact.</summary>
/// <param name="Give">The fact's kind.</param>
/// <param name="All">All of these must be there.</param>
/// <param name="Any">And one of these, where any are named.</param>
/// <param name="No">And none of these.</param>
internal sealed record Frame(FactKind Give, Tag[] All, TagSet Any, TagSet No)
{
    /// <summary>All of them as a set, for a quick look.</summary>
    public TagSet Needs { get; } = TagSet.Of(All);

    /// <summary>Says that the thing has not happened.</summary>
    public bool Neg { get; init; }

    /// <summary>Evidence, no statement.</summary>
    public bool Unsure { get; init; }

    /// <summary>Counts only where the clause says nothing else.</summary>
    public bool Alone { get; init; }

    /// <summary>The circumstances it needs.</summary>
    public string? Condition { get; init; }
}

/// <summary>The frames, the most telling first, as the grammar file lists them.</summary>
internal static class Frames
{
    private static readonly Frame[] All = Load();
    private static readonly TagSet[] Needs = Array.ConvertAll(All, frame => frame.Needs);

    /// <summary>The frames whose needs are among the tags, in their order.</summary>
    public static IEnumerable<Frame> Within(TagSet tags)
    {
        for (var i = 0; i < Needs.Length; i++)
        {
            if (tags.HasAll(Needs[i]))
            {
                yield return All[i];
            }
        }
    }

    private static Frame[] Load()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("Reading/Lexicon/grammar.json")
            ?? throw new InvalidOperationException("The grammar is not embedded.");
        using var json = JsonDocument.Parse(stream);
        return [.. json.RootElement.GetProperty("frames").EnumerateArray().Select(One)];
    }

    private static Frame One(JsonElement json) =>
        new(FactWords.TryKind(json.GetProperty("give").GetString()!, out var kind) ? kind : throw new InvalidOperationException($"No such kind: {json}"),
            [.. Tags(json, "all")], TagSet.Of([.. Tags(json, "any")]), TagSet.Of([.. Tags(json, "no")]))
        {
            Neg = json.TryGetProperty("neg", out _),
            Unsure = json.TryGetProperty("unsure", out _),
            Alone = json.TryGetProperty("alone", out _),
            Condition = json.TryGetProperty("when", out var when) ? when.GetString() : null,
        };

    private static IEnumerable<Tag> Tags(JsonElement json, string key) =>
        json.TryGetProperty(key, out var list) ? list.EnumerateArray().Select(word => Vocabulary.TagOf(word.GetString()!)) : [];
}
