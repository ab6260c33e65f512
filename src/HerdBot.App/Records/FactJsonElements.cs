using System.Text.Json;

namespace HerdBot.App.Records;

/// <summary>Reads single properties without throwing, whatever the JSON holds.</summary>
internal static class FactJsonElements
{
    /// <summary>A string, or a number as it is written; null where absent or of another shape.</summary>
    public static string? Text(this JsonElement json, string key) => json.Child(key) switch
    {
        { ValueKind: JsonValueKind.String } text => Unescaped(text),
        { ValueKind: JsonValueKind.Number } number => number.GetRawText(),
        _ => null,
    };

    /// <summary>A number within decimal's range; null otherwise.</summary>
    public static decimal? Number(this JsonElement json, string key) =>
        json.Child(key) is { ValueKind: JsonValueKind.Number } number && number.TryGetDecimal(out var value) ? value : null;

    /// <summary>A whole number within int's range; null otherwise.</summary>
    public static int? Whole(this JsonElement json, string key) =>
        json.Child(key) is { ValueKind: JsonValueKind.Number } number && number.TryGetInt32(out var value) ? value : null;

    /// <summary>True only where the property is true.</summary>
    public static bool Flag(this JsonElement json, string key) => json.Child(key) is { ValueKind: JsonValueKind.True };

    /// <summary>The elements of an array; none where it is absent or no array.</summary>
    public static IEnumerable<JsonElement> Items(this JsonElement json, string key) =>
        json.Child(key) is { ValueKind: JsonValueKind.Array } array ? array.EnumerateArray() : [];

    /// <summary>The property, whatever it holds; null where absent.</summary>
    public static JsonElement? Child(this JsonElement json, string key) =>
        json.ValueKind == JsonValueKind.Object && json.TryGetProperty(key, out var child) ? child : null;

    private static string? Unescaped(JsonElement text)
    {
        try
        {
            return text.GetString();
        }
        catch (InvalidOperationException)
        {
            return text.GetRawText().Trim('"'); // half a surrogate pair, written as an escape
        }
    }
}
