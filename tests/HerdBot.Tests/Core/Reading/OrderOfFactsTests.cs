using CsCheck;
using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

/// <summary>Two facts about different animals are the same two facts in either order; a bare figure aside, which takes its kind from the figure before it, as in a list of weights.</summary>
public sealed class OrderOfFactsTests
{
    private static readonly string[] OfBaby = [
        "{0}'s baby temp 99.8", "{0}'s baby 100.4F", "{0}'s baby weighs 23.4 lb", "{0}'s baby nursing at 8:10", "{0}'s baby is up", "{0}'s baby not nursing yet",
        "{0}'s baby pooped 8:20", "{0}'s baby peed", "dipped {0}'s baby's cord", "gave {0}'s baby 120 ml colostrum at 8:05", "{0}'s baby had 4 oz bottle",
        "la cría de {0} 38.2 C", "la cría de {0} pesa 9.4 kilos", "la cría de {0} ya mamó"];

    private static readonly string[] OfDam = [
        "{0}'s water broke", "{0} is in labor", "{0} passed the placenta at 8:40", "{0} spit off", "Barley bred {0} 5/3", "gave {0} her CDT shot", "a {0} se le rompió la bolsa"];

    private static readonly string[] Dams = ["Kestrel", "Tansy", "Juniper", "Nutmeg"];

    private static readonly Gen<string> Saying = Gen.OneOf([.. OfBaby, .. OfDam]);

    [Theory]
    [InlineData(". ")]
    [InlineData("\n")]
    [InlineData("; ")]
    [InlineData(", ")]
    public void Their_order_does_not_matter(string joint) =>
        Gen.Select(Saying, Saying, Gen.OneOf(Dams), Gen.Int[1, Dams.Length - 1]).Each(
            (one, other, dam, step) =>
            {
                var first = string.Format(null, one, dam);
                var second = string.Format(null, other, Dams[(Array.IndexOf(Dams, dam) + step) % Dams.Length]);

                Read(first + joint + second).Should().BeEquivalentTo(Read(second + joint + first), $"of '{first}{joint}{second}'");
            },
            times: 1_000);

    [Fact]
    public void Each_saying_gives_one_fact_on_its_own()
    {
        foreach (var saying in OfBaby.Concat(OfDam))
        {
            Read(string.Format(null, saying, "Tansy")).Should().ContainSingle($"'{saying}' says one thing");
        }
    }

    private static IEnumerable<Fact> Read(string text) => Reader.Read(text, Context).Facts;

    private static readonly ReadingContext Context = SomeReading.Context() with
    {
        Herd = [
            .. Dams.Select(dam => new HerdEntry(dam, HerdRole.Dam)),
            .. Dams.Select(dam => new HerdEntry($"{dam}'s baby", HerdRole.Newborn) { Dam = dam, Sex = Sex.Female, Born = FactTime.Of(SomeReading.Born) }),
            new HerdEntry("Barley", HerdRole.Sire) { Sex = Sex.Male },
        ],
        Log = [],
    };
}
