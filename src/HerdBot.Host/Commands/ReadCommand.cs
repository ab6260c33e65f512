using System.CommandLine;
using System.Text;
using System.Text.Json;
using HerdBot.App.Records;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;

namespace HerdBot.Host.Commands;

/// <summary>The verb "read": field messages in, facts out, one line each.</summary>
public static class ReadCommand
{
    private const int BadInput = 2;
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);
    private static readonly JsonWriterOptions Plain = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "One message a line, as JSON; - is standard input." };
        var explain = new Option<bool>("--explain") { Description = "Adds which words gave which fact, and why others gave none." };
        var settings = new Option<string?>("--settings") { HelpName = "SETTINGS", Description = "Reads with the farm's own words and nicknames out of this settings file." };
        var command = new Command("read", "Reads field messages without a chat and prints what was understood.") { file, explain, settings };
        command.SetAction(async (parsed, cancellation) => parsed.GetValue(settings) is not { } from ? Run(parsed.GetValue(file)!, parsed.GetValue(explain), null)
            : await SettingsFile.ReadAsync(from, Console.Error) is { } farm ? Run(parsed.GetValue(file)!, parsed.GetValue(explain), farm.Setup.Farm) : BadInput);
        return command;
    }

    private static int Run(string path, bool explain, Farm? farm)
    {
        if (path != "-" && !File.Exists(path))
        {
            Console.Error.WriteLine($"There is no file '{path}'; give the path of a file of messages, or - for standard input.");
            return BadInput;
        }

        using var input = path == "-" ? new StreamReader(Console.OpenStandardInput(), Utf8) : new StreamReader(path, Utf8);
        using var output = new StreamWriter(Console.OpenStandardOutput(), Utf8);
        while (input.ReadLine() is { } line)
        {
            if (!string.IsNullOrWhiteSpace(line))
            {
                output.Write(Answer(line, explain, farm));
                output.Write('\n');
            }
        }

        return 0;
    }

    /// <summary>The answer to one line, as JSON without a line end.</summary>
    /// <param name="line">The message with its circumstances.</param>
    /// <param name="explain">Whether the reasons are told.</param>
    /// <param name="farm">The farm whose own words and nicknames count; null where none do.</param>
    public static string Answer(string line, bool explain, Farm? farm = null)
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, Plain))
        {
            writer.WriteStartObject();
            if (CorpusLine.Parse(line, out var id, out var error) is { } message)
            {
                var context = farm is null ? message.Context : Own(message.Context, farm);
                Write(writer, id, explain ? Reader.Explain(message.Text, context) : Reader.Read(message.Text, context), explain);
            }
            else
            {
                writer.WriteString("id", id);
                writer.WriteString("error", error);
            }

            writer.WriteEndObject();
        }

        return Utf8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length);
    }

    private static ReadingContext Own(ReadingContext context, Farm farm) => context with
    {
        Words = farm.Words,
        Herd = [.. context.Herd.Select(entry => entry with { OtherNames = [.. farm.NicknamesOf(entry.Name)] })],
    };

    private static void Write(Utf8JsonWriter writer, string? id, Reading reading, bool explain)
    {
        writer.WriteString("id", id);
        writer.WriteStartArray("facts");
        foreach (var fact in reading.Facts)
        {
            FactJson.Write(writer, fact);
        }

        writer.WriteEndArray();
        writer.WriteString("ask", reading.Ask is { } ask ? FactWords.Word(ask) : null);
        if (explain)
        {
            writer.WriteStartArray("why");
            foreach (var reason in reading.Reasons)
            {
                writer.WriteStringValue($"{reason.Words}: {reason.Why}");
            }

            writer.WriteEndArray();
        }
    }
}
