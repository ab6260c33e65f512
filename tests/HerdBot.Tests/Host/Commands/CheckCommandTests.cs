using FluentAssertions;
using HerdBot.Host.Commands;
using Xunit;

namespace HerdBot.Tests.Host.Commands;

/// <summary>The verb "check" on numbers that a farm's vet set.</summary>
public sealed class CheckCommandTests
{
    [Fact]
    public async Task Numbers_of_the_vet_are_listed_with_whose_they_are()
    {
        var (status, output, _) = await CheckAsync("\"standing.late\": 50, \"igg.low\": 900");

        status.Should().Be(0);
        output.Should().Contain("By Dr. Moss: standing.late is 50 min.").And.Contain("By Dr. Moss: igg.low is 900 mg/dL.");
    }

    [Fact]
    public async Task A_number_out_of_its_range_is_told_and_stops()
    {
        var (status, _, faults) = await CheckAsync("\"standing.late\": 5");

        status.Should().Be(2);
        faults.Should().Contain("standing.late is 5; it must be from 20 to 360 min");
    }

    private static async Task<(int Status, string Output, string Faults)> CheckAsync(string numbers)
    {
        var folder = Directory.CreateTempSubdirectory("herdbot-check-");
        try
        {
            var file = Path.Combine(folder.FullName, "bot.settings.json");
            await File.WriteAllTextAsync(file, $$$"""
                {"data": {{{System.Text.Json.JsonSerializer.Serialize(Path.Combine(folder.FullName, "farm.db"))}}}, "farm": {"zone": "America/Denver", "herd": []},
                 "care": {"vetPhone": "555 0134", "numbersBy": "Dr. Moss", "numbers": { {{{numbers}}} } } }
                """);
            await using var output = new StringWriter();
            await using var faults = new StringWriter();
            var status = await CheckCommand.RunAsync(file, output, faults);
            return (status, output.ToString(), faults.ToString());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
