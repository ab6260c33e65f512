namespace HerdBot.Tests.Rehearsals.CareRows;

/// <summary>The dam's rows, People, Early and Away.</summary>
public static class DamRows
{
    private const string Born = "06:40 Ana: Sage had a girl 6:40, 24 lb";

    /// <summary>Born, and nothing about the newborn is open in the first hours.</summary>
    private const string Well = """
        06:40 Ana: Sage had a girl 6:40, 24 lb
        06:41 Ben: Sage's baby temp 100.6, she is standing and nursing, cord dipped
        06:55 Ben: Sage's baby is nursing
        07:00 Ben: Sage's baby peed and passed meconium
        """;

    public static IReadOnlyList<CareRow> All { get; } =
    [
        new("labour", "asked at the first sign, late at 2 h, the vet at 4 h without birth", """
            08:00 Ana: Sage is up and down, rolling
            until 12:05
            """, """
            08:00 labour asked fine
            10:00 labour late act
            12:00 labour late vet
            """),
        new("labour", "a first sign at 14:59 is fine", """
            14:59 Ana: Sage is up and down, rolling
            until 15:10
            """, """
            14:59 labour asked fine
            """),
        new("labour", "a first sign at 15:00 is heed, with the word on the hour", """
            15:00 Ana: Sage is up and down, rolling
            until 15:10
            """, """
            15:00 labour asked heed
            says 15:00 Most births fall between dawn and early afternoon: look every 15 min, phone early
            """),
        new("labour", "udder and wax only put her on the list", """
            08:00 Ana: Sage is bagging up, wax on
            until 12:30
            """, """
            no labour
            no presentation
            """),
        new("presentation", "late at 10 min, the vet at 15 without progress", """
            08:00 Ana: Sage's water broke
            until 08:20
            """, """
            08:00 presentation asked act
            08:10 presentation late act
            08:15 presentation late vet
            says 08:10 further out than before
            says 08:15 Do not pull without the vet
            """),
        new("presentation", "with progress the vet at 30 min without birth", """
            08:00 Ana: Sage's water broke
            08:12 Ana: Sage nose and two feet showing
            08:20 Ana: Sage nose and two feet, further out
            until 08:35
            """, """
            at 08:00 presentation asked act
            no presentation 08:21-08:29
            at 08:30 presentation late vet
            """),
        new("presentation", "anything but nose and two forefeet at once", """
            08:00 Ana: Sage one foot and a nose
            until 08:01
            """, """
            08:00 presentation late vet
            says 08:00 one foot and a nose.*a backwards cria may show no straining
            """),
        new("presentation", "a red bag at once", """
            08:00 Ana: red bag on Sage
            until 08:01
            """, """
            08:00 presentation late vet
            """),
        new("presentation", "stuck at the chest at once", """
            08:00 Ana: Sage's water broke
            08:04 Ana: Sage cria is stuck at the chest
            until 08:05
            """, """
            08:00 presentation asked act
            08:04 presentation late vet
            """),
        new("presentation", "membranes and no cria at once", """
            08:00 Ana: Sage membranes hanging, no cria
            until 08:01
            """, """
            08:00 presentation late vet
            """),
        new("dam_bleeding", "the vet at once: still, nothing in", """
            08:00 Ana: Sage is bleeding a lot
            until 08:11
            """, """
            08:00 dam_bleeding late vet
            at 08:10 dam_bleeding late vet
            says 08:00 still and quiet; put nothing in
            """),
        new("prolapse", "the vet at once: a clean wet sheet, no pushing, no pulling", """
            08:00 Ana: red mass hanging out of Sage
            until 08:01
            """, """
            08:00 prolapse late vet
            says 08:00 clean wet sheet.*Do not push it back, do not pull
            """),
        new("dam_colic", "colic is for the vet at once", """
            08:00 Ana: Sage is colicky
            until 08:01
            """, """
            08:00 dam_colic late vet
            """),
        new("dam_colic", "rolling on day 212 is labour's sign", """
            00:10 Ana: Sage was bred to Flint on 9/18/2026
            08:00 Ana: Sage is rolling
            until 08:01
            """, """
            no dam_colic
            """) { Herd = """, {"name": "Flint", "role": "sire"}""" },
        new("dam_colic", "rolling on day 213 may be a twisted womb", """
            00:10 Ana: Sage was bred to Flint on 9/17/2026
            08:00 Ana: Sage is rolling
            until 08:01
            """, """
            08:00 dam_colic late vet
            says 08:00 twisted womb
            """) { Herd = """, {"name": "Flint", "role": "sire"}""" },
        new("dam_look", "asked at 1 h, late at 3 h", $"""
            {Born}
            until 09:45
            """, """
            07:40 dam_look asked fine
            09:40 dam_look late heed
            """),
        new("dam_look", "pale is for the vet at once", $"""
            {Born}
            07:00 Ben: Sage has pale gums
            until 07:01
            """, """
            07:00 dam_look late vet
            """),
        new("placenta", "asked at 2 h, late at 3 h, the vet at 6 h", $"""
            {Well}
            until 12:45
            """, """
            08:40 placenta asked fine
            09:40 placenta late act
            12:40 placenta late vet
            says 12:40 never pull
            """),
        new("placenta", "torn is act", $"""
            {Born}
            08:00 Ben: Sage's placenta out but torn
            until 08:20
            """, """
            08:00 placenta asked act
            says 08:00 a piece may be left inside
            """),
        new("udder", "asked at 60 min if not nursed, late at 120, the vet at 180", $"""
            {Born}
            until 09:45
            """, """
            07:40 udder asked fine
            08:40 udder late act
            09:40 udder late vet
            """),
        new("udder", "nursed before: not asked", $"""
            {Born}
            07:39 Ben: Sage's baby is nursing
            until 10:00
            """, """
            no udder
            """),
        new("udder", "no milk is act at once, the vet at 180 min", $"""
            {Born}
            07:00 Ben: Sage has no milk
            until 09:45
            """, """
            07:00 udder asked act
            09:40 udder late vet
            says 07:00 let-down drugs are the vet's alone
            """),
        new("rejection", "act when reported, the vet 3 h after", $"""
            {Born}
            07:00 Ben: Sage rejects the baby
            until 10:05
            """, """
            07:00 rejection asked act
            10:00 rejection late vet
            says 07:00 two people, a way out
            """),
        new("rejection", "nursing ends it", $"""
            {Born}
            07:00 Ben: Sage rejects the baby
            09:59 Ben: Sage's baby is nursing
            until 10:05
            """, """
            07:00 rejection asked act
            """),
        new("dam_check", "asked at 24 h, late at 36", $"""
            {Born}
            until 19 18:45
            """, """
            19 06:40 dam_check asked fine
            19 18:40 dam_check late heed
            """),
        new("dam_check", "foul discharge, fever, dull, off feed: the vet", $"""
            {Born}
            20 09:00 Ben: Sage has foul discharge
            until 20 09:05
            """, """
            at 20 09:00 dam_check late vet
            says 20 09:00 infection
            """),
        new("dam_check", "102.9 in the dam is no fever", $"""
            {Born}
            06:45 Ben: pulled Sage's baby, helped her
            19 06:10 Ben: Sage temp 102.9
            until 19 06:15
            """, """
            no dam_check
            """),
        new("dam_check", "103.0 in the dam is a fever", $"""
            {Born}
            06:45 Ben: pulled Sage's baby, helped her
            19 06:10 Ben: Sage temp 103.0
            until 19 06:15
            """, """
            19 06:10 dam_check late vet
            """),
        new("after an assisted birth", "act: phone the vet today; her temperature morning and evening for 3 days", """
            06:30 Ana: I had to pull Sage's cria
            06:40 Ana: Sage had a girl 6:40, 24 lb
            06:50 Ana: called the vet about Sage
            until 22 08:00
            """, """
            at 06:30 vet_today@Sage asked act
            no vet_today@Sage 07:00-22 08:00
            at 19:00 temperature@Sage asked fine
            at 19 06:00 temperature@Sage asked fine
            at 20 19:00 temperature@Sage asked fine
            at 21 06:00 temperature@Sage asked fine
            no temperature@Sage 21 19:00-22 08:00
            """),
        new("rebreed", "told once at 21 days", $"""
            {Born}
            08:00 Ben: Sage's placenta out, whole
            until 41 08:00
            """, """
            at 39 07:00 rebreed asked fine
            no rebreed 19 00:00-39 06:59
            no rebreed 40 07:01-41 08:00
            """) { Settings = "\"iggTest\": false" },
        new("rebreed", "held while an infection is on record", $"""
            {Born}
            08:00 Ben: Sage's placenta out, whole
            22 09:00 Ben: Sage has foul discharge
            until 40 08:00
            """, """
            no rebreed 39 06:59-39 18:59
            """) { Settings = "\"iggTest\": false" },
        new("People", "with a stillbirth, once", """
            08:00 Ana: Sage's baby was stillborn
            08:01 Ana: yes
            until 12:00
            """, """
            says 08:01 Pregnant people and weak immunity
            record death
            no standing
            no nursing
            at 10:01 placenta asked fine
            """),
        new("Early", "day 324 is act, phone within the hour", """
            00:10 Ana: Sage was bred to Flint on 5/29/2026
            06:40 Ana: Sage had a girl 6:40, 24 lb
            06:50 Ben: Sage's baby is standing
            until 07:45
            """, """
            06:40 vet_today asked act
            07:40 vet_today late act
            says 06:40 within the hour
            """) { Herd = """, {"name": "Flint", "role": "sire"}""" },
        new("Early", "not up at 60 min is for the vet", """
            00:10 Ana: Sage was bred to Flint on 5/29/2026
            06:40 Ana: Sage had a girl 6:40, 24 lb
            until 07:45
            """, """
            06:40 vet_today asked act
            07:40 vet_today late vet
            """) { Herd = """, {"name": "Flint", "role": "sire"}""" },
        new("Early", "day 325 is heed: look for signs", """
            00:10 Ana: Sage was bred to Flint on 5/28/2026
            06:40 Ana: Sage had a girl 6:40, 24 lb
            until 06:45
            """, """
            no vet_today
            06:40 look_over asked heed
            """) { Herd = """, {"name": "Flint", "role": "sire"}""" },
        new("Early", "day 334 is heed", """
            00:10 Ana: Sage was bred to Flint on 5/19/2026
            06:40 Ana: Sage had a girl 6:40, 24 lb
            until 06:45
            """, """
            06:40 look_over asked heed
            """) { Herd = """, {"name": "Flint", "role": "sire"}""" },
        new("Early", "day 335 is in time", """
            00:10 Ana: Sage was bred to Flint on 5/18/2026
            06:40 Ana: Sage had a girl 6:40, 24 lb
            until 06:45
            """, """
            06:40 look_over asked fine
            """) { Herd = """, {"name": "Flint", "role": "sire"}""" },
        new("Early", "one sign is not enough, two are", $"""
            {Born}
            06:50 Ben: Sage's baby has floppy ears
            07:05 Ben: Sage's baby is down on pasterns
            until 07:10
            """, """
            07:05 vet_today asked act
            """),
        new("Away", "the plan rests until 'back'", $"""
            {Born}
            07:00 Ana: Sage's baby is at the clinic
            11:00 Ana: Sage's baby is back
            until 11:05
            """, """
            says 07:00 quiet until you say 'back', 7:00 pm
            no standing 07:01-10:59
            no nursing 07:01-10:59
            at 11:00 standing late vet
            """),
        new("Away", "at most 12 h, then it asks", $"""
            {Born}
            07:00 Ana: Sage's baby is at the clinic
            until 19:05
            """, """
            no standing 07:01-18:59
            at 19:00 vet_today asked heed
            at 19:00 standing late vet
            """),
        new("Away", "a dead dam: bottle feeds from that hour", $"""
            {Born}
            08:00 Ana: Sage died
            08:01 Ana: yes
            until 13:05
            """, """
            at 08:01 feed asked fine
            at 09:01 feed late act
            no udder 08:02-13:05
            no placenta
            """),
        new("Away", "a grafted cria: bottle feeds from that hour", $"""
            {Born}
            09:00 Ana: grafted Sage's baby onto Willow
            09:30 Ana: bottle 6 oz for Sage's baby
            until 14:35
            """, """
            09:00 feed asked fine
            no feed 09:31-13:29
            at 13:30 feed asked fine
            14:30 feed late act
            """),
    ];
}
