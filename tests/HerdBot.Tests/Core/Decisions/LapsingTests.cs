using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>Questions that nobody answers. They wait 12 hours: common practice, no source.</summary>
public sealed class LapsingTests
{
    private const string Told = "Not recorded, nobody said which animal: 101.4 °F (Ben 5:30).";

    [Fact]
    public void A_question_that_nobody_answers_is_told_once_in_the_next_round_up_and_records_nothing()
    {
        var yard = Asked();
        var posts = yard.RunTo("21 05:00");

        posts.Where(post => post.Text.Contains("Not recorded")).Should().ContainSingle().Which.Should().Match<Post>(post => post.Kind == PostKind.RoundUp && post.Text == Told && post.Tasks.IsEmpty);
        yard.Clock(posts.Single(post => post.Text.Contains("Not recorded")).At).Should().Be("18 19:00");
        yard.State.Records.Should().BeEmpty();
        yard.State.Questions.Should().BeEmpty();
    }

    [Fact]
    public void It_does_not_lapse_before_its_time()
    {
        var yard = Asked();
        yard.RunTo("17:29");

        yard.Write("Ben", "17:29", "Sage");
        yard.State.Records.Should().ContainSingle().Which.Animal.Should().Be(yard.State.Named("Sage")!.Id);
        yard.RunTo("20 05:00").Should().NotContain(post => post.Text.Contains("Not recorded"));
    }

    [Fact]
    public void A_later_message_of_the_same_person_that_says_it_whole_settles_it()
    {
        var yard = Asked();
        yard.Write("Ben", "05:40", "Willow herself 101.4");

        yard.State.Questions.Should().BeEmpty();
        yard.RunTo("20 05:00").Should().NotContain(post => post.Text.Contains("Not recorded"));
    }

    [Fact]
    public void The_same_figure_of_another_person_does_not()
    {
        var yard = Asked();
        yard.Write("Cleo", "05:40", "Willow herself 101.4");

        yard.State.Questions.Should().ContainSingle();
    }

    [Fact]
    public void What_else_waited_with_it_goes_on_waiting()
    {
        var yard = new Farmyard();
        yard.SayBy("Ben", "05:30", "…", Ask.Animal, new Fact(FactKind.Temperature) { Animal = Fact.AskAnimal, Value = 101.4m, Unit = FactUnit.F }, new Fact(FactKind.Urine) { Animal = Fact.AskAnimal });
        yard.SayBy("Ben", "05:40", "…", null, Some.Temperature(101.4, animal: "Sage"));

        yard.State.Questions.Should().ContainSingle().Which.Waiting.Should().ContainSingle().Which.Kind.Should().Be(FactKind.Urine);
    }

    [Fact]
    public void A_press_on_a_question_that_is_closed_says_so_once()
    {
        var yard = new Farmyard();
        var asked = yard.Write("Ana", "05:30", "Willow died").Should().ContainSingle().Subject;
        yard.RunTo("19 06:00");

        yard.Choose("Ana", "19 06:10", asked, 0).Should().ContainSingle().Which.Should().Match<Post>(post => post.Edits == asked.Number && post.Buttons.IsEmpty && post.Text.EndsWith("No longer open. If it matters still, write it once more, whole."));
        yard.Choose("Ben", "19 06:11", asked, 0).Should().BeEmpty();
        yard.State.Named("Willow")!.IsHere().Should().BeTrue();
    }

    private static Farmyard Asked()
    {
        var yard = new Farmyard();
        yard.SayBy("Ben", "05:30", "…", Ask.Animal, new Fact(FactKind.Temperature) { Animal = Fact.AskAnimal, Value = 101.4m, Unit = FactUnit.F });
        return yard;
    }
}
