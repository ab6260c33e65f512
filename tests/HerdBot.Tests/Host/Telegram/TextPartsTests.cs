using CsCheck;
using FluentAssertions;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

public sealed class TextPartsTests
{
    [Theory]
    [InlineData("one\ntwo", 20, new[] { "one\ntwo" })]
    [InlineData("one\ntwo\nthree", 8, new[] { "one\ntwo", "three" })]
    [InlineData("one two three", 8, new[] { "one two", "three" })]
    [InlineData("onetwothree", 8, new[] { "onetwoth", "ree" })]
    // A pair of surrogates is one letter and stays whole.
    [InlineData("1🦙🦙🦙", 4, new[] { "1🦙", "🦙🦙" })]
    [InlineData("one\n\n\ntwo", 4, new[] { "one", "two" })]
    [InlineData(" \n ", 4, new string[0])]
    public void A_text_is_cut_at_line_ends_else_between_words_else_anywhere(string text, int limit, string[] parts) =>
        TextParts.Of(text, limit).Should().Equal(parts);

    [Fact]
    public void No_part_is_too_long_or_blank_and_no_letter_is_lost() =>
        Gen.String[Gen.Char["ab \n🦙"], 0, 60].Select(Gen.Int[2, 12]).Each((text, limit) =>
        {
            var parts = TextParts.Of(text, limit);

            parts.All(part => part.Length <= limit && part.Trim().Length > 0).Should().BeTrue();
            string.Concat(parts).Where(c => c is not (' ' or '\n')).Should().Equal(text.Where(c => c is not (' ' or '\n')));
        }, times: 2000);
}
