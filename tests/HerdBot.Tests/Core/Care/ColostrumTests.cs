using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>
/// Colostrum: 10 % of body weight within 12 h, half of it within 6 h (WikiVet, camelid neonate page; absorption possible
/// to 24 h). Without a weight the low end of the band stands in: llama 9 kg, alpaca 7 kg (Merck Veterinary Manual).
/// </summary>
public sealed class ColostrumTests
{
    [Theory]
    [InlineData(Species.Llama, null, FactUnit.Kg, 900, true)]
    [InlineData(Species.Alpaca, null, FactUnit.Kg, 700, true)]
    [InlineData(Species.Llama, 10.4, FactUnit.Kg, 1040, false)]
    [InlineData(Species.Llama, 24.0, FactUnit.Lb, 1089, false)] // 24 × 0.45359237 kg
    public void The_target_is_a_tenth_of_its_weight(Species species, double? weight, FactUnit unit, int millilitres, bool assumed)
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Sage", species));
        yard.Say("06:40", weight is { } known ? [Some.Birth("06:40"), Some.Weight(known, unit)] : [Some.Birth("06:40")]);

        var figures = yard.PlanAt("06:40").Single(task => task.Key.Name == CareTaskName.Colostrum).Figures;

        figures.Should().Contain("target", $"{millilitres}").And.Contain("assumed", assumed ? "yes" : "no");
    }

    [Fact]
    public void An_assumed_weight_is_said_to_be_assumed_and_the_marks_have_their_hours()
    {
        var yard = Born();
        yard.RunTo("08:40");

        var told = yard.PlanAt("08:40").Single(task => task.Key.Name == CareTaskName.Colostrum);
        new HerdBot.Core.Wording.TaskLines(yard.State, new(yard.Farm, yard.Now)).Line(told).Should().Be(
            "Sage's baby: not seen nursing, 2 h old. Colostrum: 15 fl oz (450 ml) by 12:40 pm, 30 fl oz (900 ml) by 6:40 pm (weight assumed). Thaw in warm water, never a microwave.");
    }

    [Theory]
    [InlineData("08:40", true)]
    [InlineData("08:41", false)]
    public void Nursing_before_it_is_asked_spares_the_question(string nursed, bool spared)
    {
        var yard = Born();
        yard.Say(nursed, Some.Fact(FactKind.Nursing));

        yard.Stands(CareTaskName.Colostrum, "09:00").Should().Be(spared ? "none" : "asked fine");
    }

    [Theory]
    [InlineData("assistance")]
    [InlineData("early")]
    [InlineData("small")]
    [InlineData("twin")]
    [InlineData("weak")]
    [InlineData("cold")]
    [InlineData("dam dry")]
    [InlineData("dam ill")]
    [InlineData("dam dead")]
    [InlineData("rejected")]
    public void One_at_risk_is_asked_an_hour_sooner(string risk)
    {
        var yard = Born();
        var said = yard.Say("06:41", AtRisk(risk));
        if (said[^1].Kind == PostKind.Ask)
        {
            yard.Choose("Ana", "06:42", said[^1], 0); // a death is recorded when it was confirmed
        }
        var baby = risk == "twin" ? Some.Baby + " 1" : Some.Baby;

        yard.Stands(CareTaskName.Colostrum, "07:39:59", baby).Should().StartWith("ahead");
        yard.StandsAt(CareTaskName.Colostrum, yard.At("07:40"), baby).Should().Match(at => at == "asked fine" || risk == "cold" && at == "held fine");
        yard.StandsAt(CareTaskName.Colostrum, yard.At("08:40"), baby).Should().EndWith("act");
        yard.StandsAt(CareTaskName.Colostrum, yard.At("09:39:59"), baby).Should().EndWith("act");
        yard.StandsAt(CareTaskName.Colostrum, yard.At("09:40"), baby).Should().EndWith("vet");
    }

    [Fact]
    public void A_seven_kilo_llama_is_not_small_and_a_lighter_one_is()
    {
        // C. Whitehead DipACVIM, Camelid neonatology: at least 7 kg llama, 6 kg alpaca.
        foreach (var (kilograms, at) in new[] { (7.0, "ahead fine"), (6.9, "asked fine") })
        {
            var yard = Born();
            yard.Say("06:41", Some.Weight(kilograms));
            yard.Stands(CareTaskName.Colostrum, "08:00").Should().Be(at);
        }
    }

    [Fact]
    public void Something_taken_by_four_hours_keeps_the_vet_off_until_half_is_due()
    {
        var yard = Born();
        yard.Say("09:00", Some.Colostrum(100));

        yard.Stands(CareTaskName.Colostrum, "10:40").Should().Be("late act");
        yard.Stands(CareTaskName.Colostrum, "12:39:59").Should().Be("late act");
        yard.Stands(CareTaskName.Colostrum, "12:40").Should().Be("late vet");
    }

    [Theory]
    [InlineData(449, "late vet")]
    [InlineData(450, "late act")]
    public void Short_of_half_at_six_hours_is_for_the_vet(int millilitres, string at)
    {
        var yard = Born();
        yard.Say("09:00", Some.Colostrum(millilitres));

        yard.Stands(CareTaskName.Colostrum, "12:40").Should().Be(at);
    }

    [Theory]
    [InlineData(899, "late vet")]
    [InlineData(900, "done fine")]
    public void Short_of_all_at_twelve_hours_is_for_the_vet(int millilitres, string at)
    {
        var yard = Born();
        yard.Say("09:00", Some.Colostrum(millilitres));

        yard.Stands(CareTaskName.Colostrum, "18:39:59").Should().Be(at == "done fine" ? at : "late act");
        yard.Stands(CareTaskName.Colostrum, "18:40").Should().Be(at);
    }

    [Fact]
    public void At_twelve_and_eighteen_hours_the_vet_is_called_anew_and_asked_about_plasma()
    {
        var yard = Born();
        yard.Say("09:00", Some.Colostrum(500));
        yard.RunTo("19 00:45");

        var alarms = yard.Posts.Where(post => post.Kind == PostKind.Alarm && post.Tasks[0].Key.Name == CareTaskName.Colostrum).ToList();
        alarms.Select(post => yard.Clock(post.At)).Should().Contain("18 18:40").And.Contain("19 00:40");
        alarms.Should().OnlyContain(post => post.Text.Contains("17 fl oz (500 ml) of 30 fl oz (900 ml) colostrum") && post.Text.Contains("Ask about plasma today."));
    }

    [Fact]
    public void Half_given_after_the_mark_ends_the_alarm_and_the_rest_is_still_asked()
    {
        var yard = Born();
        yard.Say("09:00", Some.Colostrum(100));
        yard.RunTo("12:50");
        yard.Say("12:55", Some.Colostrum(400));

        yard.Stands(CareTaskName.Colostrum, "12:56").Should().Be("late act");
    }

    [Fact]
    public void With_a_drive_ahead_half_is_judged_by_what_was_given_so_far()
    {
        foreach (var (given, at) in new[] { (450, "late act"), (449, "late vet") })
        {
            var yard = new Farmyard(Some.Farm(vetMinutes: 45));
            yard.Say("06:40", Some.Birth("06:40"));
            yard.Say("09:00", Some.Colostrum(given));
            yard.Stands(CareTaskName.Colostrum, "11:55").Should().Be(at);
        }
    }

    [Fact]
    public void Half_that_was_past_when_the_birth_was_told_counts_ten_minutes_later()
    {
        var yard = new Farmyard();
        yard.Say("15:00", Some.Birth("06:40"), Some.Colostrum(100));

        yard.Stands(CareTaskName.Colostrum, "15:09:59").Should().Be("asked fine");
        yard.Stands(CareTaskName.Colostrum, "15:10").Should().Be("late vet");
    }

    [Fact]
    public void Nursing_seen_twice_or_the_target_is_enough()
    {
        var yard = Born();
        yard.Say("09:00", Some.Fact(FactKind.Nursing));
        yard.Stands(CareTaskName.Colostrum, "09:01").Should().Be("asked fine");
        yard.Say("09:45", Some.Fact(FactKind.Nursing));
        yard.Stands(CareTaskName.Colostrum, "09:46").Should().Be("done fine");

        yard = Born();
        yard.Say("09:00", Some.Colostrum(500));
        yard.Say("11:00", Some.Fact(FactKind.Colostrum) with { Value = 14, Unit = FactUnit.Oz }); // 414 ml
        yard.Stands(CareTaskName.Colostrum, "11:01").Should().Be("done fine");
    }

    [Fact]
    public void At_a_day_it_lapses_with_a_word_about_the_test_and_the_vet()
    {
        var yard = Born();
        yard.RunTo("19 07:30");

        var lapse = yard.Posts.Should().ContainSingle(post => post.Tasks.Any(task => task.State == TaskState.Lapsed)).Which;
        yard.Clock(lapse.At).Should().Be("19 06:40");
        lapse.Kind.Should().Be(PostKind.Alarm);
        lapse.Text.Should().Contain("nothing of 30 fl oz (900 ml) colostrum in the first day (weight assumed). The gut has closed: ask the vet about an IgG test today.");
        lapse.Buttons.Should().BeEmpty();
    }

    [Fact]
    public void Done_it_lapses_without_a_word()
    {
        var yard = Born();
        yard.Say("09:00", Some.Colostrum(900));
        yard.RunTo("19 09:00");

        yard.Posts.Should().NotContain(post => post.Tasks.Any(task => task.Key.Name == CareTaskName.Colostrum && task.State == TaskState.Lapsed));
    }

    private static Fact AtRisk(string risk) => risk switch
    {
        "assistance" => Some.Fact(FactKind.Assistance, "Sage"),
        "early" => Some.Note(NoteTopics.Early),
        "small" => Some.Weight(6.5),
        "twin" => Some.Birth("06:41", n: 2),
        "weak" => Some.Note(NoteTopics.Weak),
        "cold" => Some.Temperature(97.5),
        "dam dry" => Some.Note(NoteTopics.NoMilk, "Sage"),
        "dam ill" => Some.Note(NoteTopics.DamIll, "Sage"),
        "dam dead" => Some.Fact(FactKind.Death, "Sage"),
        _ => Some.Note(NoteTopics.Rejects, "Sage"),
    };

    private static Farmyard Born()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"));
        return yard;
    }
}
