using HerdBot.Core.Care;

namespace HerdBot.Core.Due;

/// <summary>The numbers behind a due window: part of the care table, with unit, range and source like all of it.</summary>
public static class DueKeys
{
    private static readonly List<CareKey> Known = [];

    /// <summary>The median length of a pregnancy; days, 320 to 370.</summary>
    public static CareKey Median { get; } = Key("due.median", CareUnit.Days, 320m, 370m);
    /// <summary>The scale of the published spread, season and all; days, 5 to 20.</summary>
    public static CareKey Scale { get; } = Key("due.scale", CareUnit.Days, 5m, 20m);
    /// <summary>How heavy the tails of the published spread are: degrees of freedom of a t, 5 to 200.</summary>
    public static CareKey Tails { get; } = Key("due.tails", CareUnit.Count, 5m, 200m);
    /// <summary>How far the season of the mating moves the median, up and down; days, 0 to 12.</summary>
    public static CareKey Season { get; } = Key("due.season", CareUnit.Days, 0m, 12m);
    /// <summary>In the north the day of the year whose matings last longest, 1 to 365.</summary>
    public static CareKey SeasonNorth { get; } = Key("due.season_north", CareUnit.DayOfYear, 1m, 365m);
    /// <summary>In the south the day of the year whose matings last longest, 1 to 365.</summary>
    public static CareKey SeasonSouth { get; } = Key("due.season_south", CareUnit.DayOfYear, 1m, 365m);
    /// <summary>How much of the published variance is the herd's; percent, 0 to 30.</summary>
    public static CareKey HerdShare { get; } = Key("due.herd_share", CareUnit.Percent, 0m, 30m);
    /// <summary>How much of the published variance is the dam's own; percent, 0 to 50.</summary>
    public static CareKey DamShare { get; } = Key("due.dam_share", CareUnit.Percent, 0m, 50m);
    /// <summary>So many dams with two births or more, before the farm's own variances are taken; a count, 5 to 1000.</summary>
    public static CareKey OwnDams { get; } = Key("due.own_dams", CareUnit.Count, 5m, 1000m);
    /// <summary>So many lengths on record, before the farm's own variances are taken; a count, 10 to 5000.</summary>
    public static CareKey OwnLengths { get; } = Key("due.own_lengths", CareUnit.Count, 10m, 5000m);
    /// <summary>The shortest pregnancy that is reckoned with; days, 200 to 320.</summary>
    public static CareKey Shortest { get; } = Key("due.shortest", CareUnit.Days, 200m, 320m);
    /// <summary>The longest pregnancy that is reckoned with; days, 380 to 460.</summary>
    public static CareKey Longest { get; } = Key("due.longest", CareUnit.Days, 380m, 460m);
    /// <summary>Of matings on one day so many take; percent, 20 to 100.</summary>
    public static CareKey Takes { get; } = Key("due.takes", CareUnit.Percent, 20m, 100m);
    /// <summary>Of those that did not take, so many more take with each further day in the pen; percent, 0 to 30.</summary>
    public static CareKey PenDay { get; } = Key("due.pen_day", CareUnit.Percent, 0m, 30m);
    /// <summary>Of pregnancies so many are lost on the way to the median; percent, 0 to 40.</summary>
    public static CareKey Lost { get; } = Key("due.lost", CareUnit.Percent, 0m, 40m);
    /// <summary>A dam long enough pregnant rejects the male so often; percent, 50 to 100.</summary>
    public static CareKey RejectsPregnant { get; } = Key("due.rejects_pregnant", CareUnit.Percent, 50m, 100m);
    /// <summary>A dam that carries nothing rejects the male so often; percent, 0 to 50.</summary>
    public static CareKey RejectsOpen { get; } = Key("due.rejects_open", CareUnit.Percent, 0m, 50m);
    /// <summary>From so long after the conception a dam counts as long enough pregnant to reject; days, 5 to 30.</summary>
    public static CareKey RejectsFrom { get; } = Key("due.rejects_from", CareUnit.Days, 5m, 30m);
    /// <summary>Before so many days a check cannot see a pregnancy; days, 7 to 40.</summary>
    public static CareKey CheckFrom { get; } = Key("due.check_from", CareUnit.Days, 7m, 40m);
    /// <summary>From so many days on a check sees it as well as it ever will; days, 14 to 90.</summary>
    public static CareKey CheckSure { get; } = Key("due.check_sure", CareUnit.Days, 14m, 90m);
    /// <summary>Of pregnancies old enough a check sees so many; percent, 80 to 100.</summary>
    public static CareKey CheckSees { get; } = Key("due.check_sees", CareUnit.Percent, 80m, 100m);
    /// <summary>Of dams that carry nothing a check calls so many pregnant; percent, 0 to 20.</summary>
    public static CareKey CheckFalse { get; } = Key("due.check_false", CareUnit.Percent, 0m, 20m);
    /// <summary>How far off a vet's due date is, as far as it says how old the pregnancy is; days, 1 to 30.</summary>
    public static CareKey VetDateSpread { get; } = Key("due.vet_date_spread", CareUnit.Days, 1m, 30m);
    /// <summary>A sign of labour makes a birth within the next day so many times as likely; 1 to 20.</summary>
    public static CareKey SignTimes { get; } = Key("due.sign_times", CareUnit.Count, 1m, 20m);
    /// <summary>However plain the signs, no more than this; percent, 50 to 95.</summary>
    public static CareKey SignMost { get; } = Key("due.sign_most", CareUnit.Percent, 50m, 95m);
    /// <summary>A dam that shows signs has at least this chance of a birth within the day, before the signs are reckoned in; percent, 0 to 20.</summary>
    public static CareKey SignLeast { get; } = Key("due.sign_least", CareUnit.Percent, 0m, 20m);
    /// <summary>From this chance of a birth within a day on she is looked in on more often; percent, 1 to 50.</summary>
    public static CareKey LookOften { get; } = Key("due.look_often", CareUnit.Percent, 1m, 50m);
    /// <summary>How often, between waking and dusk; hours, 1 to 8.</summary>
    public static CareKey LookEvery { get; } = Key("due.look_every", CareUnit.Hours, 1m, 8m);
    /// <summary>A birth before this day is early; days, 300 to 335.</summary>
    public static CareKey Early { get; } = Key("due.early", CareUnit.Days, 300m, 335m);
    /// <summary>A birth before this day may be; days, 310 to 350.</summary>
    public static CareKey EarlyWatch { get; } = Key("due.early_watch", CareUnit.Days, 310m, 350m);
    /// <summary>A mating so soon after a birth is asked back; days, 3 to 21.</summary>
    public static CareKey TooSoon { get; } = Key("due.too_soon", CareUnit.Days, 3m, 21m);

    /// <summary>All of them, in the order of the table.</summary>
    public static IReadOnlyList<CareKey> All => Known;

    private static CareKey Key(string name, CareUnit unit, decimal low, decimal high)
    {
        var key = new CareKey(name, unit, low, high);
        Known.Add(key);
        return key;
    }
}
