namespace HerdBot.Tests.Rehearsals.CareRows;

/// <summary>The posting manners, through the whole program.</summary>
public static class PostingRows
{
    private const string Born = "06:40 Ana: Sage had a girl 6:40, 24 lb";

    public static IReadOnlyList<CareRow> All { get; } =
    [
        new("posting", "act: again 15, 30, 60 min after it was late, then hourly, eight posts", """
            08:00 Ana: Sage is up and down, rolling
            until 12:00
            """, """
            at 10:00 labour late act
            at 10:15 labour late act
            at 10:30 labour late act
            at 11:00 labour late act
            no labour 10:31-10:59
            no labour 11:01-11:59
            """),
        new("posting", "vet: every 10 min, seven posts, then every 30 min", """
            08:00 Ana: Sage is bleeding a lot
            until 10:31
            """, """
            at 08:10 dam_bleeding late vet
            at 09:00 dam_bleeding late vet
            no dam_bleeding 09:01-09:29
            at 09:30 dam_bleeding late vet
            no dam_bleeding 09:31-09:59
            at 10:00 dam_bleeding late vet
            """),
        new("posting", "on it silences blood 10 min", """
            08:00 Ana: Sage is bleeding a lot
            08:05 Ben tap 3 dam_bleeding
            until 08:16
            """, """
            no dam_bleeding 08:06-08:14
            at 08:15 dam_bleeding late vet
            """),
        new("posting", "not yet silences 10 min", $"""
            {Born}
            06:58 Ana: Sage's baby temp 100.6
            08:42 Ben tap 2 standing
            until 08:55
            """, """
            at 08:40 standing late vet
            no standing 08:43-08:51
            at 08:52 standing late vet
            """),
        new("posting", "called silences all vet of that animal for 60 min", $"""
            {Born}
            07:00 Ben: milk is in on Sage, all four teats
            08:41 Ana: called the vet about Sage's baby
            until 09:42
            """, """
            at 08:40 standing late vet
            no standing 08:42-09:40
            at 09:41 standing late vet
            """),
        new("posting", "what is unsure closes no task", $"""
            {Born}
            07:00 Ben: I think Sage's baby latched
            until 07:41
            """, """
            at 07:40 nursing asked fine
            """),
        new("posting", "quiet hours: fine and heed wait for 06:00, act and vet never", """
            23:00 Ana: Sage had a girl 22:55, 24 lb
            until 19 06:01
            """, """
            at 19 00:55 standing late vet
            at 23:40 temperature late act
            no weight 23:01-19 05:59
            at 19 06:00 weight asked fine
            """),
        new("posting", "after an outage what fell due comes at once, together, with one line about the gap", $"""
            {Born}
            07:00 down 09:00
            until 09:01
            """, """
            says 09:00 I was off since about 7:00
            at 09:00 standing late vet
            at 09:00 nursing late act
            """),
    ];
}
