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
        Posts().Should().Contain(post => post.StartsWith("Juniper: labour", StringComparison.Ordinal) || post.StartsWith("Juniper: birth under way", StringComparison.Ordinal))
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
        Assert.SkipUnless(Readme() is not null, "There is no README.md above the tests yet.");

        var block = ChatBlock.Of(File.ReadAllText(Readme()!));

        block.Should().NotBeEmpty("README.md shows a chat between <!-- chat --> and <!-- /chat -->");
        ChatBlock.FirstMissing(block, demo.Lines).Should().BeNull("the demo prints each of its lines, in this order");
    }

    private static string? Readme()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "HerdBot.sln")))
            {
                var file = Path.Combine(folder.FullName, "README.md");
                return File.Exists(file) ? file : null;
            }
        }
        return null;
    }

    private IEnumerable<string> Posts() => demo.Lines.Where(line => line.Contains("  HerdBot  ", StringComparison.Ordinal)).Select(line => line[(line.IndexOf("HerdBot", StringComparison.Ordinal) + 9)..]);
}
