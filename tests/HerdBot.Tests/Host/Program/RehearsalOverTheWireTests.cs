using System.Text.Json.Nodes;
using FluentAssertions;
using HerdBot.Host.Rehearsal;
using Xunit;

namespace HerdBot.Tests.Host.Program;

/// <summary>The scripts, played on what "serve" runs: the library's client, the receiver, the door, the outbox, on Telegram's stand-in.</summary>
public sealed class RehearsalOverTheWireTests
{
    [Theory]
    [InlineData("plain-morning")]
    [InlineData("cold-baby")]
    [InlineData("nobody-answers")]
    [InlineData("power-cut")]
    public async Task A_script_leaves_the_same_records_and_posts_over_the_wire_as_in_a_rehearsal(string name)
    {
        var script = RehearsalScript.Read(await File.ReadAllLinesAsync(Path.Combine(AppContext.BaseDirectory, "Samples", "rehearsals", $"{name}.jsonl"))).Script!;

        var rehearsed = await RehearsedAsync(script);
        var played = await PlayedAsync(script);

        Records(rehearsed).Should().NotBeEmpty("a script that records nothing shows nothing");
        Records(played).Should().Equal(Records(rehearsed));
        played.Should().Equal(rehearsed, "the posts too are the same, at the same times");
    }

    private static async Task<string[]> RehearsedAsync(RehearsalScript script)
    {
        var folder = Directory.CreateTempSubdirectory("herdbot-rehearsed-");
        try
        {
            await using var output = new StringWriter();
            await RehearsalRun.PlayAsync(script, Path.Combine(folder.FullName, "farm.db"), output, TextWriter.Null);
            return Lines(output);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<string[]> PlayedAsync(RehearsalScript script)
    {
        ProgramRig? rig = null;
        var written = new Dictionary<string, int>();
        await using var output = new StringWriter();
        try
        {
            await RehearsalRun.PlayAsync(script, output, TextWriter.Null, async clock =>
            {
                var first = rig is null;
                rig ??= await ProgramRig.PrepareAsync(script.Setup, clock);
                await rig.BootAsync();
                if (first)
                {
                    await rig.MoveInAsync();
                }
                return new ScriptedLife(rig, written);
            });
            return Lines(output);
        }
        finally
        {
            if (rig is not null)
            {
                await rig.DisposeAsync();
            }
        }
    }

    private static string[] Lines(StringWriter output) => output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private static IEnumerable<string> Records(IEnumerable<string> lines) => lines.Where(line => JsonNode.Parse(line)!["record"] is not null);
}
