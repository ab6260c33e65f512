using System.Collections.Frozen;

namespace HerdBot.Core.Facts;

/// <summary>The written words of the closed sets: files, output and lexicon all use these.</summary>
public static class FactWords
{
    private static readonly FrozenDictionary<FactKind, string> Kinds =
        Enum.GetValues<FactKind>().ToFrozenDictionary(kind => kind, kind => Snake(kind.ToString()));

    private static readonly FrozenDictionary<string, FactKind> KindsByWord =
        Kinds.ToFrozenDictionary(pair => pair.Value, pair => pair.Key);

    private static readonly FrozenDictionary<FactUnit, string> Units = new Dictionary<FactUnit, string>
    {
        [FactUnit.F] = "F",
        [FactUnit.C] = "C",
        [FactUnit.Lb] = "lb",
        [FactUnit.Kg] = "kg",
        [FactUnit.G] = "g",
        [FactUnit.Oz] = "oz",
        [FactUnit.Ml] = "ml",
        [FactUnit.Cc] = "cc",
        [FactUnit.MgPerDl] = "mg/dL",
        [FactUnit.Percent] = "percent",
        [FactUnit.Score] = "score",
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, FactUnit> UnitsByWord =
        Units.ToFrozenDictionary(pair => pair.Value, pair => pair.Key);

    /// <summary>"cord_dip" for <see cref="FactKind.CordDip"/>.</summary>
    public static string Word(FactKind kind) => Kinds[kind];

    /// <summary>"mg/dL" for <see cref="FactUnit.MgPerDl"/>.</summary>
    public static string Word(FactUnit unit) => Units[unit];

    /// <summary>"f" or "m".</summary>
    public static string Word(Sex sex) => sex == Sex.Female ? "f" : "m";

    /// <summary>"bottle", "tube", "syringe".</summary>
    public static string Word(FeedRoute route) => Snake(route.ToString());

    /// <summary>"animal", "value", "unit", "time", "sure".</summary>
    public static string Word(Ask ask) => Snake(ask.ToString());

    /// <summary>The kind of a word; false where there is none.</summary>
    public static bool TryKind(string word, out FactKind kind) => KindsByWord.TryGetValue(word, out kind);

    /// <summary>The unit of a word; false where there is none.</summary>
    public static bool TryUnit(string word, out FactUnit unit) => UnitsByWord.TryGetValue(word, out unit);

    /// <summary>The sex of "f" or "m"; null for anything else.</summary>
    public static Sex? SexOf(string? word) => word switch { "f" => Sex.Female, "m" => Sex.Male, _ => null };

    /// <summary>The route of a word; null for anything else.</summary>
    public static FeedRoute? RouteOf(string? word) =>
        word switch { "bottle" => FeedRoute.Bottle, "tube" => FeedRoute.Tube, "syringe" => FeedRoute.Syringe, _ => null };

    /// <summary>"CordDip" as "cord_dip".</summary>
    public static string Snake(string pascal) =>
        string.Concat(pascal.Select((c, i) => char.IsUpper(c) ? (i == 0 ? "" : "_") + char.ToLowerInvariant(c) : c.ToString()));
}
