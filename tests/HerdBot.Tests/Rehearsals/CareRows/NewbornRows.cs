namespace HerdBot.Tests.Rehearsals.CareRows;

/// <summary>The newborn's rows: times from the birth, each with the minute before it and the minute itself.</summary>
public static class NewbornRows
{
    private const string Born = "06:40 Ana: Sage had a girl 6:40, 24 lb";

    public static IReadOnlyList<CareRow> All { get; } =
    [
        new("look_over", "asked at once, late at 30 min, lapsed at 24 h", $"""
            {Born}
            until 19 08:00
            """, """
            06:40 look_over asked fine
            07:10 look_over late heed
            no look_over 19 06:41-19 08:00
            """),
        new("look_over", "looked over before it is late", $"""
            {Born}
            07:09 Ben: looked her over, all fine
            until 12:00
            """, """
            06:40 look_over asked fine
            """),
        new("look_over", "mouth breathing is for the vet at once, never bottle or tube", $"""
            {Born}
            06:50 Ben: Sage's baby is mouth breathing
            until 07:20
            """, """
            at 06:50 look_over late vet
            says 06:50 never bottle or tube.*555 0134
            at 07:00 look_over late vet
            """),
        new("look_over", "cleft palate, no anus, milk from the nose: the vet at once", $"""
            {Born}
            06:50 Ben: no anus on Sage's baby
            until 06:55
            """, """
            at 06:50 look_over late vet
            """),
        new("look_over", "another defect is act", $"""
            {Born}
            06:50 Ben: Sage's baby has a crooked leg
            until 07:10
            """, """
            at 06:50 look_over asked act
            no weak
            says 06:50 vet today
            """),
        new("weak", "limp is for the vet at once; up ends it", $"""
            {Born}
            06:50 Ben: Sage's baby is limp
            07:20 Ben: Sage's baby is up
            until 09:00
            """, """
            06:50 weak late vet
            says 06:50 Nothing by mouth unless it holds its head up and swallows; no sugar, bottle or tube without the vet
            no weak 07:21-09:00
            """),
        new("weak", "the head not up, alone and before 15 min, is act", $"""
            {Born}
            06:54 Ben: Sage's baby head not up
            until 06:56
            """, """
            06:54 weak late act
            """),
        new("weak", "the head not up at 15 min is for the vet", $"""
            {Born}
            06:55 Ben: Sage's baby head not up
            until 06:56
            """, """
            06:55 weak late vet
            """),
        new("cord_dip", "asked at once, late at 30 min; then 5 h after the last, late 60 min after", $"""
            {Born}
            07:15 Ben: dipped the cord
            until 14:00
            """, """
            06:40 cord_dip asked fine
            07:10 cord_dip late heed
            at 12:15 cord_dip asked fine
            no cord_dip 07:16-12:14
            at 13:15 cord_dip late heed
            no cord_dip 12:21-13:14
            says 12:15 dip
            says 07:10 dip the cord \(late\)
            """),
        new("cord_dip", "says what to dip it in", $"""
            {Born}
            06:41 Ben: looked her over
            07:00 Ben: Sage's baby temp 100.6
            07:05 Ben: Sage's baby is standing
            until 07:11
            """, """
            says 07:10 not dipped yet
            """),
        new("cord_dip", "three a farm day, in waking hours", $"""
            {Born}
            06:45 Ben: dipped the cord
            11:45 Ben: dipped the cord
            16:45 Ben: dipped the cord
            until 19 06:30
            """, """
            no cord_dip 16:46-19 05:59
            at 19 06:00 cord_dip asked fine
            """),
        new("cord_dip", "until the cord is dry", $"""
            {Born}
            06:45 Ben: dipped the cord
            11:00 Ben: Sage's baby's cord is dry
            until 15:00
            """, """
            no cord_dip 11:00-15:00
            """),
        new("cord_dip", "until 72 h", $"""
            {Born}
            06:45 Ben: dipped the cord
            20 18:00 Ben: dipped the cord
            until 21 12:00
            """, """
            at 21 06:00 cord_dip asked fine
            no cord_dip 21 06:40-21 12:00
            """),
        new("cord_watch", "act at once, late at 5 min, the vet at 10; then looks at 15, 30, 60 and 120 min", $"""
            {Born}
            07:00 Ben: cord is bleeding
            07:12 Ben: cord stopped bleeding
            until 10:00
            """, """
            07:00 cord_watch asked act
            07:05 cord_watch late act
            07:10 cord_watch late vet
            07:27 cord_watch asked fine
            07:57 cord_watch late heed
            at 07:42 cord_watch asked fine
            at 08:12 cord_watch asked fine
            at 09:12 cord_watch asked fine
            says 07:00 pinch it 5 min, tie or clamp 2-3 cm from the belly, disinfect
            """),
        new("cord_watch", "a stream is for the vet at once", $"""
            {Born}
            07:00 Ben: Sage's baby cord is bleeding in a stream
            until 07:01
            """, """
            07:00 cord_watch late vet
            """),
        new("cord_watch", "three times a day for a day after it stopped", $"""
            {Born}
            07:00 Ben: cord is bleeding
            07:02 Ben: cord stopped bleeding
            09:05 Ben: cord is not bleeding
            until 19 08:00
            """, """
            at 15:02 cord_watch asked fine
            at 23:02 cord_watch asked fine
            at 19 07:02 cord_watch asked fine
            """) { Settings = "\"quietHours\": [\"03:00\", \"03:01\"]" },
        new("temperature", "asked at 15 min, late at 45, the vet at 120", $"""
            {Born}
            until 08:45
            """, """
            06:55 temperature asked fine
            07:25 temperature late act
            08:40 temperature late vet
            """),
        new("temperature", "then at 4, 12 and 24 h and each morning to day 3, late after 30 min", $"""
            {Born}
            06:58 Ben: Sage's baby temp 100.6
            10:45 Ben: Sage's baby temp 100.8
            18:45 Ben: Sage's baby temp 100.8
            19 06:45 Ben: Sage's baby temp 100.8
            20 06:05 Ben: Sage's baby temp 100.8
            until 22 10:00
            """, """
            at 10:40 temperature asked fine
            no temperature 06:59-10:39
            at 18:40 temperature asked fine
            at 19 06:40 temperature asked fine
            at 20 06:00 temperature asked fine
            at 21 06:00 temperature asked fine
            at 21 06:30 temperature late heed
            no temperature 22 06:00-22 10:00
            """),
        new("temperature", "at risk to day 7", """
            06:40 Ana: Sage had a girl 6:40, 14 lb
            06:58 Ben: Sage's baby temp 100.6
            until 26 10:00
            """, """
            at 25 06:00 temperature asked fine
            no temperature 26 06:00-26 10:00
            """),
        new("standing", "asked at 30 min, late at 60, the vet at 120", $"""
            {Born}
            until 08:45
            """, """
            07:10 standing asked fine
            07:40 standing late act
            08:40 standing late vet
            """),
        new("standing", "nursing says that it stands", $"""
            {Born}
            07:20 Ben: Sage's baby is nursing
            until 08:45
            """, """
            07:10 standing asked fine
            """),
        new("nursing", "asked at 60 min, late at 120, the vet at 180", $"""
            {Born}
            06:58 Ben: Sage's baby temp 100.6
            until 09:45
            """, """
            07:40 nursing asked fine
            08:40 nursing late act
            09:40 nursing late vet
            """),
        new("nursing", "a second one is asked for at 6 h, late at 9", $"""
            {Born}
            07:20 Ben: Sage's baby is nursing
            until 15:45
            """, """
            12:40 nursing asked fine
            15:40 nursing late heed
            """),
        new("colostrum", "asked at 120 min, late at 180, the vet at 240 where nothing was taken", $"""
            {Born}
            06:58 Ben: Sage's baby temp 100.6
            until 10:45
            """, """
            08:40 colostrum asked fine
            09:40 colostrum late act
            10:40 colostrum late vet
            """),
        new("colostrum", "at risk asked at 60 min, late at 120, the vet at 180", """
            06:40 Ana: Sage had a girl 6:40, 14 lb
            06:58 Ben: Sage's baby temp 100.6
            until 09:45
            """, """
            07:40 colostrum asked fine
            08:40 colostrum late act
            09:40 colostrum late vet
            """),
        new("colostrum", "short of half at 6 h and of all at 12 and 18 h is for the vet; lapses at 24 h", """
            06:40 Ana: Sage had a girl 6:40, 22 lb
            06:58 Ben: Sage's baby temp 100.6
            08:45 Ben: gave Sage's baby 200 ml colostrum by bottle
            18:00 Ana: Ben called the vet for Sage's baby
            until 19 06:45
            """, """
            08:40 colostrum asked fine
            09:40 colostrum late act
            12:40 colostrum late vet
            19 06:40 colostrum lapsed vet
            says 18:00 quiet until
            says 19 06:40 IgG test
            """),
        new("colostrum", "half by 6 h and all by 12 h keep the vet out of it", """
            06:40 Ana: Sage had a girl 6:40, 22 lb
            06:58 Ben: Sage's baby temp 100.6
            08:45 Ben: gave Sage's baby 500 ml colostrum by bottle
            13:45 Ben: gave Sage's baby 500 ml colostrum by bottle
            until 19 06:45
            """, """
            08:40 colostrum asked fine
            09:40 colostrum late act
            """),
        new("colostrum", "without a weight the lower end of the band stands in, and is said to be assumed: 9 kg, 900 ml", """
            06:40 Ana: Sage had a girl 6:40
            06:58 Ben: Sage's baby temp 100.6, standing
            07:30 Ben: placenta out, whole
            until 08:45
            """, """
            says 08:40 colostrum, 15 fl oz \(450 ml\) by 12:40 pm \(weight assumed\)
            """),
        new("meconium", "asked at 12 h, late at 18, the vet at 36", $"""
            {Born}
            until 19 18:45
            """, """
            18:40 meconium asked fine
            19 00:40 meconium late act
            19 18:40 meconium late vet
            says 19 00:40 .
            """) { Settings = "\"quietHours\": [\"03:00\", \"03:01\"]" },
        new("meconium", "straining is for the vet at once, passed ends it", $"""
            {Born}
            12:00 Ben: Sage's baby is straining to poop
            12:20 Ben: Sage's baby passed meconium
            until 13:30
            """, """
            12:00 meconium late vet
            says 12:00 No enema
            no meconium 12:21-13:30
            """),
        new("urine", "asked at 12 h, late at 18, the vet at 24", $"""
            {Born}
            until 19 06:45
            """, """
            18:40 urine asked fine
            19 00:40 urine late act
            19 06:40 urine late vet
            """),
        new("weight", "asked at 1 h, late at 12", """
            06:40 Ana: Sage had a girl 6:40
            until 18:45
            """, """
            07:40 weight asked fine
            18:40 weight late heed
            """),
        new("weight", "each morning for 14 days, weekly to 8 weeks, monthly to weaning", $"""
            {Born}
            until 190 07:00
            """, """
            at 19 06:00 weight asked fine
            at 32 06:00 weight asked fine
            no weight 33 05:59-39 05:59
            at 39 06:00 weight asked fine
            at 46 06:00 weight asked fine
            at 74 06:00 weight asked fine
            no weight 77 05:00-109 05:59
            at 109 06:00 weight asked fine
            at 140 06:00 weight asked fine
            """) { Settings = "\"roundUps\": [], \"iggTest\": false" },
        new("igg", "asked at 24 h, late at 36; untested at 72 h the vet is asked, then it lapses", $"""
            {Born}
            until 21 19:30
            """, """
            19 06:40 igg asked fine
            19 18:40 igg late heed
            21 06:40 igg late act
            says 21 06:40 Ask the vet
            no igg 21 06:46-21 19:30
            """),
        new("igg", "at risk late is act", """
            06:40 Ana: Sage had a girl 6:40, 14 lb
            until 19 18:45
            """, """
            19 06:40 igg asked fine
            19 18:40 igg late act
            """),
        new("igg", "999 mg/dL is for the vet", $"""
            {Born}
            19 07:00 Ben: Sage's baby igg 999
            until 19 07:05
            """, """
            record igg 999
            at 19 07:00 igg late vet
            says 19 07:00 plasma today
            """),
        new("igg", "1,000 mg/dL is enough", $"""
            {Born}
            19 07:00 Ben: Sage's baby igg 1000
            until 20 07:05
            """, """
            record igg 1000
            19 06:40 igg asked fine
            """),
        new("igg", "not testing ends it", $"""
            {Born}
            19 07:00 Ben: not testing igg on Sage's baby
            until 22 07:05
            """, """
            19 06:40 igg asked fine
            """),
        new("day_look", "each morning to day 7, in the round-up", $"""
            {Born}
            until 26 08:00
            """, """
            19 07:00 day_look asked fine
            at 25 07:00 day_look asked fine
            no day_look 26 07:00-26 08:00
            """),
        new("day_look", "scours, a swollen joint, a smelly navel, stopped nursing: the vet at once", $"""
            {Born}
            20 09:00 Ben: Sage's baby has scours
            until 20 09:30
            """, """
            at 20 09:00 day_look late vet
            says 20 09:00 sick crias seldom have a fever
            at 20 09:10 day_look late vet
            """),
        new("day_look", "a wet navel counts from 24 h", $"""
            {Born}
            19 06:39 Ben: Sage's baby's navel is wet
            until 19 06:45
            """, """
            no day_look
            """),
        new("day_look", "a wet navel at 24 h is for the vet", $"""
            {Born}
            19 06:40 Ben: Sage's baby's navel is wet
            until 19 06:45
            """, """
            19 06:40 day_look late vet
            """),
        new("vaccination", "the vet's dates are asked for once", $"""
            {Born}
            until 24 08:00
            """, """
            21 07:00 vaccination asked fine
            says 21 07:00 vaccination
            no vaccination 22 07:01-24 08:00
            """),
        new("weaning", "asked for once at 6 months", """
            00:10 Ana: Sage had a girl 0:05, 24 lb
            until 202 08:00
            """, """
            at 201 07:00 weaning asked fine
            no weaning 19 00:00-201 06:59
            no weaning 202 07:01-202 08:00
            """) { Settings = "\"iggTest\": false" },
    ];
}
