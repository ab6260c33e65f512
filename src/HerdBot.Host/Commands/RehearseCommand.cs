using System.CommandLine;
using HerdBot.Host.Rehearsal;

namespace HerdBot.Host.Commands;

/// <summary>The verb "rehearse".</summary>
public static class RehearseCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "A script, one JSON object a line; - for standard input." };
        var command = new Command("rehearse", "Plays a script of chat lines, taps, clock jumps, restarts and outages through the whole program.") { file };
        command.SetAction(async (parsed, cancellation) => await RunAsync(parsed.GetValue(file)!));
        return command;
    }

    private static async Task<int> RunAsync(string file)
    {
        var lines = await InputFile.ReadLinesAsync(file, "script");
        if (lines is null)
        {
            return 2;
        }
        var (script, problems) = RehearsalScript.Read(lines);
        if (script is null)
        {
            foreach (var problem in problems)
            {
                await Console.Error.WriteLineAsync(problem);
            }
            return 2;
        }
        var folder = Directory.CreateTempSubdirectory("herdbot-rehearsal-");
        try
        {
            await using var output = new StreamWriter(Console.OpenStandardOutput());
            await RehearsalRun.PlayAsync(script, Path.Combine(folder.FullName, "farm.db"), output, Console.Error);
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
