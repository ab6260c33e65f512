using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using HerdBot.App.Messages;
using HerdBot.Host.Rehearsal;
using HerdBot.Host.Terminal;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Demo;

/// <summary>
/// Reads a transcript to be played: a day (2027-05-09), then lines like "4:40 Wade: Juniper is humming", the hours in
/// order, past midnight too. In brackets stands what is done instead of said: [tap 3 standing, Juniper's baby],
/// [restart], [end]. A line that starts with # is for the reader.
/// </summary>
internal static partial class DemoScript
{
    private static readonly LocalDatePattern Day = LocalDatePattern.Iso;
    private static readonly LocalTimePattern Hour = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    /// <summary>A transcript that comes with the program, on the farm that there is to try.</summary>
    public static RehearsalScript Load(string name)
    {
        using var stream = typeof(DemoScript).Assembly.GetManifestResourceStream(name) ?? throw new FileNotFoundException($"No transcript {name}.");
        using var reader = new StreamReader(stream);
        return Read(reader.ReadToEnd(), TryFarm.Setup);
    }

    /// <summary>Reads a transcript.</summary>
    /// <exception cref="FormatException">A line is none of the above.</exception>
    public static RehearsalScript Read(string text, FarmSetup setup)
    {
        var lines = text.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0 && line[0] != '#').ToList();
        var last = Day.Parse(lines[0]).GetValueOrThrow().AtMidnight();
        var steps = ImmutableArray.CreateBuilder<ScriptStep>();
        foreach (var line in lines.Skip(1))
        {
            var hour = line.Split(' ')[0];
            var time = Hour.Parse(hour).Value;
            last = (time < last.TimeOfDay ? last.Date.PlusDays(1) : last.Date) + time;
            steps.Add(Step(setup.Farm.Clock.At(last), line[hour.Length..].Trim()));
        }
        var first = steps[0].At - Duration.FromMinutes(1);
        return new RehearsalScript(setup, first, [.. steps.Where(step => step is not ScriptStep.Down)], steps[^1].At);
    }

    private static ScriptStep Step(Instant at, string what)
    {
        if (what is "[restart]")
        {
            return new ScriptStep.Restart(at);
        }
        if (what is "[end]")
        {
            return new ScriptStep.Down(at, at);
        }
        var colon = what.IndexOf(':', StringComparison.Ordinal);
        var (name, said) = colon > 0 ? (what[..colon], what[(colon + 1)..].Trim()) : throw new FormatException($"Nobody says '{what}'.");
        return Tap().Match(said) is { Success: true } tap
            ? new ScriptStep.Tap(at, name, int.Parse(tap.Groups[1].Value, CultureInfo.InvariantCulture), new ScriptTask(tap.Groups[2].Value, tap.Groups[3].Value))
            : new ScriptStep.Say(at, name, said, null);
    }

    [GeneratedRegex(@"^\[tap (\d) (\w+), (.+)\]$")]
    private static partial Regex Tap();
}
