using System.Text.Json.Nodes;
using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using Xunit;

namespace HerdBot.Tests.Core.Care;

public sealed class CareTableTests
{
    [Theory]
    [InlineData(Species.Llama)]
    [InlineData(Species.Alpaca)]
    public void Every_number_has_a_source_or_says_plainly_that_it_has_none(Species species)
    {
        var table = CareTable.BuiltIn(species);

        CareKeys.All.Should().OnlyContain(key => table.Source(key).Length >= 10);
    }

    [Fact]
    public void Keys_are_named_once() => CareKeys.All.Select(key => key.Name).Should().OnlyHaveUniqueItems();

    [Fact]
    public void A_missing_key_is_named() => Problems(file => file.Remove("standing.late")).Should().Equal("The care table has no standing.late.");

    [Fact]
    public void An_unknown_key_is_named() => Problems(file => file["standing.soon"] = Number(3, "min")).Should().Equal("The care table knows no standing.soon.");

    [Fact]
    public void A_figure_out_of_its_range_is_named() =>
        Problems(file => file["standing.late"] = Number(3, "min")).Should().Equal("standing.late is 3; it must be from 20 to 360 min.");

    [Fact]
    public void A_figure_without_a_source_is_named() =>
        Problems(file => file["standing.late"] = Number(60, "min", " ")).Should().Equal("standing.late in the care table has no source.");

    [Fact]
    public void A_figure_in_another_unit_is_named() =>
        Problems(file => file["standing.late"] = Number(60, "h")).Should().Equal("standing.late in the care table must be in min.");

    [Fact]
    public void A_key_without_a_figure_is_named() =>
        Problems(file => file["standing.late"] = "soon").Should().Equal("standing.late in the care table has no value.", "The care table has no standing.late.");

    [Fact]
    public void Times_that_do_not_rise_are_named() =>
        Problems(file => file["standing.late"] = Number(120, "min")).Should().Equal("The times of standing must rise from asked to late to vet.");

    [Fact]
    public void All_problems_are_named_at_once() => Problems(file =>
    {
        file.Remove("urine.vet");
        file["standing.soon"] = Number(3, "min");
        file["standing.late"] = Number(3, "min");
    }).Should().BeEquivalentTo("The care table has no urine.vet.", "The care table knows no standing.soon.", "standing.late is 3; it must be from 20 to 360 min.");

    [Fact]
    public void A_vets_number_takes_the_place_and_bears_the_vets_name()
    {
        var (table, problems) = CareTable.BuiltIn(Species.Llama).With(new Dictionary<string, decimal> { ["standing.late"] = 45 }, "Dr. Hale");

        problems.Should().BeEmpty();
        table!.Number(CareKeys.StandingLate).Should().Be(45);
        table.Source(CareKeys.StandingLate).Should().Be("Dr. Hale");
    }

    [Theory]
    [InlineData("standing.soon", 45, "The care table knows no standing.soon.")]
    [InlineData("standing.late", 500, "standing.late is 500; it must be from 20 to 360 min.")]
    [InlineData("standing.late", 25, "The times of standing must rise from asked to late to vet.")]
    [InlineData("warmth.soft_low", 99, "The bounds of warmth must rise: critical_low, emergency_low, soft_low, normal_low, watch_low, high, vet_high.")]
    [InlineData("colostrum.all_again", 12, "The times of colostrum must rise: half, all, all_again, lapses.")]
    [InlineData("colostrum.risk_late", 60, "The times of colostrum must rise: risk_asked, risk_late, risk_vet.")]
    public void A_vets_number_that_cannot_stand_is_named(string key, int value, string problem)
    {
        var (table, problems) = CareTable.BuiltIn(Species.Llama).With(new Dictionary<string, decimal> { [key] = value }, "Dr. Hale");

        table.Should().BeNull();
        problems.Should().Equal(problem);
    }

    [Fact]
    public void A_number_that_is_no_time_is_not_taken_for_one()
    {
        var reading = () => CareTable.BuiltIn(Species.Llama).Time(CareKeys.ColostrumPercent);

        reading.Should().Throw<ArgumentException>();
    }

    private static IReadOnlyList<string> Problems(Action<JsonObject> spoil)
    {
        var file = new JsonObject();
        var table = CareTable.BuiltIn(Species.Llama);
        foreach (var key in CareKeys.All)
        {
            file[key.Name] = Number(table.Number(key), CareTable.UnitWord(key.Unit));
        }
        spoil(file);
        return [.. CareTable.Read([file.ToJsonString()]).Problems];
    }

    private static JsonObject Number(decimal value, string unit, string source = "a publication, 2020") => new() { ["value"] = value, ["unit"] = unit, ["source"] = source };
}
