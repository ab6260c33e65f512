using System.Text.Json;
using FluentAssertions;
using HerdBot.Host.Rehearsal;
using Xunit;

namespace HerdBot.Tests.Rehearsals;

/// <summary>Scripts played through the whole program: real reader, real LiteDB file, real Quartz, a clock that jumps.</summary>
public sealed class RehearsalTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Samples", "rehearsals");

    public static TheoryData<string> Scripts => [.. Directory.GetFiles(Folder, "*.expect.jsonl").Select(file => Path.GetFileName(file).Replace(".expect.jsonl", "", StringComparison.Ordinal)).Order()];

    [Theory]
    [MemberData(nameof(Scripts))]
    public async Task A_rehearsal_holds_what_is_expected_of_it(string name)
    {
        var (output, faults) = await PlayAsync(name);

        faults.Should().BeEmpty();
        Broken(name, output).Should().BeEmpty();
    }

    [Fact]
    public async Task Two_runs_give_the_same_bytes()
    {
        var first = await PlayAsync("power-cut");
        var second = await PlayAsync("power-cut");

        second.Output.Should().Be(first.Output);
    }

    private static List<string> Broken(string name, string output)
    {
        var rows = output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonElement.Parse(line)).ToList();
        return [.. File.ReadLines(Path.Combine(Folder, $"{name}.expect.jsonl")).Where(line => line.Length > 0).Select(line => new Expectation(line).Broken(rows)).OfType<string>()];
    }

    private static async Task<(string Output, string Faults)> PlayAsync(string name)
    {
        var (script, problems) = RehearsalScript.Read(await File.ReadAllLinesAsync(Path.Combine(Folder, $"{name}.jsonl")));
        problems.Should().BeEmpty();
        var folder = Directory.CreateTempSubdirectory("herdbot-rehearsal-");
        try
        {
            await using var output = new StringWriter { NewLine = "\n" };
            await using var faults = new StringWriter { NewLine = "\n" };
            await RehearsalRun.PlayAsync(script!, Path.Combine(folder.FullName, "farm.db"), output, faults);
            return (output.ToString(), faults.ToString());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
