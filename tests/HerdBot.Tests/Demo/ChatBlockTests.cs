using FluentAssertions;
using Xunit;

namespace HerdBot.Tests.Demo;

public sealed class ChatBlockTests
{
    private static readonly string[] Printed = ["one", "", "two", "three", "two"];

    [Fact]
    public void The_block_is_what_stands_between_the_comments_without_fence_and_free_lines()
    {
        ChatBlock.Of("# Title\r\n<!-- chat -->\r\n```text\r\none\r\n\r\n  two\r\n```\r\n<!-- /chat -->\r\nmore").Should().Equal("one", "  two");
        ChatBlock.Of("# Title").Should().BeEmpty();
    }

    [Theory]
    [InlineData("one|two|three", null)]
    [InlineData("one|…|three|two", null)]
    [InlineData("one|2|three", "2")]
    [InlineData("three|one", "one")] // there, but earlier
    [InlineData("three|three", "three")] // there once
    [InlineData("two|two|two", "two")]
    public void Each_line_must_be_printed_in_this_order(string block, string? missing)
    {
        ChatBlock.FirstMissing(block.Split('|'), Printed).Should().Be(missing);
    }
}
