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
