using System.CommandLine;
using System.Text;
using System.Text.Json;
using HerdBot.App.Records;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using HerdBot.Core.Wording;

namespace HerdBot.Host.Commands;

/// <summary>The verb "due": what is known of a dam in, her due window out, one line each.</summary>
public static class DueCommand
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);
    private static readonly JsonWriterOptions Plain = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "One dam a line, as JSON: matings, checks, earlier lengths, today; - is standard input." };
        var command = new Command("due", "Prints when each dam of a file is due: window, chances, and why.") { file };
        command.SetAction(async (parsed, _) => await RunAsync(parsed.GetValue(file)!));
        return command;
    }

    private static async Task<int> RunAsync(string file)
    {
        if (await InputFile.ReadLinesAsync(file, "file of matings") is not { } lines)
        {
            return 2;
        }
        await using var output = new BufferedStream(Console.OpenStandardOutput(), 1 << 16);
        Answer(lines, output);
        return 0;
    }

    /// <summary>Answers every line that is not empty, in order.</summary>
    public static void Answer(IEnumerable<string> lines, Stream output)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(output);
        var tables = new[] { Species.Llama, Species.Alpaca }.ToDictionary(species => species, CareTable.BuiltIn);
        var phrases = Phrases.Of(Language.English);
        // No line knows of another: they are worked out side by side, and answered in their order.
        foreach (var answer in lines.Where(line => !string.IsNullOrWhiteSpace(line)).AsParallel().AsOrdered().Select(line => Answer(line, tables, phrases)))
        {
            output.Write(answer);
        }
    }

    private static byte[] Answer(string line, IReadOnlyDictionary<Species, CareTable> tables, Phrases phrases)
    {
        using var answer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(answer, Plain))
        {
            DueLine.Answer(line, writer, tables, phrases);
        }
        answer.WriteByte((byte)'\n');
        return answer.ToArray();
    }
}
