using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Posting;

/// <summary>What people say keeps a task quiet for a while, and never longer.</summary>
public sealed class SilenceTests
{
    [Fact]
    public void On_it_silences_that_task_for_twenty_minutes()
    {
        var yard = Born();
        yard.Tap("Ben", "07:11", CareTaskName.Standing, ButtonVerb.OnIt);
        yard.RunTo("07:39");
        yard.Tap("Ben", "07:39", CareTaskName.Standing, ButtonVerb.OnIt);
        yard.RunTo("08:20");

        yard.Told(CareTaskName.Standing).Should().Equal("18 07:10 asked fine", "18 07:59 late act", "18 08:10 late act");
    }

    [Fact]
    public void On_it_at_vet_lasts_forty_minutes()
    {
        var yard = Born();
        yard.Tap("Ben", "08:41", CareTaskName.Standing, ButtonVerb.OnIt);
        yard.RunTo("09:22");

        yard.Told(CareTaskName.Standing).Where(line => line.EndsWith("vet")).Should().Equal("18 08:40 late vet", "18 09:21 late vet");
    }

    [Fact]
    public void On_it_silences_no_other_task()
    {
        var yard = Born();
        yard.Tap("Ben", "07:36", CareTaskName.Standing, ButtonVerb.OnIt);
        yard.RunTo("07:50");

        yard.Told(CareTaskName.Standing).Should().NotContain(line => line.StartsWith("18 07:4"));
        yard.Told(CareTaskName.Nursing).Should().Equal("18 07:40 asked fine");
    }

    [Theory]
    [InlineData("presentation")]
    [InlineData("cord")]
    public void On_it_for_a_birth_under_way_or_blood_lasts_ten_minutes(string what)
    {
        var yard = Born();
        var (task, animal, fact) = what == "cord" ? (CareTaskName.CordWatch, Some.Baby, Some.Fact(FactKind.CordBleeding))
            : (CareTaskName.Presentation, "Willow", Some.Fact(FactKind.WaterBroke, "Willow"));
        yard.Say("09:00", fact);
        yard.Tap("Ben", "09:01", task, ButtonVerb.OnIt, animal);
        yard.RunTo("09:12");

        yard.Told(task, animal).Select(line => line[3..8]).First().Should().Be("09:11");
    }

    [Fact]
    public void Not_yet_is_recorded_and_silences_for_ten_minutes()
    {
        var yard = Born();
        yard.Tap("Ben", "07:41", CareTaskName.Standing, ButtonVerb.NotYet);
        yard.RunTo("07:54");
        yard.Tap("Ben", "07:54", CareTaskName.Standing, ButtonVerb.NotYet);
        yard.RunTo("08:10");

        yard.State.Records.Where(record => record.Fact.Kind == FactKind.NotDone).Should().HaveCount(2)
            .And.OnlyContain(record => record.By == "Ben" && record.Fact.Task == "standing");
        yard.Told(CareTaskName.Standing).Should().Equal("18 07:10 asked fine", "18 07:40 late act", "18 08:04 late act", "18 08:10 late act");
    }

    [Fact]
    public void Not_nursing_yet_in_words_silences_for_ten_minutes_too()
    {
        var yard = Born();
        yard.Say("08:35", Some.Fact(FactKind.Nursing) with { Neg = true });
        yard.RunTo("08:50");

        yard.Told(CareTaskName.Nursing).Should().Equal("18 07:40 asked fine", "18 08:45 late act");
    }

    [Fact]
    public void Called_silences_all_alarms_of_that_animal_for_an_hour_even_what_comes_to_vet_meanwhile()
    {
        var yard = Born();
        yard.Say("07:00", Some.Done(CareTaskName.Udder, "Sage"));
        yard.Say("08:55", Some.Claim(CareTaskWords.CallVet));
        yard.RunTo("10:10");

        yard.Posts.Where(post => post.Kind == PostKind.Alarm).Select(post => yard.Clock(post.At)[3..]).Should().Equal("08:40", "08:50", "09:55", "10:05");
    }

    [Fact]
    public void Called_for_the_cria_leaves_the_dams_alarms()
    {
        var yard = Born();
        yard.RunTo("12:35");
        yard.Say("12:35", Some.Claim(CareTaskWords.CallVet));
        yard.RunTo("12:45");

        var alarm = yard.Posts.Single(post => post.Kind == PostKind.Alarm && post.At > yard.At("12:35"));
        alarm.Tasks[0].Key.Name.Should().Be(CareTaskName.Placenta);
    }

    [Fact]
    public void Called_does_not_keep_back_what_somebody_sees_after_it()
    {
        var yard = Born();
        yard.Say("08:55", Some.Claim(CareTaskWords.CallVet));
        var said = yard.Say("09:05", Some.Temperature(93.1));

        said.Should().ContainSingle(post => post.Kind == PostKind.Alarm).Which.Text.Should().Contain("93.1 °F, very cold");
    }

    [Fact]
    public void On_it_does_not_keep_back_a_worse_reading()
    {
        var yard = Born();
        yard.Say("07:00", Some.Temperature(97.0));
        yard.Tap("Ben", "07:15", CareTaskName.Temperature, ButtonVerb.OnIt);
        var said = yard.Say("07:18", Some.Temperature(93.1));

        said.Should().ContainSingle(post => post.Kind == PostKind.Alarm).Which.Tasks[0].Key.Name.Should().Be(CareTaskName.Warm);
    }

    [Fact]
    public void What_is_unsure_closes_no_task()
    {
        var yard = Born();
        yard.Say("07:30", Some.Fact(FactKind.Nursing) with { Unsure = true });
        yard.RunTo("08:41");

        yard.Told(CareTaskName.Nursing).Should().Equal("18 07:40 asked fine", "18 08:40 late act");
    }

    [Fact]
    public void An_unsure_or_denied_claim_silences_nothing()
    {
        var yard = Born();
        yard.Say("08:39", Some.Claim("standing") with { Unsure = true }, Some.Claim("nursing") with { Neg = true });
        yard.RunTo("08:41");

        yard.Told(CareTaskName.Standing).Should().Contain("18 08:40 late vet");
        yard.Told(CareTaskName.Nursing).Should().Contain("18 08:40 late act");
    }

    [Fact]
    public void A_claim_for_later_still_lasts_twenty_minutes()
    {
        var yard = Born();
        yard.Say("07:35", Some.Claim("standing") with { At = FactTime.Of(Some.Local("11:00")) });
        yard.RunTo("08:00");

        yard.Told(CareTaskName.Standing).Should().Contain("18 07:55 late act");
    }

    private static Farmyard Born()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"), Some.Fact(FactKind.CordDip), Some.Done(CareTaskName.LookOver), Some.Temperature(100.6));
        return yard;
    }
}
