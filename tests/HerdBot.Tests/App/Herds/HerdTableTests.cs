using FluentAssertions;
using HerdBot.App.Herds;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Herds;

/// <summary>A list of animals, line by line.</summary>
public sealed class HerdTableTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 4, 18, 12, 0);
    private static readonly Animal Sage = Some.Dam("Sage") with { Tag = "14" };

    [Fact]
    public void A_full_line_is_taken_whole()
    {
        var listing = Read("name=Tuck|tag=#31|species=alpaca|sex=m|role=young|born=2027-03-02|dam=Sage|colour=rose grey|state=open|nickname=Tucky");

        listing.Problems.Should().BeEmpty();
        listing.Added.Should().Equal(new Animal(new AnimalId("tuck"), "Tuck", HerdRole.Young, Species.Alpaca)
        {
            Sex = Sex.Male,
            Tag = "31",
            Born = Some.Farm().Clock.At(new LocalDate(2027, 3, 2), new LocalTime(12, 0)),
            Dam = Sage.Id,
            Colour = "rose grey",
            State = HerdEntryState.Open,
            Nickname = "Tucky",
        });
    }

    [Theory]
    [InlineData("name=Luna|sex=f", HerdRole.Dam, Sex.Female)]
    [InlineData("name=Luna|sex=macho", HerdRole.Sire, Sex.Male)]
    [InlineData("name=Luna|role=padrote", HerdRole.Sire, Sex.Male)]
    [InlineData("name=Luna|sex=hembra|born=2027-01-02", HerdRole.Young, Sex.Female)]
    [InlineData("name=Luna|role=cría", HerdRole.Young, null)]
    public void Role_and_sex_follow_from_one_another(string row, HerdRole role, Sex? sex) =>
        Read(row).Added.Should().ContainSingle().Which.Should().Match<Animal>(luna => luna.Role == role && luna.Sex == sex && luna.Species == Species.Llama);

    [Theory]
    [InlineData("tag=3", "Line 2: there is no name; write one.")]
    [InlineData("name=Luna", "Line 2: there is neither role nor sex; write dam, sire or young under role.")]
    [InlineData("name=Luna|role=queen", "Line 2: role 'queen' is not known; write dam, sire or young.")]
    [InlineData("name=Luna|role=dam|sex=m", "Line 2: role and sex do not go together; mend one of them.")]
    [InlineData("name=Luna|role=dam|tag=14", "Line 2: tag 14 is on Sage; mend the tag, or leave it out.")]
    [InlineData("name=Luna|role=dam|born=31/31/2020", "Line 2: born '31/31/2020' is no date; write it like 2024-05-31.")]
    [InlineData("name=Luna|role=dam|born=2027-04-19", "Line 2: born '2027-04-19' lies ahead; mend the date.")]
    [InlineData("name=Luna|role=young|dam=Nobody", "Line 2: its dam 'Nobody' is neither in the herd nor on a good line; add a line for her, or leave the dam out.")]
    [InlineData("name=Luna|role=dam|nickname=Sage", "Line 2: the nickname 'Sage' means Sage already; leave it out or give another.")]
    [InlineData("name=77|role=dam", "Line 2: '77' is no name; write one with letters, at most 40 characters long.")]
    public void A_bad_line_is_told_with_what_to_do_and_not_taken(string row, string problem)
    {
        var listing = Read(row);

        listing.Added.Should().BeEmpty();
        listing.Problems.Should().ContainSingle().Which.Should().StartWith(problem[..^1]);
    }

    [Fact]
    public void All_that_is_wrong_with_a_line_is_told_at_once() =>
        Read("name=Luna|role=queen|species=horse|born=soon").Problems.Should().ContainSingle().Which.Should().Contain("queen").And.Contain("horse").And.Contain("soon");

    [Fact]
    public void Good_lines_are_taken_whatever_the_others_are() =>
        Read("name=Luna|role=dam", "name=Luna|role=sire", "name=Coca|role=queen", "name=Rayo|role=sire").Should().Match<HerdListing>(listing =>
            listing.Added.Length == 2 && listing.Added[0].Role == HerdRole.Dam && listing.Added[1].Name == "Rayo" && listing.Problems.Length == 2);

    [Fact]
    public void A_dam_may_come_later_in_the_list_and_a_bad_line_takes_her_young_with_it()
    {
        Read("name=Tuck|role=young|dam=Luna", "name=Luna|role=dam").Added.Should().Contain(tuck => tuck.Name == "Tuck" && tuck.Dam == new AnimalId("luna"));
        Read("name=Tuck|role=young|dam=Luna", "name=Luna|role=queen").Problems.Should().HaveCount(2);
    }

    [Fact]
    public void Who_is_known_is_left_as_it_is() =>
        Read("name=SAGE|role=dam|colour=black").Should().Match<HerdListing>(listing => listing.Known == 1 && listing.Added.IsEmpty && listing.Problems.IsEmpty);

    [Fact]
    public void Dates_are_read_as_the_farm_writes_them()
    {
        var farm = Some.Farm() with { Dates = DateOrder.DayFirst };
        HerdTable.Read(Rows("name=Luna|role=dam|born=2/5/2020"), farm, [Sage], Named, Now).Added[0].Born.Should().Be(farm.Clock.At(new LocalDate(2020, 5, 2), new LocalTime(12, 0)));
        Read("name=Luna|role=dam|born=2/5/2020").Added[0].Born.Should().Be(farm.Clock.At(new LocalDate(2020, 2, 5), new LocalTime(12, 0)));
    }

    private static HerdListing Read(params string[] rows) => HerdTable.Read(Rows(rows), Some.Farm(), [Sage], Named, Now);

    private static Animal? Named(string name) => string.Equals(name, "Sage", StringComparison.OrdinalIgnoreCase) ? Sage : null;

    private static IEnumerable<HerdRow> Rows(params string[] rows) =>
        rows.Select((row, place) => new HerdRow(place + 2, row.Split('|').Select(cell => cell.Split('=')).ToDictionary(cell => cell[0], cell => cell[1])));
}
