using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>Matings and due dates in the group's own words, through the real reader. It is 18 April 2027.</summary>
public sealed class DueAnswerTests
{
    private readonly Farmyard yard = new(null, "05:00", Some.Dam("Sage", state: null), Some.Dam("Willow", state: null), Some.Dam("Maple", state: null), Roster.NewAnimal("Flint", HerdRole.Sire, Species.Llama) with { Sex = Sex.Male });

    [Fact]
    public void A_mating_is_answered_with_its_window()
    {
        Write("Willow bred to Flint 5/3").Should().Be("Willow: bred Flint May 3.\nIf it took: about Apr 26, most likely Apr 19 to May 8.");
        yard.State.Records[^1].Fact.Until.Should().BeNull();
    }

    [Fact]
    public void Several_days_are_several_matings()
    {
        Write("Willow bred 5/3, 5/5 and 5/7");

        yard.State.Records.Select(record => record.Fact.At!.Value.Date).Should().Equal(new LocalDate(2026, 5, 3), new LocalDate(2026, 5, 5), new LocalDate(2026, 5, 7));
    }

    [Theory]
    [InlineData("Willow exposed to Flint May 3 – Jun 20")]
    [InlineData("Willow exposed to Flint 5/3 - 6/20")]
    [InlineData("Willow in with Flint May 3 to Jun 20")]
    public void A_time_in_the_pen_keeps_its_last_day(string text)
    {
        Write(text).Should().StartWith("Willow: in with Flint May 3 to Jun 20.");

        yard.State.Records[^1].Fact.Until.Should().Be(new LocalDate(2026, 6, 20));
    }

    [Fact]
    public void A_time_in_the_pen_over_new_year_ends_in_the_new_year()
    {
        Write("Willow exposed to Flint Nov 20 - Jan 5");

        yard.State.Records[^1].Fact.Should().Match<Fact>(fact => fact.At!.Value.Date == new LocalDate(2026, 11, 20) && fact.Until == new LocalDate(2027, 1, 5));
    }

    [Fact]
    public void When_is_she_due_gives_window_chance_days_and_why()
    {
        Write("Willow bred to Flint 5/3");
        Write("Willow scanned pregnant 7/1");

        Write("when is Willow due?").Should().Be(
            "Willow: about Apr 26, most likely Apr 19 to May 8. Day 350 today; 36 % within 7 days.\nMated May 3 (Flint); mated in spring: 6 days longer; pregnant by the check of Jul 1.");
    }

    [Fact]
    public void Her_own_record_is_told_and_believed_in_part()
    {
        foreach (var (mated, born) in new[] { ("4/20/2024", "4/12/2025"), ("5/20/2025", "5/13/2026") })
        {
            Write($"Maple bred to Flint {mated}");
            yard.Say("05:00", Some.Fact(FactKind.Birth, "Maple") with { At = new FactTime(Day(born), new LocalTime(10, 0)) });
        }
        Write("Maple bred to Flint 6/10/2026");

        Write("when is Maple due?").Should().Contain("carried 357 and 358 before: a day longer");
    }

    [Fact]
    public void A_vets_due_date_is_taken_in()
    {
        Write("Maple scan: pregnant, vet says due around May 20").Should().Contain("Maple: about May 2");

        yard.State.Records[^1].Fact.Should().Match<Fact>(fact => fact.Kind == FactKind.PregnancyCheck && fact.Expected == new LocalDate(2027, 5, 20));
        Write("when is Maple due?").Should().Contain("the vet said Apr 18: about May 20");
    }

    [Theory]
    [InlineData("vet says Maple is due around May 20")]
    [InlineData("vet says Maple due May 20")]
    [InlineData("Maple due May 20 according to the vet")]
    public void A_vets_due_date_may_be_said_in_other_ways(string text)
    {
        Write(text);

        yard.State.Records.Should().ContainSingle().Which.Fact.Should().Match<Fact>(fact => fact.Kind == FactKind.PregnancyCheck && fact.Animal == "Maple" && fact.Expected == new LocalDate(2027, 5, 20));
    }

    [Fact]
    public void An_open_check_takes_her_off_the_list()
    {
        Write("Maple bred to Flint 9/1");
        Write("Maple open on the ultrasound 11/1").Should().Contain("I count Maple as open");

        Write("when is Maple due?").Should().Be("Maple: open by the check of Nov 1, and not mated since.");
    }

    [Theory]
    [InlineData("Maple lost her pregnancy")]
    [InlineData("Maple slipped her cria")]
    [InlineData("Maple aborted")]
    public void A_lost_pregnancy_is_confirmed_and_ends_it(string text)
    {
        Write("Maple bred to Flint 9/1");
        Write(text);
        Write("Yes");

        yard.State.Find(new AnimalId("maple"))!.State.Should().NotBe(HerdEntryState.Dead);
        Write("when is Maple due?").Should().StartWith("Maple: no mating on record");
    }

    [Fact]
    public void A_year_without_a_cria_is_told_with_the_words_that_go_with_it()
    {
        Write("Willow bred to Flint 4/1/2026");
        Write("Willow scanned pregnant 7/1");

        Write("when is Willow due?").Should().Contain("day 382").And.Contain("Ask the vet this week whether she is still pregnant").And.Contain("carries nothing").And.Contain("Never induce for the date alone");
    }

    [Fact]
    public void Who_is_next_names_the_soonest_first()
    {
        Write("Maple bred to Flint 6/10");
        Write("Willow bred to Flint 5/3");

        Write("who is next?").Should().Be("Next: Willow Apr 26 and Maple May 28.");
    }

    [Fact]
    public void A_mating_only_thought_of_is_reckoned_and_not_recorded()
    {
        Write("If I breed Willow on June 3, when?").Should().Be("Mated Jun 3: about May 20, most likely May 7 to Jun 3.");
        Write("if I breed Willow on Aug 20, when?").Should().Contain("hot weather");
        Write("if I breed Willow on Feb 10, when?").Should().Contain("deep winter");
        yard.State.Records.Should().BeEmpty();
    }

    [Fact]
    public void The_days_for_births_in_a_month_are_named()
    {
        Write("which days to breed for May births?").Should().MatchRegex(@"^For births May 1 - May 31: mate May 2\d to Jun \d, best \w+ \d+; then 8\d % fall in those days, if it takes\.$");
        Write("which days to breed Willow for births in May or June?").Should().MatchRegex("^For births May 1 - Jun 30: mate (May|Jun)");
    }

    [Fact]
    public void A_mating_that_is_still_to_come_is_asked_about()
    {
        Write("Willow bred to Flint 6/1/2027").Should().Be("Willow: Jun 1 is still to come. Tell me once she is mated, or the right day.");
        Write("Willow bred to Flint tomorrow").Should().Be("Willow, bred Flint: on which day? Tell me once it is done.");
        yard.State.Records.Should().BeEmpty();
    }

    [Fact]
    public void A_window_that_ends_before_it_begins_is_asked_about()
    {
        Write("Willow exposed to Flint 2/20/2027 - 2/3/2027").Should().Be("Willow: Feb 3 is before Feb 20. Tell me the days in the pen once more.");
        yard.State.Records.Should().BeEmpty();
    }

    [Fact]
    public void A_male_is_no_dam()
    {
        Write("Flint bred 3/1").Should().Contain("which animal");
        Write("Flint scanned pregnant").Should().Be("Flint is a male. Which dam do you mean?");
        yard.State.Records.Should().BeEmpty();
    }

    [Fact]
    public void Two_pregnancies_cannot_overlap_without_a_question()
    {
        Write("Willow bred to Flint 7/1");
        Write("Willow scanned pregnant 9/1");

        Write("Willow bred to Flint").Should().Be("Willow counts as pregnant, day 291. Was she mated all the same?");
        yard.State.Records.Should().HaveCount(2);
    }

    [Fact]
    public void A_dam_that_gave_birth_five_days_ago_is_not_mated_again_without_a_question()
    {
        yard.Say("05:00", Some.Birth("05:00", "Willow"));

        yard.Write("Ana", "23 10:00", "Willow bred to Flint")[^1].Text.Should().Be("Willow gave birth 5 days ago. Was she mated already?");
        yard.Write("Ana", "23 10:01", "Yes");
        yard.State.Records.Should().Contain(record => record.Fact.Kind == FactKind.Breeding);
    }

    [Fact]
    public void A_birth_that_no_mating_explains_is_recorded_and_asked_about()
    {
        Write("Willow bred to Flint 9/30/2026");

        var posts = yard.Say("05:30", Some.Birth("05:20", "Willow"));

        posts[^1].Text.Should().Contain("Willow was last mated 200 days ago on my list, which cannot be. Was there another mating? Tell me its day.");
        yard.State.Newborns.Should().HaveCount(1);
    }

    [Fact]
    public void An_early_birth_is_phoned_about_within_the_hour()
    {
        Write("Willow bred to Flint 6/1/2026");

        var posts = yard.Say("05:30", Some.Birth("05:20", "Willow"));

        posts[^1].Tasks.Should().Contain(task => task.Key.Name == HerdBot.Core.Care.CareTaskName.VetToday && task.Level == HerdBot.Core.Care.Level.Act);
        posts[^1].Text.Should().Contain("Phone the vet within the hour");
    }

    [Fact]
    public void A_birth_that_may_be_early_is_looked_at_for_the_signs()
    {
        Write("Willow bred to Flint 5/22/2026");

        yard.Say("05:30", Some.Birth("05:20", "Willow"))[^1].Tasks.Should().Contain(task => task.Key.Name == HerdBot.Core.Care.CareTaskName.LookOver && task.Level == HerdBot.Core.Care.Level.Heed);
    }

    [Fact]
    public void The_seasons_calendar_is_a_picture_with_the_list_as_its_words()
    {
        yard.Write("Ana", "05:00", "season calendar")[^1].Picture.Should().BeNull("nobody is awaited yet");
        Write("Willow bred to Flint 5/3");

        yard.Write("Ana", "05:00", "show me the season calendar")[^1].Should().Match<Post>(post => post.Picture == Post.Season && post.Text == "Next: Willow Apr 26.");
    }

    [Fact]
    public void How_she_is_tells_when_she_is_due()
    {
        Write("Willow bred to Flint 5/3");

        Write("how far along is Willow").Should().Contain("Day 350 today");
        Write("how is Willow?").Should().Contain("about Apr 2");
    }

    private static LocalDate Day(string slashed)
    {
        var parts = slashed.Split('/').Select(part => int.Parse(part, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        return new LocalDate(parts[2], parts[0], parts[1]);
    }

    private string Write(string text)
    {
        var posts = yard.Write("Ana", "05:00", text);
        return posts.LastOrDefault(post => post.Kind != PostKind.Edit)?.Text ?? "";
    }
}
