using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>Who is looked in on and how often. Sage is mated so that 18 April 2027 is a chosen day of hers.</summary>
public sealed class CloseUpTests
{
    [Fact]
    public void Before_the_five_percent_point_nobody_is_looked_in_on()
    {
        var yard = Mated(310);

        yard.RunTo("20 23:00");

        Looks(yard).Should().BeEmpty();
    }

    [Fact]
    public void From_the_five_percent_point_on_the_round_ups_ask_for_a_look()
    {
        var yard = Mated(338);

        yard.RunTo("18 23:00");

        Looks(yard).Select(post => (post.Kind, yard.Clock(post.At), post.Text)).Should().Equal(
            (PostKind.RoundUp, "18 07:00", "Open now:\nLook in on Sage."), (PostKind.RoundUp, "18 19:00", "Open now:\nLook in on Sage."));
    }

    [Fact]
    public void The_list_is_there_on_the_very_day_that_the_window_opens()
    {
        var yard = Mated(310);
        var from = yard.State.Due(yard.Farm).FirstWindow(Some.Day)!.Value;

        yard.RunTo($"{18 + Period.DaysBetween(Some.Day, from)} 07:30");

        Looks(yard).Should().ContainSingle();
    }

    [Fact]
    public void A_look_by_one_who_tells_of_it_is_not_asked_for_again()
    {
        var yard = Mated(338);
        yard.Say("06:30", Some.Done(CareTaskName.LookIn, null));
        yard.RunTo("18 12:00");

        Looks(yard).Should().BeEmpty();
    }

    [Fact]
    public void A_press_under_a_round_up_of_several_looks_in_on_them_all()
    {
        var yard = Mated(338, "Willow", "Maple");
        yard.RunTo("07:00");
        var post = Looks(yard).Single();

        post.Text.Should().Be("Open now:\nLook in on Maple, Sage and Willow.");
        yard.Tap("Ben", "07:05", CareTaskName.LookIn, ButtonVerb.Done, post.Tasks[0].Animal);
        yard.PlanAt("07:06").Where(task => task.Key.Name == CareTaskName.LookIn && task.OpenAt(yard.At("07:06"))).Should().BeEmpty();
    }

    [Fact]
    public void Signs_make_the_looks_come_through_the_day_and_say_nothing_for_sure()
    {
        var yard = Mated(345);
        yard.Say("07:40", Some.Fact(FactKind.LabourSign, "Sage") with { Field = NoteTopics.CloseUp, Text = "off by herself" });
        yard.RunTo("18 23:00");

        Looks(yard).Where(post => post.Kind == PostKind.Reminder).Select(post => yard.Clock(post.At)).Should().Equal("18 09:00", "18 12:00", "18 15:00", "18 21:00");
        yard.PlanAt("18 16:00").Where(task => task.Key.Name == CareTaskName.LookIn).Select(task => double.Parse(task.Figures[CloseUp.Chance], System.Globalization.CultureInfo.InvariantCulture)).Should().OnlyContain(chance => chance > 0.1 && chance <= 0.8);
    }

    [Fact]
    public void A_dam_without_a_date_is_put_on_the_list_by_a_sign()
    {
        var yard = new Farmyard();
        yard.Say("06:00", Some.Fact(FactKind.LabourSign, "Sage") with { Field = NoteTopics.CloseUp, Text = "bagging up" });
        yard.RunTo("18 20:00");

        Looks(yard).Should().NotBeEmpty();
    }

    [Fact]
    public void An_udder_that_fills_says_nothing_of_today()
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Sage", state: null));
        yard.Write("Ana", "06:00", "Sage is bagging up");
        yard.RunTo("18 23:00");

        Looks(yard).Should().NotBeEmpty().And.OnlyContain(post => post.Kind == PostKind.RoundUp);
    }

    [Fact]
    public void While_labour_is_on_its_own_clocks_run()
    {
        var yard = Mated(345);
        yard.Say("06:00", Some.Fact(FactKind.LabourSign, "Sage") with { Field = NoteTopics.Labour });
        yard.RunTo("18 08:00");

        Looks(yard).Should().BeEmpty();
    }

    [Fact]
    public void The_birth_takes_her_off_the_list()
    {
        var yard = Mated(338);
        yard.Say("06:00", Some.Birth("05:50"));
        yard.RunTo("18 20:00");

        Looks(yard).Should().BeEmpty();
    }

    [Fact]
    public void Past_the_ninety_five_percent_point_the_vet_is_asked_this_week_and_she_is_looked_at_three_times_a_day()
    {
        var yard = Mated(376);
        yard.RunTo("18 23:00");

        yard.Posts.First(post => post.Tasks.Any(task => task.Key.Name == CareTaskName.VetToday)).Text.Should()
            .Contain("Ask the vet this week whether she is still pregnant and the cria alive").And.Contain("Never induce for the date alone");
        Looks(yard).Select(post => yard.Clock(post.At)).Should().Equal("18 07:00", "18 13:00", "18 19:00");
        yard.Say("18 23:01", Some.Claim(CareTaskWords.CallVet, "Sage"));
        yard.PlanAt("19 08:00").Where(task => task.Key.Name == CareTaskName.VetToday).Should().OnlyContain(task => task.DoneAt != null);
    }

    [Fact]
    public void A_dam_that_is_open_by_a_check_is_not_waited_for()
    {
        var yard = Mated(345);
        yard.Say("05:30", Some.Fact(FactKind.PregnancyCheck, "Sage") with { Neg = true, At = new FactTime(Some.Day.PlusDays(-200), null) });
        yard.RunTo("18 23:00");

        Looks(yard).Should().BeEmpty();
    }

    [Fact]
    public void The_vets_day_for_vaccination_is_asked_for_once_before_the_first_window()
    {
        var yard = Mated(265);
        yard.RunTo("50 12:00");

        var asked = yard.Posts.Where(post => post.Tasks.Any(task => task.Key.Name == CareTaskName.Vaccination)).ToList();
        asked.Should().ContainSingle().Which.Text.Should().MatchRegex(@"^First births may come from about \w+ \d+ on\. Ask your vet for the day of the dams' vaccination before it\.$");
    }

    private static Farmyard Mated(int days, params string[] more)
    {
        string[] names = ["Sage", .. more];
        var yard = new Farmyard(null, "05:00", [.. names.Select(name => Some.Dam(name, state: null))]);
        yard.Say("05:00", [.. names.Select(name => Some.Fact(FactKind.Breeding, name) with { At = new FactTime(Some.Day.PlusDays(-days), null) })]);
        return yard;
    }

    private static List<Post> Looks(Farmyard yard) => [.. yard.Posts.Where(post => post.Tasks.Any(task => task.Key.Name == CareTaskName.LookIn && task.State == TaskState.Asked) && post.Kind != PostKind.Edit)];
}
