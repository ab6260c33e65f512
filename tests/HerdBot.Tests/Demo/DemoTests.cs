using FluentAssertions;
using Xunit;

namespace HerdBot.Tests.Demo;

public sealed class DemoTests(PlayedDemo demo) : IClassFixture<PlayedDemo>
{
    [Fact]
    public void All_that_the_transcript_asks_for_can_be_done()
    {
        demo.Faults.Should().BeEmpty();
    }

    [Fact]
    public void It_shows_what_the_bot_is_for()
    {
        Posts().Should().Contain("Juniper: in view: nose and two feet showing.")
            .And.Contain("Juniper's baby: boy, born 5:24.")
            .And.Contain(post => post.StartsWith("Vet now:", StringComparison.Ordinal), "nobody answered for a while")
            .And.Contain(post => post.EndsWith("is on it, 6:22.", StringComparison.Ordinal))
            .And.Contain(post => post.StartsWith("👍 on ", StringComparison.Ordinal))
            .And.Contain(post => post.StartsWith("Mended:", StringComparison.Ordinal));
    }

    [Fact]
    public void In_a_file_it_is_plain_text()
    {
        demo.Lines.Should().NotContain(line => line.Any(char.IsControl) || line.EndsWith(' '));
    }

    [Fact]
    public void The_chat_in_the_readme_is_what_the_demo_prints()
    {
        var block = ChatBlock.Of(File.ReadAllText(Path.Combine(Root(), "README.md")));

        block.Should().NotBeEmpty("README.md shows a chat between <!-- chat --> and <!-- /chat -->");
        ChatBlock.FirstMissing(block, demo.Lines).Should().BeNull("the demo prints each of its lines, in this order");
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "HerdBot.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("No HerdBot.sln above the tests.");
        }
        return folder.FullName;
    }

    private IEnumerable<string> Posts() => demo.Lines.Where(line => line.Contains("  HerdBot  ", StringComparison.Ordinal)).Select(line => line[(line.IndexOf("HerdBot", StringComparison.Ordinal) + 9)..]);
}
