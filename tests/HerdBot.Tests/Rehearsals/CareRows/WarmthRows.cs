namespace HerdBot.Tests.Rehearsals.CareRows;

/// <summary>Warmth: each bound with the reading under it and on it; the hold; reading again.</summary>
public static class WarmthRows
{
    private const string Born = "06:40 Ana: Sage had a girl 6:40, 24 lb";

    public static IReadOnlyList<CareRow> All { get; } =
    [
        Reading("99.0 is fine", "99.0", "no warm"),
        Reading("98.9 is act and begins the hold", "98.9", """
            07:10 warm asked act
            says 07:10 no bottle, syringe or tube
            """),
        Reading("102.2 is fine", "102.2", "mute 07:10 shade"),
        Reading("102.3 is heed: shade, again in 30 min", "102.3", """
            says 07:10 shade
            at 07:40 temperature asked fine
            """),
        Reading("102.9 is heed", "102.9", "mute 07:10 Vet now"),
        Reading("103.0 is for the vet: no cold bath, again in 15 min", "103.0", """
            at 07:10 temperature asked vet
            says 07:10 Vet now.*no cold bath.*7:25
            """),
        Reading("95.0 is act", "95.0", "07:10 warm asked act"),
        Reading("94.9 is for the vet", "94.9", "07:10 warm asked vet"),
        Reading("90.0 is for the vet, not critical", "90.0", """
            07:10 warm asked vet
            mute 07:10 critical
            """),
        Reading("89.9 is critical: gently, never fast", "89.9", """
            07:10 warm asked vet
            says 07:10 critical.*gently, never fast
            """),
        new("warmth", "under 100.0 once more in 30 min", $"""
            {Born}
            07:10 Ben: Sage's baby temp 99.9
            until 07:45
            """, """
            at 07:40 temperature asked fine
            no temperature 07:11-07:39
            """),
        new("warmth", "100.0 is not read again before its time", $"""
            {Born}
            07:10 Ben: Sage's baby temp 100.0
            until 08:00
            """, """
            no temperature 07:11-08:00
            """),
        new("warmth", "98.2 in the first hour and getting up is heed, no hold", $"""
            {Born}
            07:39 Ben: Sage's baby is standing, temp 98.2
            until 07:54
            """, """
            no warm
            says 07:39 Dry, out of the wind
            at 07:54 temperature asked fine
            """),
        new("warmth", "98.1 is act although it is up", $"""
            {Born}
            07:39 Ben: Sage's baby is standing, temp 98.1
            until 07:41
            """, """
            07:39 warm asked act
            """),
        new("warmth", "98.2 after the first hour is act although it is up", $"""
            {Born}
            07:41 Ben: Sage's baby is standing, temp 98.2
            until 07:42
            """, """
            07:41 warm asked act
            """),
        new("warmth", "under 99.0 at 5 h and not fed is act", $"""
            {Born}
            11:40 Ben: Sage's baby temp 98.0
            until 11:41
            """, """
            11:40 warm asked act
            """),
        new("warmth", "under 99.0 over 5 h old and not fed: the vet, before strong heat", $"""
            {Born}
            11:41 Ben: Sage's baby temp 98.0
            until 11:42
            """, """
            11:41 warm asked vet
            says 11:41 phone before strong heat: ask about sugar first
            """),
        new("warmth", "under 99.0 at 24 h is act", $"""
            {Born}
            08:00 Ben: Sage's baby is nursing
            19 06:40 Ben: Sage's baby temp 98.0
            until 19 06:41
            """, """
            19 06:40 warm asked act
            """),
        new("warmth", "under 99.0 after day 1 is for the vet", $"""
            {Born}
            08:00 Ben: Sage's baby is nursing
            19 06:41 Ben: Sage's baby temp 98.0
            until 19 06:42
            """, """
            19 06:41 warm asked vet
            says 19 06:41 sick crias run cold
            """),
        new("warmth", "102.3 to 102.9 and dull is for the vet", $"""
            {Born}
            07:00 Ben: Sage's baby is dull
            07:10 Ben: Sage's baby temp 102.5
            until 07:11
            """, """
            at 07:10 temperature late vet
            """),
        new("warmth", "after 4 h under 100.0 twice running is heed", $"""
            {Born}
            07:00 Ben: Sage's baby temp 100.6, nursing
            11:00 Ben: Sage's baby temp 99.8
            11:30 Ben: Sage's baby temp 99.8
            until 11:31
            """, """
            says 11:30 look at nursing and weight
            mute 11:00 look at nursing
            """),
        new("warmth", "a re-read is late after 10 min and for the vet after 30", $"""
            {Born}
            07:10 Ben: Sage's baby temp 98.0
            until 08:00
            """, """
            at 07:25 temperature asked fine
            at 07:35 temperature late act
            no temperature 07:26-07:34
            at 07:55 temperature late vet
            """),
        new("warmth", "the hold stops prompts to feed and ends with two readings of 99.0, 10 min apart", $"""
            {Born}
            07:10 Ben: Sage's baby temp 98.0
            07:25 Ben: Sage's baby temp 99.0
            07:34 Ben: Sage's baby temp 99.1
            07:35 Ben: Sage's baby temp 99.1
            until 11:40
            """, """
            says 07:25 feeding waits for one more good reading
            mute 07:34 feeding may go on
            says 07:35 feeding may go on.*No strong heat over 99.5
            at 08:05 temperature asked fine
            at 08:35 temperature asked fine
            at 09:35 temperature asked fine
            at 11:35 temperature asked fine
            at 07:40 nursing asked fine
            """),
        new("warmth", "held tasks keep their clocks: at the vet's time they are posted held", $"""
            {Born}
            09:30 Ben: Sage's baby temp 98.0
            until 09:41
            """, """
            at 09:40 nursing held vet
            """),
        new("warmth", "a feed during the hold is recorded with the caution, nursing is left alone", $"""
            {Born}
            07:10 Ben: Sage's baby temp 98.0
            07:15 Ben: gave Sage's baby 100 ml colostrum by bottle
            07:20 Ben: Sage's baby is nursing
            until 07:21
            """, """
            record colostrum 100
            says 07:15 no more by bottle, syringe or tube until it is warm
            says 07:20 Good, leave it with its mother
            """),
        new("warmth", "a rise under 1 °F in 30 min is for the vet, but no word under 95", $"""
            {Born}
            07:10 Ben: Sage's baby temp 96.0
            07:25 Ben: Sage's baby temp 96.5
            07:40 Ben: Sage's baby temp 96.9
            until 07:41
            """, """
            at 07:40 warm late vet
            says 07:40 stay gentle, phone
            """),
        new("warmth", "1 °F in 30 min is quick enough", $"""
            {Born}
            07:10 Ben: Sage's baby temp 96.0
            07:25 Ben: Sage's baby temp 96.5
            07:40 Ben: Sage's baby temp 97.0
            until 07:41
            """, """
            07:10 warm asked act
            says 07:40 Rising 2.0 °F an hour; 99.0 °F at about 8:40
            """),
        new("warmth", "under 99.0 after 60 min is for the vet", $"""
            {Born}
            07:10 Ben: Sage's baby temp 96.0
            07:30 Ben: Sage's baby temp 97.0
            07:50 Ben: Sage's baby temp 98.0
            until 08:11
            """, """
            07:10 warm asked act
            08:10 warm late vet
            """),
        new("warmth", "79.9 °F is asked, not recorded", $"""
            {Born}
            07:10 Ben: Sage's baby temp 79.9F
            until 07:11
            """, """
            says 07:10 what is the figure
            no warm
            """),
        new("warmth", "80.0 °F is recorded and critical", $"""
            {Born}
            07:10 Ben: Sage's baby temp 80.0F
            until 07:11
            """, """
            record temperature 80
            07:10 warm asked vet
            """),
        new("warmth", "110.0 °F is recorded, 110.1 is asked", $"""
            {Born}
            07:10 Ben: Sage's baby temp 110.1F
            07:11 Ben: Sage's baby temp 110.0F
            until 07:12
            """, """
            says 07:10 what is the figure
            record temperature 110
            """),
        new("warmth", "'Lo' is critical", $"""
            {Born}
            07:10 Ben: Sage's baby temp just reads Lo
            until 07:11
            """, """
            07:10 warm asked vet
            """),
        new("warmth", "a thermometer that will not register is critical", $"""
            {Born}
            07:10 Ben: Sage's baby temp wont register
            until 07:11
            """, """
            07:10 warm asked vet
            says 07:10 critical
            """),
        new("warmth", "°C is turned into °F and rounded first: 37.2 is 99.0, 37.1 is 98.8", $"""
            {Born}
            07:10 Ben: Sage's baby temp 37.2
            07:50 Ben: Sage's baby temp 37.1
            until 07:51
            """, """
            07:50 warm asked act
            """) { Units = "metric" },
    ];

    private static CareRow Reading(string what, string value, string shows) => new("warmth", what, $"""
        {Born}
        07:10 Ben: Sage's baby temp {value}
        until 07:40
        """, shows);
}
