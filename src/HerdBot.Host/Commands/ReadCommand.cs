using System.CommandLine;
using System.Text;
using System.Text.Json;
using HerdBot.App.Records;
using HerdBot.Core.Facts;
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
        var command = new Command("read", "Reads field messages without a chat and prints what was understood.") { file, explain };
        command.SetAction(parsed => Run(parsed.GetValue(file)!, parsed.GetValue(explain)));
        return command;
    }

    private static int Run(string path, bool explain)
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
                output.Write(Answer(line, explain));
                output.Write('\n');
            }
        }

        return 0;
    }

    /// <summary>The answer to one line, as JSON without a line end.</summary>
    public static string Answer(string line, bool explain)
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, Plain))
        {
            writer.WriteStartObject();
            if (CorpusLine.Parse(line, out var id, out var error) is { } message)
            {
                Write(writer, id, Reader.Read(message.Text, message.Context), explain);
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
