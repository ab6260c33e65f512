using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>One question back, and its answer by words or by button. Nothing is on record before.</summary>
public sealed class AskingTests
{
    [Fact]
    public void A_weight_without_an_animal_asks_which_and_a_button_answers()
    {
        var yard = TwoBorn();
        var said = yard.SayBy("Ben", "08:00", "24 lb", Ask.Animal, Some.Weight(24, FactUnit.Lb, animal: Fact.AskAnimal));

        var question = said.Should().ContainSingle().Which;
        question.Kind.Should().Be(PostKind.Ask);
        question.Text.Should().Be("24 lb: which animal?");
        question.Buttons.Select(button => button.Label).Should().BeEquivalentTo("Sage's baby", "Fern's baby");
        Recorded(yard, FactKind.Weight).Should().BeEmpty();

        var index = question.Buttons.ToList().FindIndex(button => button.Label == "Fern's baby");
        var answered = yard.Choose("Cleo", "08:01", question, index);

        Recorded(yard, FactKind.Weight).Should().ContainSingle().Which.Animal.Should().Be(yard.State.Named("Fern's baby")!.Id);
        Recorded(yard, FactKind.Weight)[0].By.Should().Be("Ben", "Ben weighed it; Cleo only said which");
        answered.Should().Contain(post => post.Kind == PostKind.Edit && post.Text == "24 lb: which animal?\nFern's baby, Cleo.");
        yard.State.Questions.Should().BeEmpty();
    }

    [Theory]
    [InlineData("Fern's baby")]
    [InlineData("fern's baby.")]
    [InlineData("Fern’s baby")]
    public void The_same_words_typed_do_the_same(string words)
    {
        var yard = TwoBorn();
        yard.SayBy("Ben", "08:00", "24 lb", Ask.Animal, Some.Weight(24, FactUnit.Lb, animal: Fact.AskAnimal));
        yard.Write("Ben", "08:01", words);

        Recorded(yard, FactKind.Weight).Should().ContainSingle().Which.Animal.Should().Be(yard.State.Named("Fern's baby")!.Id);
    }

    [Fact]
    public void A_missing_unit_is_asked_for_and_the_value_kept()
    {
        var yard = TwoBorn();
        var said = yard.SayBy("Ben", "08:00", "Sage's baby 24", Ask.Unit, new Fact(FactKind.Weight) { Animal = Some.Baby, Value = 24 });
        said.Should().ContainSingle().Which.Buttons.Select(button => button.Label).Should().Equal("lb", "kg");
        yard.Choose("Ben", "08:01", said[0], 0);

        Recorded(yard, FactKind.Weight).Should().ContainSingle().Which.Fact.Should().Match<Fact>(fact => fact.Value == 24 && fact.Unit == FactUnit.Lb);
    }

    [Fact]
    public void A_missing_figure_is_answered_by_the_whole_statement()
    {
        var yard = TwoBorn();
        yard.SayBy("Ben", "08:00", "took Sage's baby's temp", Ask.Value, new Fact(FactKind.Temperature) { Animal = Some.Baby });
        yard.State.Questions.Should().ContainSingle();
        yard.Say("08:02", Some.Temperature(100.4));

        yard.State.Questions.Should().BeEmpty();
        Recorded(yard, FactKind.Temperature).Should().ContainSingle();
    }

    [Theory]
    [InlineData(79.9, FactUnit.F, true)]
    [InlineData(80.0, FactUnit.F, false)]
    [InlineData(110.0, FactUnit.F, false)]
    [InlineData(110.1, FactUnit.F, true)]
    [InlineData(26.6, FactUnit.C, true)] // 79.9 °F
    [InlineData(43.4, FactUnit.C, true)] // 110.1 °F
    public void A_temperature_that_cannot_be_is_asked_back_and_treated_as_cold_meanwhile(double value, FactUnit unit, bool asked)
    {
        var yard = TwoBorn();
        var said = yard.Say("08:00", Some.Temperature(value, unit: unit));

        Recorded(yard, FactKind.Temperature).Should().HaveCount(asked ? 0 : 1);
        said.Any(post => post.Kind == PostKind.Ask && post.Text.Contains("If it reads cold, dry and shelter it meanwhile.")).Should().Be(asked);
    }

    [Theory]
    [InlineData(9.36, false)] // last - 10 %
    [InlineData(9.35, true)]
    [InlineData(12.44, false)] // last + 10 % + two days at the top of the band, 500 g
    [InlineData(12.45, true)]
    public void A_weight_off_the_curve_is_asked_back(double kilograms, bool asked)
    {
        var yard = TwoBorn();
        yard.Say("07:00", Some.Weight(10.4));
        var said = yard.Say("20 07:00", Some.Weight(kilograms));

        Recorded(yard, FactKind.Weight).Should().HaveCount(asked ? 1 : 2);
        said.Any(post => post.Kind == PostKind.Ask && post.Text.Contains("but the last was 10.4 kg. Is that so?")).Should().Be(asked);
    }

    [Theory]
    [InlineData(0, 2)]
    [InlineData(1, 1)]
    public void Yes_records_what_waited_and_no_records_nothing(int choice, int weights)
    {
        var yard = TwoBorn();
        yard.Say("07:00", Some.Weight(10.4));
        var said = yard.Say("08:00", Some.Weight(14));
        var answered = yard.Choose("Ana", "08:01", said[^1], choice);

        Recorded(yard, FactKind.Weight).Should().HaveCount(weights);
        if (choice == 1)
        {
            answered.Should().Contain(post => post.Text == "Then I record nothing.");
        }
    }

    [Fact]
    public void A_death_is_confirmed_before_it_is_recorded_and_ends_all_reminders()
    {
        var yard = TwoBorn();
        var said = yard.Say("08:00", Some.Fact(FactKind.Death));
        said.Should().ContainSingle().Which.Text.Should().Be("Sage's baby: did it die? I am sorry. Shall I record it?");
        yard.Stands(CareTaskName.Standing, "08:00").Should().NotBe("none");
        yard.Choose("Ana", "08:05", said[0], 0);
        yard.RunTo("12:00");

        yard.Posts.Where(post => post.At > yard.At("08:05")).SelectMany(post => post.Tasks).Should().NotContain(task => task.Animal == Some.Baby);
    }

    [Fact]
    public void A_second_birth_of_a_dam_is_a_twin_or_the_same_told_twice()
    {
        foreach (var (choice, babies) in new[] { (0, 3), (1, 2) })
        {
            var yard = TwoBorn();
            var said = yard.Say("07:30", Some.Birth("06:45"));
            said.Should().ContainSingle().Which.Text.Should().Be("Sage has a baby on record, born 6:40. Is this a twin?");
            said[0].Buttons.Select(button => button.Label).Should().Equal("A twin", "Same one");
            yard.Choose("Ben", "07:31", said[0], choice);

            yard.State.Newborns.Should().HaveCount(babies);
        }
    }

    [Fact]
    public void Twins_are_numbered_in_the_order_of_birth()
    {
        var yard = TwoBorn();
        yard.Say("07:30", Some.Birth("07:20", n: 2) with { Sex = Sex.Male });

        yard.State.Newborns.Where(baby => baby.Dam == yard.State.Named("Sage")!.Id).Select(baby => baby.Name).Should().Equal("Sage's baby 1", "Sage's baby 2");
    }

    [Fact]
    public void A_time_still_to_come_is_asked_back()
    {
        var yard = TwoBorn();
        var said = yard.Say("08:00", Some.Fact(FactKind.Nursing, at: "09:30"));

        said.Should().ContainSingle().Which.Text.Should().Be("Sage's baby, nursing: at what time?");
        Recorded(yard, FactKind.Nursing).Should().BeEmpty();
    }

    [Fact]
    public void An_unknown_animal_is_offered_to_be_added()
    {
        var yard = TwoBorn();
        var said = yard.Say("08:00", Some.Birth("07:50", "Hazel"));

        said.Should().ContainSingle().Which.Text.Should().Be("Born: I know no Hazel. Which animal, or shall I add it?");
        said[0].Buttons[^1].Label.Should().Be("Add Hazel");
        yard.Choose("Ana", "08:01", said[0], said[0].Buttons.Length - 1);

        yard.State.Named("Hazel")!.Role.Should().Be(HerdRole.Dam);
        yard.State.Newborns.Should().Contain(baby => baby.Name == "Hazel's baby");
    }

    [Fact]
    public void A_question_lapses_after_twelve_hours()
    {
        var yard = TwoBorn();
        yard.SayBy("Ben", "08:00", "24 lb", Ask.Animal, Some.Weight(24, FactUnit.Lb, animal: Fact.AskAnimal));
        yard.Write("Ben", "20:00", "Fern's baby");

        Recorded(yard, FactKind.Weight).Should().BeEmpty();
        yard.State.Questions.Should().BeEmpty("nobody can answer it any more");
    }

    [Fact]
    public void The_rest_of_the_message_is_recorded_while_one_thing_is_asked()
    {
        var yard = TwoBorn();
        var said = yard.SayBy("Ben", "08:00", "24 lb, cord dipped on Sage's baby", Ask.Animal, Some.Weight(24, FactUnit.Lb, animal: Fact.AskAnimal), Some.Fact(FactKind.CordDip));

        Recorded(yard, FactKind.CordDip).Should().ContainSingle();
        said.Count(post => post.Kind == PostKind.Ask).Should().Be(1);
    }

    [Fact]
    public void Two_doubts_in_a_message_are_both_asked_one_after_the_other()
    {
        var yard = TwoBorn();
        yard.Say("07:00", Some.Weight(10.4));
        var said = yard.Say("08:00", Some.Weight(14), Some.Temperature(60));

        said.Count(post => post.Kind == PostKind.Ask).Should().Be(1);
        Recorded(yard, FactKind.Temperature).Should().BeEmpty();
        Recorded(yard, FactKind.Weight).Should().ContainSingle();
        var next = yard.Choose("Ana", "08:01", said[^1], 0);

        next.Should().Contain(post => post.Kind == PostKind.Ask && post.Text.Contains("what is the figure?"));
        Recorded(yard, FactKind.Temperature).Should().BeEmpty();
    }

    [Fact]
    public void A_button_of_a_question_that_was_answered_does_nothing()
    {
        var yard = TwoBorn();
        yard.Say("07:00", Some.Weight(10.4));
        var said = yard.Say("08:00", Some.Weight(14));
        yard.Choose("Ana", "08:01", said[^1], 1);
        yard.Choose("Ben", "08:02", said[^1], 0);

        Recorded(yard, FactKind.Weight).Should().ContainSingle();
    }

    private static List<HerdRecord> Recorded(Farmyard yard, FactKind kind) => [.. yard.State.Records.Where(record => record.Fact.Kind == kind && !record.Withdrawn)];

    private static Farmyard TwoBorn()
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Sage"), Some.Dam("Fern"));
        yard.Say("06:45", Some.Birth("06:40"));
        yard.Say("06:50", Some.Birth("06:45", "Fern"));
        return yard;
    }
}
