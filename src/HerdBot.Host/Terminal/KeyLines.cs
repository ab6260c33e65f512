using System.Text;
using System.Threading.Channels;
using HerdBot.Core.Herd;
using Spectre.Console;

namespace HerdBot.Host.Terminal;

/// <summary>Lines typed key by key: what has been typed so far stays below whatever is posted meanwhile.</summary>
internal sealed class KeyLines(Paper paper, Farm farm, ChannelReader<ConsoleKeyInfo> keys) : ITypedLines
{
    private readonly List<string> earlier = [];

    /// <summary>The keyboard, read by a thread of its own that ends with the program.</summary>
    public static ChannelReader<ConsoleKeyInfo> Keyboard()
    {
        var keys = Channel.CreateUnbounded<ConsoleKeyInfo>();
        var reader = new Thread(() => Read(keys.Writer)) { IsBackground = true };
        reader.Start();
        return keys.Reader;
    }

    /// <inheritdoc/>
    public async Task<string?> NextAsync(string speaker, CancellationToken cancellation)
    {
        var line = new StringBuilder();
        var back = earlier.Count;
        try
        {
            Show(speaker, line);
            await foreach (var key in keys.ReadAllAsync(cancellation))
            {
                switch (key)
                {
                    case { Key: ConsoleKey.Enter }:
                        Remember(line.ToString());
                        return line.ToString();
                    case { Key: ConsoleKey.D, Modifiers: ConsoleModifiers.Control } when line.Length == 0:
                        return null;
                    case { Key: ConsoleKey.UpArrow } when back > 0:
                        line.Clear().Append(earlier[--back]);
                        break;
                    case { Key: ConsoleKey.DownArrow } when back < earlier.Count:
                        line.Clear().Append(++back < earlier.Count ? earlier[back] : "");
                        break;
                    default:
                        Type(line, key);
                        break;
                }
                Show(speaker, line);
            }
            return null;
        }
        finally
        {
            paper.Type();
        }
    }

    private static void Read(ChannelWriter<ConsoleKeyInfo> keys)
    {
        while (keys.TryWrite(Console.ReadKey(intercept: true)))
        {
        }
    }

    private static void Type(StringBuilder line, ConsoleKeyInfo key)
    {
        switch (key)
        {
            case { Key: ConsoleKey.Escape } or { Key: ConsoleKey.U, Modifiers: ConsoleModifiers.Control }:
                line.Clear();
                break;
            case { Key: ConsoleKey.Backspace } when line.Length > 0:
                line.Length -= line.Length > 1 && char.IsLowSurrogate(line[^1]) ? 2 : 1;
                break;
            case { KeyChar: var letter } when !char.IsControl(letter):
                line.Append(letter);
                break;
        }
    }

    private void Remember(string line)
    {
        if (line.Trim().Length > 0)
        {
            earlier.Add(line);
        }
    }

    private void Show(string speaker, StringBuilder line)
    {
        var room = Math.Max(1, paper.Width - speaker.Length - 4);
        var typed = line.Length <= room ? line.ToString() : line.ToString(line.Length - room, room);
        paper.Type(new Ink(speaker, NameColours.Of(speaker, farm.People)), new Ink($" › {typed}", Style.Plain));
    }
}
