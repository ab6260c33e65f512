using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Posting;

/// <summary>How often a task is posted when nobody answers, by its level.</summary>
public sealed class SeriesTests
{
    [Fact]
    public void Act_comes_again_after_15_30_and_60_minutes_then_hourly_eight_posts_in_all_and_then_in_the_round_ups()
    {
        var yard = AllWell(except: FactKind.Meconium);
        yard.RunTo("19 18:39");

        yard.Told(CareTaskName.Meconium).Should().Equal(
            "18 18:40 asked fine", "18 19:00 asked fine",
            "19 00:40 late act", "19 00:55 late act", "19 01:10 late act", "19 01:40 late act",
            "19 02:40 late act", "19 03:40 late act", "19 04:40 late act", "19 05:40 late act",
            "19 07:00 late act");
    }

    [Fact]
    public void Vet_comes_every_ten_minutes_seven_times_then_every_half_hour_and_after_six_hours_hourly()
    {
        var yard = AllWell(except: FactKind.Placenta);
        yard.RunTo("18 23:59");

        yard.Told(CareTaskName.Placenta, "Sage").Should().Equal(
            "18 08:40 asked fine", "18 09:40 late act", "18 09:55 late act", "18 10:10 late act", "18 10:40 late act", "18 11:40 late act",
            "18 12:40 late vet", "18 12:50 late vet", "18 13:00 late vet", "18 13:10 late vet", "18 13:20 late vet", "18 13:30 late vet", "18 13:40 late vet",
            "18 14:10 late vet", "18 14:40 late vet", "18 15:10 late vet", "18 15:40 late vet", "18 16:10 late vet", "18 16:40 late vet", "18 17:10 late vet",
            "18 17:40 late vet", "18 18:10 late vet", "18 18:40 late vet",
            "18 19:00 late vet", // the round-up
            "18 19:40 late vet", "18 20:40 late vet", "18 21:40 late vet", "18 22:40 late vet", "18 23:40 late vet");
    }

    [Fact]
    public void Heed_comes_once_when_late_and_then_in_the_round_ups()
    {
        var yard = AllWell(except: FactKind.Weight);
        yard.RunTo("19 05:00");

        yard.Told(CareTaskName.Weight).Should().Equal("18 07:40 asked fine", "18 18:40 late heed", "18 19:00 late heed");
    }

    [Fact]
    public void A_task_that_newly_comes_to_vet_is_posted_at_once_and_the_pairs_series_begins_anew()
    {
        var yard = AllWell(except: FactKind.Standing);
        yard.RunTo("10:45");
        var alarms = yard.Posts.Where(post => post.Kind == PostKind.Alarm).Select(post => yard.Clock(post.At)[3..]).ToList();

        // Standing at 08:40; nursing at 09:40, just after its seventh post; colostrum at 10:40.
        alarms.Should().Equal("08:40", "08:50", "09:00", "09:10", "09:20", "09:30", "09:40", "09:50", "10:00", "10:10", "10:20", "10:30", "10:40");
    }

    [Fact]
    public void One_series_tells_of_all_that_is_for_the_vet_in_a_pair_the_news_first()
    {
        var yard = AllWell(except: FactKind.Standing);
        yard.RunTo("09:45");

        var alarm = yard.Posts.Last(post => post.Kind == PostKind.Alarm);
        alarm.Tasks.Select(task => task.Key.Name).Should().StartWith([CareTaskName.Nursing, CareTaskName.Udder, CareTaskName.Standing]);
        alarm.Text.Should().StartWith("Vet now: Sage's baby not nursed, 3 h old.");
    }

    [Fact]
    public void Two_pairs_have_a_series_each()
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Sage"), Some.Dam("Fern"));
        yard.Say("06:40", Some.Birth("06:40"));
        yard.Say("06:43", Some.Birth("06:43", "Fern"));
        yard.RunTo("08:52");

        yard.Posts.Where(post => post.Kind == PostKind.Alarm).Select(post => $"{yard.Clock(post.At)[3..]} {post.Tasks[0].Animal}").Should().Equal(
            "08:40 Sage's baby", "08:43 Fern's baby", "08:50 Sage's baby");
    }

    [Fact]
    public void Looking_twice_at_the_same_minute_posts_nothing_more()
    {
        var yard = AllWell(except: FactKind.Standing);
        yard.RunTo("08:40");
        var posts = yard.Posts.Count;
        yard.RunTo("08:40");

        yard.Posts.Should().HaveCount(posts);
    }

    [Fact]
    public void An_open_hold_never_runs_out_of_posts()
    {
        var yard = new Farmyard();
        yard.Say("06:40", Some.Birth("06:40"));
        yard.Say("07:00", Some.Temperature(97.0));
        yard.RunTo("20 07:00");

        foreach (var day in new[] { "18", "19" })
        {
            foreach (var hour in Enumerable.Range(9, 15))
            {
                yard.Told(CareTaskName.Temperature).Should().Contain(line => line.StartsWith($"{day} {hour:00}") && line.EndsWith("vet"));
            }
        }
    }

    /// <summary>A newborn with which all went well but one thing.</summary>
    private static Farmyard AllWell(FactKind except)
    {
        var yard = new Farmyard();
        Fact[] facts =
        [
            Some.Birth("06:40"), Some.Done(CareTaskName.LookOver), Some.Fact(FactKind.CordDip), Some.Fact(FactKind.CordDry), Some.Temperature(100.4), Some.Done(CareTaskName.DamLook, "Sage"),
            Some.Fact(FactKind.Standing), Some.Weight(10.4), Some.Fact(FactKind.Meconium), Some.Fact(FactKind.Urine), Some.Fact(FactKind.Placenta, "Sage"),
        ];
        yard.Say("06:40", [.. facts.Where(fact => fact.Kind != except)]);
        if (except != FactKind.Standing)
        {
            yard.Say("07:10", Some.Fact(FactKind.Nursing));
            yard.Say("07:35", Some.Fact(FactKind.Nursing));
        }
        return yard;
    }
}
