using System.Text;
using FluentAssertions;
using HerdBot.Host.Commands;
using HerdBot.Host.LiteDb;
using Xunit;

namespace HerdBot.Tests.Host.Commands;

public sealed class ImportCommandTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("herdbot-import-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task A_folder_with_a_herd_is_imported_and_the_second_time_nothing_is_new()
    {
        await File.WriteAllTextAsync(At("herd.csv"), "name;role\nLuna;dam\nCoca;queen\n", new UTF8Encoding(true));

        (await RunAsync(folder.FullName)).Should().Be((2, "1 animals taken in, 0 known already, 1 lines not taken. The group knows them from the next start on.", "Line 3: role 'queen' is not known; write dam, sire or young."));
        (await RunAsync(At("herd.csv"))).Output.Should().Be("0 animals taken in, 1 known already, 1 lines not taken.");
    }

    [Fact]
    public async Task A_list_without_a_fault_ends_well()
    {
        await File.WriteAllTextAsync(At("list.csv"), "name,role\nLuna,dam\n");

        (await RunAsync(At("list.csv"))).Should().Be((0, "1 animals taken in, 0 known already, 0 lines not taken. The group knows them from the next start on.", ""));
    }

    [Fact]
    public async Task What_cannot_be_read_is_told_plainly()
    {
        (await RunAsync(At("no.csv"))).Faults.Should().StartWith($"The list '{At("no.csv")}' cannot be read");
        await File.WriteAllBytesAsync(At("old.csv"), Encoding.Latin1.GetBytes("name,colour\nLuna,marrón\n"));
        (await RunAsync(At("old.csv"))).Should().Be((2, "", $"The list '{At("old.csv")}' is not written in UTF-8. Save it as 'CSV UTF-8' and import it again."));
    }

    [Fact]
    public async Task While_the_bot_runs_the_list_waits()
    {
        await File.WriteAllTextAsync(At("list.csv"), "name,role\nLuna,dam\n");
        await using var running = LiteDbHerdStore.Open(At("farm.db"));

        var (code, output, faults) = await RunAsync(At("list.csv"));

        (code, output).Should().Be((2, ""));
        faults.Should().Contain("farm.db");
    }

    private async Task<(int Code, string Output, string Faults)> RunAsync(string path)
    {
        await File.WriteAllTextAsync(At("settings.json"), $$$"""{"data": "{{{At("farm.db").Replace("\\", "\\\\", StringComparison.Ordinal)}}}", "farm": {"zone": "America/Denver", "people": [{"name": "Ana", "owner": true}]}}""");
        await using var output = new StringWriter();
        await using var faults = new StringWriter();
        var code = await ImportCommand.RunAsync(path, At("settings.json"), output, faults);
        return (code, output.ToString().Trim(), faults.ToString().Trim());
    }

    private string At(string name) => Path.Combine(folder.FullName, name);
}
