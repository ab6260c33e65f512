using System.Collections.Immutable;
using System.Text.Json;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading;
using NodaTime.Text;

namespace HerdBot.App.Records;

/// <summary>One field message with its circumstances, as files of messages hold it.</summary>
/// <param name="Id">Names the line; null where it has none.</param>
/// <param name="Text">The message.</param>
/// <param name="Context">What the reader may know.</param>
public sealed record CorpusLine(string? Id, string Text, ReadingContext Context)
{
    /// <summary>Parses a line. Total: what is wrong comes back as a sentence.</summary>
    /// <param name="line">One line of the file.</param>
    /// <param name="id">The line's id, where it could be read even though the rest could not.</param>
    /// <param name="error">What is wrong; null where the line is good.</param>
    /// <returns>The line, or null where it cannot be used.</returns>
    public static CorpusLine? Parse(string line, out string? id, out string? error)
    {
        id = null;
        try
        {
            using var document = JsonDocument.Parse(line);
            id = document.RootElement.Text("id");
            return Parse(document.RootElement, id, out error);
        }
        catch (Exception fault) when (fault is JsonException or ArgumentException)
        {
            error = "The line is no JSON object.";
            return null;
        }
    }

    /// <summary>The facts a labelled line expects, and what is to be asked; used by scorers.</summary>
    public static (ImmutableArray<Fact> Facts, Ask? Ask) Expected(JsonElement line)
    {
        var expect = line.Child("expect") ?? default;
        var facts = expect.Items("facts").Select(FactJson.Read).OfType<Fact>().ToImmutableArray();
        return (facts, CorpusLineGiven.ParseWord<Ask>(expect.Text("ask")));
    }

    private static CorpusLine? Parse(JsonElement root, string? id, out string? error)
    {
        error = null;
        var given = root.Child("given") ?? default;
        if (root.Text("text") is not { } text)
        {
            error = "The line has no text.";
        }
        else if (given.Text("now") is not { } now || OffsetDateTimePattern.ExtendedIso.Parse(now) is not { Success: true } instant)
        {
            error = "given.now is no instant with an offset.";
        }
        else
        {
            return new CorpusLine(id, text, CorpusLineGiven.Context(given, instant.Value));
        }

        return null;
    }
}
