namespace HerdBot.Tests.Rehearsals.CareRows;

/// <summary>Milk and weight, and the posting manners that every row goes by.</summary>
public static class MilkRows
{
    private const string Born = "00:30 Ana: Sage had a girl 0:30, 10 kg";

    public static IReadOnlyList<CareRow> All { get; } =
    [
        Fed("10 % on day 0 in 6 feeds: 10 kg, 1,000 ml, 167 a feed", """
            08:00 Ben: gave Sage's baby a 100 ml bottle
            until 12:05
            """, """
            says 08:00 100 ml of 1000 ml.*900 ml to go, about 167 ml a feed.*it may leave some
            at 12:00 feed asked fine
            no feed 08:01-11:59
            """),
        Fed("a point more every 3 days: 10 % on day 2, 11 % on day 3", """
            20 08:00 Ben: gave Sage's baby a 100 ml bottle
            21 08:00 Ben: gave Sage's baby a 100 ml bottle
            until 21 08:01
            """, """
            says 20 08:00 of 1000 ml
            says 21 08:00 of 1100 ml
            """),
        Fed("6 feeds to day 6, 5 from day 7", """
            24 08:00 Ben: gave Sage's baby a 100 ml bottle
            25 08:00 Ben: gave Sage's baby a 100 ml bottle
            until 25 08:01
            """, """
            says 24 08:00 of 1200 ml.*about 200 ml a feed
            says 25 08:00 of 1200 ml.*about 240 ml a feed
            """),
        Fed("4 from day 14, up to 15 % and no more; no feed over 37.5 ml/kg", """
            31 08:00 Ben: gave Sage's baby a 100 ml bottle
            32 08:00 Ben: gave Sage's baby a 100 ml bottle
            33 08:00 Ben: gave Sage's baby a 100 ml bottle
            36 08:00 Ben: gave Sage's baby a 375 ml bottle
            37 08:00 Ben: gave Sage's baby a 376 ml bottle
            until 37 08:01
            """, """
            says 31 08:00 of 1400 ml.*about 280 ml a feed
            says 32 08:00 of 1400 ml.*about 350 ml a feed
            says 33 08:00 of 1500 ml.*about 375 ml a feed
            says 37 08:00 375 ml at most, unless your vet says so
            mute 36 08:00 at most
            """),
        new("milk", "US fl oz: 16 lb on day 0, 24 fl oz", """
            00:30 Ana: Sage had a girl 0:30, 16 lb
            00:40 Ana: Sage's baby is a bottle baby
            19 00:45 Ben: bottle 4 oz for Sage's baby
            until 19 00:46
            """, """
            says 19 00:45 4 fl oz \(118 ml\) of 25 fl oz \(726 ml\)
            """),
        new("milk", "a tube is only recorded, with its caution", $"""
            {Born}
            19 08:00 Ben: tubed Sage's baby 100 ml
            until 19 08:01
            """, """
            record feed 100
            says 19 08:00 trained hands
            """) { Units = "metric" },
        Weighed("a first-day loss of 3 % is fine", "8 kg", "7.76", "says 19 06:05 common"),
        Weighed("a first-day loss over 3 % is act", "8 kg", "7.75", "at 19 06:05 weight late act"),
        Weighed("250 g is fine in a big one", "14 kg", "13.75", "says 19 06:05 common"),
        Weighed("over 250 g is act in a big one", "14 kg", "13.74", "at 19 06:05 weight late act"),
        new("gain", "no gain from day 2 on is act", $"""
            {Born}
            19 06:05 Ben: Sage's baby weighs 10.3 kg
            20 06:05 Ben: Sage's baby weighs 10.3 kg
            until 20 06:06
            """, """
            at 20 06:05 weight late act
            says 20 06:05 not gained
            """) { Units = "metric" },
        new("gain", "loss on two days in a row is for the vet", $"""
            {Born}
            19 06:05 Ben: Sage's baby weighs 10.3 kg
            20 06:05 Ben: Sage's baby weighs 10.2 kg
            21 06:05 Ben: Sage's baby weighs 10.15 kg
            until 21 06:06
            """, """
            at 20 06:05 weight late act
            at 21 06:05 weight late vet
            """) { Units = "metric" },
        new("gain", "llama under 125 g a day over 3 days is act", $"""
            {Born}
            19 06:05 Ben: Sage's baby weighs 10.124 kg
            20 06:05 Ben: Sage's baby weighs 10.248 kg
            21 06:05 Ben: Sage's baby weighs 10.372 kg
            until 21 06:06
            """, """
            at 21 06:05 weight late act
            says 21 06:05 124 g a day
            """) { Units = "metric" },
        new("gain", "llama 125 g a day is no alarm", $"""
            {Born}
            19 06:05 Ben: Sage's baby weighs 10.125 kg
            20 06:05 Ben: Sage's baby weighs 10.25 kg
            21 06:05 Ben: Sage's baby weighs 10.375 kg
            until 21 06:06
            """, """
            no weight 21 06:01-21 06:06
            says 21 06:05 125 g a day by the trend; 250 g to 500 g is usual
            """) { Units = "metric" },
        new("gain", "alpaca 49 g a day is act, 50 is not", """
            00:30 Ana: Sage had a girl 0:30, 8 kg
            19 06:05 Ben: Sage's baby weighs 8.05 kg
            20 06:05 Ben: Sage's baby weighs 8.1 kg
            21 06:05 Ben: Sage's baby weighs 8.15 kg
            22 06:05 Ben: Sage's baby weighs 8.19 kg
            23 06:05 Ben: Sage's baby weighs 8.23 kg
            until 23 06:06
            """, """
            no weight 21 06:01-21 06:10
            at 23 06:05 weight late act
            """) { Units = "metric", Species = "alpaca" },
        new("gain", "a weight outside the last ± 10 % and the band is asked back", $"""
            {Born}
            19 00:30 Ben: Sage's baby weighs 8.99 kg
            19 00:31 Ben: no
            19 00:32 Ben: Sage's baby weighs 11.52 kg
            until 19 00:33
            """, """
            says 19 00:30 but the last was
            says 19 00:32 but the last was
            """) { Units = "metric" },
        new("gain", "within the last ± 10 % and a day's top it is taken", $"""
            {Born}
            19 00:30 Ben: Sage's baby weighs 11.5 kg
            until 19 00:31
            """, """
            record weight 11.5
            """) { Units = "metric" },
        Born0("llama 7.0 kg is not small", "llama", "7 kg", "no weight"),
        Born0("llama 6.9 kg is small: act", "llama", "6.9 kg", "00:30 weight late act"),
        Born0("alpaca 6.0 kg is not small", "alpaca", "6 kg", "no weight"),
        Born0("alpaca 5.9 kg is small: act", "alpaca", "5.9 kg", "00:30 weight late act"),
        new("vet minutes", "the vet's drive is taken off every vet time", """
            06:40 Ana: Sage had a girl 6:40, 24 lb
            until 08:16
            """, """
            07:10 standing asked fine
            07:40 standing late act
            08:15 standing late vet
            """) { Settings = "\"vetMinutes\": 25" },
        new("your vet's number", "the post says whose number it is", """
            06:40 Ana: Sage had a girl 6:40, 24 lb
            until 08:45
            """, """
            07:10 standing asked fine
            07:30 standing late act
            08:40 standing late vet
            says 07:30 your vet's number
            mute 08:40 your vet's number
            """) { Settings = "\"numbersBy\": \"Dr. Moss\", \"numbers\": {\"standing.late\": 50}" },
        new("orders", "twice a day till Friday", """
            06:40 Ana: Sage had a girl 6:40, 24 lb
            25 09:00 Ana: vet says temp on Sage's baby twice a day till Friday
            until 32 08:00
            """, """
            says 25 09:00 temperature twice a day, until Apr 30
            at 25 19:00 temperature asked fine
            at 26 06:00 temperature asked fine
            at 30 19:00 temperature asked fine
            no temperature 31 19:00-32 08:00
            """) { Settings = "\"iggTest\": false" },
        new("body condition", "a bare score asks which scale", """
            08:00 Ana: Sage bcs 3
            08:01 Ana: 1 to 5
            until 08:02
            """, """
            says 08:00 which scale
            record note
            """),
        new("coats", "the straps' caution, and a look each morning", """
            06:40 Ana: Sage had a girl 6:40, 24 lb
            08:00 Ben: put the coat on Sage's baby
            19 20:00 Ben: took the coat off Sage's baby
            until 20 08:00
            """, """
            says 08:00 Straps: not tight, not twisted
            at 19 07:00 coat asked fine
            no coat 20 06:59-20 08:00
            """),
    ];

    private static CareRow Fed(string what, string script, string shows) => new("milk", what, $"""
        {Born}
        00:40 Ana: Sage's baby is a bottle baby
        {script}
        """, shows) { Units = "metric", Settings = "\"iggTest\": false" };

    private static CareRow Weighed(string what, string born, string next, string shows) => new("gain", what, $"""
        00:30 Ana: Sage had a girl 0:30, {born}
        19 06:05 Ben: Sage's baby weighs {next} kg
        until 19 06:06
        """, shows) { Units = "metric" };

    private static CareRow Born0(string what, string species, string weight, string shows) => new("birth weight", what, $"""
        00:30 Ana: Sage had a girl 0:30, {weight}
        until 00:31
        """, shows) { Units = "metric", Species = species };
}
