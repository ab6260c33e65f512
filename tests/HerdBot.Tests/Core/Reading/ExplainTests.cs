using FluentAssertions;
using HerdBot.Core.Reading;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

/// <summary>Which words gave which fact, and why others gave none.</summary>
public sealed class ExplainTests
{
    [Theory]
    [InlineData("I think she latched at 7:55", "I think she latched at 7:55: nursing; by 'latched'; of Kestrel's baby, by 'she'; in doubt by 'I think'; at 2027-05-10 07:55")]
    [InlineData("not nursing yet", "not nursing yet: nursing; of Kestrel's baby, by what was said before; denied by 'not'")]
    [InlineData("Kestrel's baby 100.4", "Kestrel's baby 100.4: temperature; by '100.4'; 100.4 F; of Kestrel's baby")]
    [InlineData("my back is 101 today", "my back is 101 today: nothing recorded: history, somebody's own affair or small talk")]
    [InlineData("blah zorp", "blah zorp: nothing recorded: no word in it tells a fact; not known: blah, zorp")]
    [InlineData("scratch that", "scratch that: undo: takes back the last message")]
    public void A_reading_is_explained(string text, string reason) => Reasons(text).Should().Contain(reason);

    [Fact]
    public void Each_clause_has_its_own_reason() => Reasons("dipped it, and my back is 101 today").Should().HaveCount(2)
        .And.Contain(reason => reason.StartsWith("dipped it: cord_dip")).And.Contain(reason => reason.Contains("nothing recorded"));

    [Fact]
    public void What_has_to_be_asked_is_told_with_its_reason() => Reasons("Clover 14 lb").Should().Contain(reason => reason.Contains("animal asked: 'Clover' is not known"))
        .And.Contain("Clover 14 lb: asked before anything of it is recorded: animal");

    [Fact]
    public void The_reading_is_the_same_with_reasons_and_without()
    {
        foreach (var text in new[] { "Kestrel's baby 100.4 and nursing", "Sold Barley", "blah", "" })
        {
            Reader.Explain(text, SomeReading.Context()).Facts.Should().Equal(Reader.Read(text, SomeReading.Context()).Facts);
            Reader.Read(text, SomeReading.Context()).Reasons.Should().BeEmpty("nobody asked for them");
        }
    }

    private static IEnumerable<string> Reasons(string text) => Reader.Explain(text, SomeReading.Context()).Reasons.Select(reason => $"{reason.Words}: {reason.Why}");
}
