using CsCheck;
using FluentAssertions;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>A message and then its correction leave what the right message alone would have left.</summary>
public sealed class CorrectionLeavesTests
{
    private static readonly string[] Mends = ["no, {0}", "*{0}", "sorry {0}", "sorry, {0} not {1}", "{0} not {1}", "oops {0}", "I meant {0}", "correction: {0}", "perdón, {0}", "no, {0} no {1}"];

    [Theory]
    [InlineData("temp {0}")]
    [InlineData("Sage's baby {0}F")]
    [InlineData("Sage's baby temp {0} at 7:00")]
    public void Of_a_temperature(string form) => Holds(form, Mends, Tenths(930, 1_060), Tenths(930, 1_060));

    [Fact]
    public void Of_a_temperature_told_on_the_other_scale()
    {
        Holds("temp {0}", Mends, Tenths(930, 1_060), Tenths(345, 410));
        Holds("temp {0}", Mends, Tenths(345, 410), Tenths(930, 1_060));
    }

    [Theory]
    [InlineData("Sage's baby weighs {0} lb")]
    [InlineData("weighed her {0} lb")]
    [InlineData("weight {0}")]
    public void Of_a_weight(string form) => Holds(form, Mends, Tenths(180, 320), Tenths(180, 320));

    [Fact]
    public void Of_the_unit()
    {
        string[] mends = ["oops {0} not {1}", "no, {0}", "sorry, {0} not {1}", "sorry, {0}", "meant {0}"];
        Holds("weighs 10.4 {0}", mends, Gen.Const("lb"), Gen.Const("kg"));
        Holds("weighs 10.4 {0}", mends, Gen.Const("kg"), Gen.Const("lb"));
    }

    [Fact]
    public void Of_the_sex()
    {
        string[] mends = ["actually it's a {0}", "no, {0}", "sorry, {0} not {1}", "oops, it's a {0}", "sorry, a {0}"];
        Holds("Fern had a {0} 6:50", mends, Gen.Const("girl"), Gen.Const("boy"));
        Holds("Fern had a {0} 6:50", mends, Gen.Const("boy"), Gen.Const("girl"));
        Holds("Fern parió, {0}, 6:50", ["perdón, es {0}", "no, {0}"], Gen.Const("macho"), Gen.Const("hembra"));
    }

    [Theory]
    [InlineData("{0}'s baby temp 100.4")]
    [InlineData("{0}'s baby weighs 23 lb")]
    [InlineData("{0}'s baby is nursing")]
    public void Of_the_animal(string form) =>
        Holds(form, ["that was {0}'s baby", "sorry, {0}'s baby", "no, that was {0}'s", "oops, {0}'s baby not {1}'s"], Gen.Const("Sage"), Gen.Const("Tansy"));

    [Theory]
    [InlineData("Sage's baby nursing 7:{0}")]
    [InlineData("Sage's baby up at 7:{0}")]
    [InlineData("dipped Sage's baby's cord 7:{0}")]
    public void Of_the_time(string form) =>
        Holds(form, ["no, 7:{0}", "sorry, it was 7:{0}", "sorry, 7:{0} not 7:{1}", "*7:{0}", "correction: 7:{0}", "I meant 7:{0}"], Minutes, Minutes);

    private static Gen<string> Minutes => Gen.Int[10, 25].Select(minute => $"{minute}");

    private static Gen<string> Tenths(int from, int to) => Gen.Int[from, to].Select(tenths => FormattableString.Invariant($"{tenths / 10m}"));

    private static void Holds(string form, string[] mends, Gen<string> wrong, Gen<string> right)
    {
        var broken = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var mend in mends)
        {
            Gen.Select(wrong, right).Where(pair => pair.Item1 != pair.Item2).Each(
                pair =>
                {
                    var (first, then, plain) = (string.Format(null, form, pair.Item1), string.Format(null, mend, pair.Item2, pair.Item1), string.Format(null, form, pair.Item2));
                    var (mended, alone) = (Left(first, then), Left(plain));
                    if (mended != alone && broken.Count < 20)
                    {
                        broken.Add($"'{first}', '{then}' leaves {mended} where '{plain}' leaves {alone}");
                    }
                },
                times: 5);
        }

        broken.Should().BeEmpty();
    }

    // As it stands now, but for the words in which it was said first.
    private static string Left(params string[] messages)
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Sage"), Some.Dam("Tansy"), Some.Dam("Fern"));
        yard.Say("06:45", Some.Birth("06:40"));
        yard.Say("06:46", Some.Birth("06:45", "Tansy"));
        yard.Say("06:47", Some.Fact(HerdBot.Core.Facts.FactKind.Standing));
        yard.State.Records.Should().HaveCount(3);
        foreach (var message in messages)
        {
            yard.Write("Ana", message == messages[0] ? "07:30" : "07:32", message);
        }

        var records = yard.State.Records.Skip(3).Where(record => !record.Withdrawn).Select(record => record with { Fact = record.Fact with { Text = null } });
        return string.Join("; ", records.Select(record => record.ToString()).Concat(yard.State.Newborns.Skip(2).Select(newborn => newborn.ToString())));
    }
}
