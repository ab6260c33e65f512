using FluentAssertions;
using HerdBot.Host.Files;
using Xunit;

namespace HerdBot.Tests.Host.Files;

/// <summary>Lists as spreadsheets write them. The quoting is RFC 4180's: quotes around a cell, doubled within it.</summary>
public sealed class HerdCsvTests
{
    [Theory]
    [InlineData("name,tag,role\nLuna,14,dam\n")]
    [InlineData("\uFEFFname,tag,role\r\nLuna,14,dam\r\n")]
    [InlineData("Name;Tag;Role\nLuna;14;dam")]
    [InlineData("name\ttag\trole\nLuna\t14\tdam\n")]
    [InlineData("\"name\",\"tag\",\"role\"\n\"Luna\",\"14\",\"dam\"\n")]
    [InlineData("Nombre; Caravana; Rol\n Luna ; 14 ; dam \n")]
    [InlineData("name,tag,role,\nLuna,14,dam,\n,,,\n\n")]
    public void A_list_is_read_however_it_was_saved(string text)
    {
        var (rows, _) = HerdCsv.Read(text);

        rows.Should().ContainSingle().Which.Cells.Should().BeEquivalentTo(new Dictionary<string, string> { ["name"] = "Luna", ["tag"] = "14", ["role"] = "dam" });
        rows[0].Line.Should().Be(2);
    }

    [Fact]
    public void A_quoted_name_may_hold_anything() =>
        HerdCsv.Read("name,role\n\"Luna, \"\"la grande\"\"\",dam\n").Rows.Should().ContainSingle().Which.Cells["name"].Should().Be("Luna, \"la grande\"");

    [Fact]
    public void Lines_count_as_an_editor_counts_them() =>
        HerdCsv.Read("name,colour\n\nLuna,\"brown\nand white\"\nCoca,black\n").Rows.Select(row => row.Line).Should().Equal(3, 5);

    [Theory]
    [InlineData("", "The list is empty*")]
    [InlineData("tag,role\n14,dam\n", "Line 1: there is no column 'name'. The heads are tag, role;*")]
    public void A_list_without_names_is_not_read(string text, string problem)
    {
        var (rows, problems) = HerdCsv.Read(text);

        rows.Should().BeEmpty();
        problems.Should().ContainSingle().Which.Should().Match(problem);
    }

    [Theory]
    [InlineData("name,weight\nLuna,80\n", "Line 1: the column 'weight' is not read*", 1)]
    [InlineData("name,nombre\nLuna,Coca\n", "Line 1: the column 'nombre' is there twice; the first counts.", 1)]
    [InlineData("name,role\nCoca,dam\n\"Luna,dam\nRayo,sire\n", "Line 3: the quotes do not close*", 1)]
    public void What_is_passed_over_is_told(string text, string problem, int rows)
    {
        var read = HerdCsv.Read(text);

        read.Rows.Should().HaveCount(rows);
        read.Problems.Should().ContainSingle().Which.Should().Match(problem);
    }
}
