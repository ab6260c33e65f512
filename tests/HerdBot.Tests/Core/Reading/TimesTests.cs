using FluentAssertions;
using HerdBot.Core.Facts;
using HerdBot.Core.Reading;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Reading;

public sealed class TimesTests
{
    [Theory]
    [InlineData("nursing 9:10", "2027-05-10T09:10")]
    [InlineData("nursing at 0910", "2027-05-10T09:10")]
    [InlineData("0910 nursing", "2027-05-10T09:10")]
    [InlineData("nursing at 910", "2027-05-10T09:10")]
    [InlineData("nursing at 9.10", "2027-05-10T09:10")]
    [InlineData("nursing at 9", "2027-05-10T09:00")]
    [InlineData("nursing around 9", "2027-05-10T09:00")]
    [InlineData("nursing ~9ish", "2027-05-10T09:00")]
    [InlineData("nursing at 9 am", "2027-05-10T09:00")]
    [InlineData("nursing at 9 a.m.", "2027-05-10T09:00")]
    [InlineData("nursing abt 8 40", "2027-05-10T08:40")]
    [InlineData("nursing half eight", "2027-05-10T08:30")]
    [InlineData("nursing at half past eight", "2027-05-10T08:30")]
    [InlineData("nursing at quarter to nine", "2027-05-10T08:45")]
    [InlineData("nursing at ten past nine", "2027-05-10T09:10")]
    [InlineData("nursing 20 min ago", "2027-05-10T09:10")]
    [InlineData("nursing half an hour ago", "2027-05-10T09:00")]
    [InlineData("nursing an hour ago", "2027-05-10T08:30")]
    [InlineData("nursing 1 h 20 min ago", "2027-05-10T08:10")]
    [InlineData("nursing at 32 min", "2027-05-10T08:22")]
    [InlineData("nursing 40 min after birth", "2027-05-10T08:30")]
    [InlineData("nursing just now", null)]
    [InlineData("nursing this morning", null)]
    [InlineData("nursing before noon", null)]
    public void A_told_time_is_reckoned_against_the_clock(string text, string? at) => SomeReading.Time(text).Should().Be(at);

    [Theory]
    [InlineData("2027-05-11T00:30", "dipped the cord at 11pm", "2027-05-10T23:00")] // last night is near
    [InlineData("2027-05-10T15:30", "dipped the cord at 3", "2027-05-10T15:00")]
    [InlineData("2027-05-10T12:30", "dipped the cord at noon", "2027-05-10T12:00")]
    [InlineData("2027-05-11T00:40", "dipped the cord at midnight", "2027-05-11T00:00")]
    [InlineData("2027-05-11T09:00", "dipped the cord yesterday at 5pm", "2027-05-10T17:00")]
    [InlineData("2027-05-11T09:00", "dipped the cord at 10 last night", "2027-05-10T22:00")]
    [InlineData("2027-05-11T09:00", "dipped the cord yesterday", "2027-05-10")]
    public void A_bare_hour_is_the_latest_such_hour(string now, string text, string at) =>
        SomeReading.Time(text, SomeReading.Context(now)).Should().Be(at);

    [Theory]
    [InlineData(DateOrder.MonthFirst, "Barley bred Tansy 5/3", "2027-05-03")]
    [InlineData(DateOrder.DayFirst, "Barley bred Tansy 5/3", "2027-03-05")]
    [InlineData(DateOrder.MonthFirst, "Barley bred Tansy on May 3", "2027-05-03")]
    [InlineData(DateOrder.MonthFirst, "Barley bred Tansy on 3 May", "2027-05-03")]
    [InlineData(DateOrder.MonthFirst, "Barley bred Tansy on the 3rd", "2027-05-03")]
    [InlineData(DateOrder.MonthFirst, "Barley bred Tansy 12/20", "2026-12-20")] // the latest such day
    [InlineData(DateOrder.MonthFirst, "Barley bred Tansy 4/20 - 5/2", "2027-04-20")]
    [InlineData(DateOrder.MonthFirst, "Barley bred Tansy 2026-11-02", "2026-11-02")]
    public void A_day_is_read_in_the_farms_order(DateOrder order, string text, string at) =>
        SomeReading.Time(text, SomeReading.Context() with { Dates = order }).Should().Be(at);

    [Theory]
    [InlineData("Tansy had a girl at 6pm")] // it is half past nine in the morning
    [InlineData("Tansy had a girl at 18:00")]
    [InlineData("up at 7:30")] // before she was born
    public void A_time_that_cannot_be_is_asked_for(string text)
    {
        var reading = Reader.Read(text, SomeReading.Context());

        reading.Ask.Should().Be(Ask.Time);
        reading.Facts.Should().OnlyContain(fact => fact.At == null);
    }

    // The hour from 2 to 3 was skipped in Denver on 14 March 2027, and the hour from 1 to 2 came twice on 7 November
    // (IANA zone data, through NodaTime's resolver).
    [Theory]
    [InlineData("2027-03-14T03:20", "30 min ago")]
    [InlineData("2027-03-14T03:20", "2 hours ago")]
    [InlineData("2027-11-07T02:10", "30 min ago")]
    [InlineData("2027-11-07T02:10", "3 hours ago")]
    public void A_length_of_time_is_counted_in_real_minutes_across_clock_changes(string now, string ago)
    {
        var context = SomeReading.Context(now);
        var length = ago[0] == '3' && ago.Contains("min", StringComparison.Ordinal) ? Duration.FromMinutes(30) : Duration.FromHours(ago[0] - '0');

        var at = SomeReading.Only($"Tansy's water broke {ago}", context).At!.Value;

        (at.Date + at.Time!.Value).Should().Be((context.Now - length).LocalDateTime);
    }

    [Fact]
    public void An_age_is_counted_in_real_minutes_across_a_skipped_hour()
    {
        var context = SomeReading.Context("2027-03-14T03:40");
        var born = new LocalDateTime(2027, 3, 14, 1, 50);
        context = context with { Herd = context.Herd.SetItem(1, context.Herd[1] with { Born = FactTime.Of(born) }), Log = [] };

        SomeReading.Time("Kestrel's girl up at 32 min", context).Should().Be("2027-03-14T03:22");
    }
}
