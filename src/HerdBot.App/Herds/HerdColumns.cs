using System.Collections.Frozen;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;

namespace HerdBot.App.Herds;

/// <summary>The words of a list of animals, in English and Spanish: heads of columns, and what may stand in them.</summary>
public static class HerdColumns
{
    /// <summary>The columns that are read, by their names.</summary>
    public static IReadOnlyList<string> Names { get; } = ["name", "tag", "species", "sex", "role", "born", "dam", "colour", "state", "nickname"];

    private static readonly FrozenDictionary<string, string> Heads = Words(
        ("name", "name|nombre|animal"), ("tag", "tag|ear tag|tag number|number|caravana|arete|numero|número"), ("species", "species|especie"), ("sex", "sex|sexo"),
        ("role", "role|rol|tipo"), ("born", "born|birth date|date of birth|nacimiento|nacida|nacido|fecha de nacimiento"), ("dam", "dam|mother|madre"),
        ("colour", "colour|color"), ("state", "state|estado"), ("nickname", "nickname|apodo|sobrenombre"));

    /// <summary>What may stand in a column, as people are told it.</summary>
    internal static readonly FrozenDictionary<string, string> Offered = new Dictionary<string, string>
    {
        ["species"] = "llama, alpaca, sheep or goat",
        ["sex"] = "f or m",
        ["role"] = "dam, sire or young",
        ["state"] = "due, in_labour, open, sold or dead, or leave it empty",
    }.ToFrozenDictionary();

    /// <summary>What may stand under "species".</summary>
    internal static readonly FrozenDictionary<string, Species> SpeciesWords = Words(
        (Species.Llama, "llama|l"), (Species.Alpaca, "alpaca|a"), (Species.Sheep, "sheep|oveja|ovino"), (Species.Goat, "goat|cabra"));

    /// <summary>What may stand under "sex".</summary>
    internal static readonly FrozenDictionary<string, Sex> SexWords = Words((Sex.Female, "f|female|hembra|h"), (Sex.Male, "m|male|macho"));

    /// <summary>What may stand under "role".</summary>
    internal static readonly FrozenDictionary<string, HerdRole> RoleWords = Words(
        (HerdRole.Dam, "dam|madre|hembra"), (HerdRole.Sire, "sire|stud|male|padre|semental|padrote|macho"), (HerdRole.Young, "young|cria|cría|joven"));

    /// <summary>What may stand under "state".</summary>
    internal static readonly FrozenDictionary<string, HerdEntryState> StateWords = Words(
        (HerdEntryState.Due, "due|pregnant|preñada|prenada"), (HerdEntryState.InLabour, "in_labour|in labour|in labor|de parto"), (HerdEntryState.Open, "open|vacia|vacía"),
        (HerdEntryState.Sold, "sold|gone|vendida|vendido"), (HerdEntryState.Dead, "dead|muerta|muerto"));

    /// <summary>The column of a head, whatever its letter case; null where it is none that is read.</summary>
    public static string? Of(string head)
    {
        ArgumentNullException.ThrowIfNull(head);
        return Heads.GetValueOrDefault(head.Trim());
    }

    private static FrozenDictionary<string, T> Words<T>(params (T Meaning, string Words)[] rows) => rows
        .SelectMany(row => row.Words.Split('|').Select(word => KeyValuePair.Create(word, row.Meaning))).ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);
}
