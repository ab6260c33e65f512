using FluentAssertions;
using Xunit;

namespace HerdBot.Tests.Rehearsals.CareRows;

/// <summary>The newborn's rows through the whole program.</summary>
public sealed class NewbornRowTests
{
    public static TheoryData<string> Rows => [.. NewbornRows.All.Select(row => row.ToString())];

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task A_row_plays_as_the_table_has_it(string name) =>
        (await RowPlay.BrokenAsync(NewbornRows.All.Single(row => row.ToString() == name))).Should().BeEmpty();
}

/// <summary>The dam's rows through the whole program.</summary>
public sealed class DamRowTests
{
    public static TheoryData<string> Rows => [.. DamRows.All.Select(row => row.ToString())];

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task A_row_plays_as_the_table_has_it(string name) =>
        (await RowPlay.BrokenAsync(DamRows.All.Single(row => row.ToString() == name))).Should().BeEmpty();
}

/// <summary>Warmth through the whole program.</summary>
public sealed class WarmthRowTests
{
    public static TheoryData<string> Rows => [.. WarmthRows.All.Select(row => row.ToString())];

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task A_row_plays_as_the_table_has_it(string name) =>
        (await RowPlay.BrokenAsync(WarmthRows.All.Single(row => row.ToString() == name))).Should().BeEmpty();
}

/// <summary>Milk, weight and the rest through the whole program.</summary>
public sealed class MilkRowTests
{
    public static TheoryData<string> Rows => [.. MilkRows.All.Select(row => row.ToString())];

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task A_row_plays_as_the_table_has_it(string name) =>
        (await RowPlay.BrokenAsync(MilkRows.All.Single(row => row.ToString() == name))).Should().BeEmpty();
}

/// <summary>The posting manners through the whole program.</summary>
public sealed class PostingRowTests
{
    public static TheoryData<string> Rows => [.. PostingRows.All.Select(row => row.ToString())];

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task A_row_plays_as_the_table_has_it(string name) =>
        (await RowPlay.BrokenAsync(PostingRows.All.Single(row => row.ToString() == name))).Should().BeEmpty();
}

/// <summary>Which test plays which row of the care table.</summary>
public sealed class CoverageTests(ITestOutputHelper output)
{
    private static readonly IReadOnlyList<CareRow> All = [.. NewbornRows.All, .. DamRows.All, .. WarmthRows.All, .. MilkRows.All, .. PostingRows.All];

    [Fact]
    public void Every_row_of_the_care_table_is_played()
    {
        var rows = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Samples", "care-rows.txt")).Where(line => line.Length > 0).ToList();
        foreach (var row in rows)
        {
            output.WriteLine($"{row} -> {string.Join("; ", All.Where(test => test.Row == row).Select(test => test.What))}");
        }

        rows.Where(row => All.All(test => test.Row != row)).Should().BeEmpty();
        All.Select(test => test.Row).Distinct().Should().BeSubsetOf(rows);
        All.Select(test => test.ToString()).Should().OnlyHaveUniqueItems();
    }
}
