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
