using HerdBot.Core.Due;

namespace HerdBot.Core.Care;

/// <summary>Every number of the care table: its key in the file, its unit and the range it may have.</summary>
public static class CareKeys
{
    private static readonly List<CareKey> Known = [];

    /// <summary>Look over: late; minutes, 5 to 240.</summary>
    public static CareKey LookOverLate { get; } = Key("look_over.late", CareUnit.Minutes, 5m, 240m);
    /// <summary>Look over: lapses; hours, 6 to 72.</summary>
    public static CareKey LookOverLapses { get; } = Key("look_over.lapses", CareUnit.Hours, 6m, 72m);
    /// <summary>Weak: a head that is not up before this is no more than act; minutes, 5 to 60.</summary>
    public static CareKey WeakHeadUp { get; } = Key("weak.head_up", CareUnit.Minutes, 5m, 60m);
    /// <summary>Cord dip: late; minutes, 5 to 240.</summary>
    public static CareKey CordDipLate { get; } = Key("cord_dip.late", CareUnit.Minutes, 5m, 240m);
    /// <summary>Cord dip: again; hours, 2 to 12.</summary>
    public static CareKey CordDipAgain { get; } = Key("cord_dip.again", CareUnit.Hours, 2m, 12m);
    /// <summary>Cord dip: again late; minutes, 10 to 360.</summary>
    public static CareKey CordDipAgainLate { get; } = Key("cord_dip.again_late", CareUnit.Minutes, 10m, 360m);
    /// <summary>Cord dip: a day; a count, 1 to 6.</summary>
    public static CareKey CordDipADay { get; } = Key("cord_dip.a_day", CareUnit.Count, 1m, 6m);
    /// <summary>Cord dip: until; hours, 24 to 168.</summary>
    public static CareKey CordDipUntil { get; } = Key("cord_dip.until", CareUnit.Hours, 24m, 168m);
    /// <summary>Cord watch: late; minutes, 2 to 30.</summary>
    public static CareKey CordWatchLate { get; } = Key("cord_watch.late", CareUnit.Minutes, 2m, 30m);
    /// <summary>Cord watch: vet; minutes, 3 to 60.</summary>
    public static CareKey CordWatchVet { get; } = Key("cord_watch.vet", CareUnit.Minutes, 3m, 60m);
    /// <summary>Cord watch: look1; minutes, 5 to 60.</summary>
    public static CareKey CordWatchLook1 { get; } = Key("cord_watch.look1", CareUnit.Minutes, 5m, 60m);
    /// <summary>Cord watch: look2; minutes, 10 to 120.</summary>
    public static CareKey CordWatchLook2 { get; } = Key("cord_watch.look2", CareUnit.Minutes, 10m, 120m);
    /// <summary>Cord watch: look3; minutes, 20 to 240.</summary>
    public static CareKey CordWatchLook3 { get; } = Key("cord_watch.look3", CareUnit.Minutes, 20m, 240m);
    /// <summary>Cord watch: look4; minutes, 30 to 480.</summary>
    public static CareKey CordWatchLook4 { get; } = Key("cord_watch.look4", CareUnit.Minutes, 30m, 480m);
    /// <summary>Cord watch: day look; hours, 4 to 12.</summary>
    public static CareKey CordWatchDayLook { get; } = Key("cord_watch.day_look", CareUnit.Hours, 4m, 12m);
    /// <summary>Cord watch: day; hours, 12 to 72.</summary>
    public static CareKey CordWatchDay { get; } = Key("cord_watch.day", CareUnit.Hours, 12m, 72m);
    /// <summary>Cord watch: look late; minutes, 5 to 120.</summary>
    public static CareKey CordWatchLookLate { get; } = Key("cord_watch.look_late", CareUnit.Minutes, 5m, 120m);
    /// <summary>Temperature: asked; minutes, 5 to 120.</summary>
    public static CareKey TemperatureAsked { get; } = Key("temperature.asked", CareUnit.Minutes, 5m, 120m);
    /// <summary>Temperature: late; minutes, 10 to 240.</summary>
    public static CareKey TemperatureLate { get; } = Key("temperature.late", CareUnit.Minutes, 10m, 240m);
    /// <summary>Temperature: vet; minutes, 30 to 480.</summary>
    public static CareKey TemperatureVet { get; } = Key("temperature.vet", CareUnit.Minutes, 30m, 480m);
    /// <summary>Temperature: second; hours, 1 to 12.</summary>
    public static CareKey TemperatureSecond { get; } = Key("temperature.second", CareUnit.Hours, 1m, 12m);
    /// <summary>Temperature: third; hours, 6 to 24.</summary>
    public static CareKey TemperatureThird { get; } = Key("temperature.third", CareUnit.Hours, 6m, 24m);
    /// <summary>Temperature: fourth; hours, 12 to 48.</summary>
    public static CareKey TemperatureFourth { get; } = Key("temperature.fourth", CareUnit.Hours, 12m, 48m);
    /// <summary>Temperature: again late; minutes, 10 to 240.</summary>
    public static CareKey TemperatureAgainLate { get; } = Key("temperature.again_late", CareUnit.Minutes, 10m, 240m);
    /// <summary>Temperature: days; a count, 1 to 14.</summary>
    public static CareKey TemperatureDays { get; } = Key("temperature.days", CareUnit.Count, 1m, 14m);
    /// <summary>Temperature: days at risk; a count, 1 to 21.</summary>
    public static CareKey TemperatureDaysAtRisk { get; } = Key("temperature.days_at_risk", CareUnit.Count, 1m, 21m);
    /// <summary>Temperature: before; minutes, 0 to 120.</summary>
    public static CareKey TemperatureBefore { get; } = Key("temperature.before", CareUnit.Minutes, 0m, 120m);
    /// <summary>Warmth: normal low; °F, 97 to 101.</summary>
    public static CareKey WarmthNormalLow { get; } = Key("warmth.normal_low", CareUnit.Fahrenheit, 97m, 101m);
    /// <summary>Warmth: watch low; °F, 98 to 101.5.</summary>
    public static CareKey WarmthWatchLow { get; } = Key("warmth.watch_low", CareUnit.Fahrenheit, 98m, 101.5m);
    /// <summary>Warmth: soft low; °F, 96 to 99.</summary>
    public static CareKey WarmthSoftLow { get; } = Key("warmth.soft_low", CareUnit.Fahrenheit, 96m, 99m);
    /// <summary>Warmth: soft until; minutes, 0 to 120.</summary>
    public static CareKey WarmthSoftUntil { get; } = Key("warmth.soft_until", CareUnit.Minutes, 0m, 120m);
    /// <summary>Warmth: emergency low; °F, 92 to 97.</summary>
    public static CareKey WarmthEmergencyLow { get; } = Key("warmth.emergency_low", CareUnit.Fahrenheit, 92m, 97m);
    /// <summary>Warmth: critical low; °F, 85 to 93.</summary>
    public static CareKey WarmthCriticalLow { get; } = Key("warmth.critical_low", CareUnit.Fahrenheit, 85m, 93m);
    /// <summary>Warmth: high; °F, 101.5 to 103.</summary>
    public static CareKey WarmthHigh { get; } = Key("warmth.high", CareUnit.Fahrenheit, 101.5m, 103m);
    /// <summary>Warmth: vet high; °F, 102.5 to 105.</summary>
    public static CareKey WarmthVetHigh { get; } = Key("warmth.vet_high", CareUnit.Fahrenheit, 102.5m, 105m);
    /// <summary>Warmth: read again; minutes, 5 to 60.</summary>
    public static CareKey WarmthReadAgain { get; } = Key("warmth.read_again", CareUnit.Minutes, 5m, 60m);
    /// <summary>Warmth: watch again; minutes, 10 to 120.</summary>
    public static CareKey WarmthWatchAgain { get; } = Key("warmth.watch_again", CareUnit.Minutes, 10m, 120m);
    /// <summary>Warmth: high again; minutes, 5 to 120.</summary>
    public static CareKey WarmthHighAgain { get; } = Key("warmth.high_again", CareUnit.Minutes, 5m, 120m);
    /// <summary>Warmth: vet high again; minutes, 5 to 60.</summary>
    public static CareKey WarmthVetHighAgain { get; } = Key("warmth.vet_high_again", CareUnit.Minutes, 5m, 60m);
    /// <summary>Warmth: read late; minutes, 2 to 60.</summary>
    public static CareKey WarmthReadLate { get; } = Key("warmth.read_late", CareUnit.Minutes, 2m, 60m);
    /// <summary>Warmth: read vet; minutes, 10 to 120.</summary>
    public static CareKey WarmthReadVet { get; } = Key("warmth.read_vet", CareUnit.Minutes, 10m, 120m);
    /// <summary>Warmth: good apart; minutes, 5 to 60.</summary>
    public static CareKey WarmthGoodApart { get; } = Key("warmth.good_apart", CareUnit.Minutes, 5m, 60m);
    /// <summary>Warmth: strong heat stop; °F, 98 to 101.</summary>
    public static CareKey WarmthStrongHeatStop { get; } = Key("warmth.strong_heat_stop", CareUnit.Fahrenheit, 98m, 101m);
    /// <summary>Warmth: slow rise; °F, 0.2 to 3.</summary>
    public static CareKey WarmthSlowRise { get; } = Key("warmth.slow_rise", CareUnit.Fahrenheit, 0.2m, 3m);
    /// <summary>Warmth: slow within; minutes, 10 to 120.</summary>
    public static CareKey WarmthSlowWithin { get; } = Key("warmth.slow_within", CareUnit.Minutes, 10m, 120m);
    /// <summary>Warmth: slow after; minutes, 20 to 240.</summary>
    public static CareKey WarmthSlowAfter { get; } = Key("warmth.slow_after", CareUnit.Minutes, 20m, 240m);
    /// <summary>Warmth: sugar age; hours, 2 to 12.</summary>
    public static CareKey WarmthSugarAge { get; } = Key("warmth.sugar_age", CareUnit.Hours, 2m, 12m);
    /// <summary>Warmth: twice after; hours, 1 to 24.</summary>
    public static CareKey WarmthTwiceAfter { get; } = Key("warmth.twice_after", CareUnit.Hours, 1m, 24m);
    /// <summary>Warmth: after1; minutes, 10 to 120.</summary>
    public static CareKey WarmthAfter1 { get; } = Key("warmth.after1", CareUnit.Minutes, 10m, 120m);
    /// <summary>Warmth: after2; minutes, 20 to 240.</summary>
    public static CareKey WarmthAfter2 { get; } = Key("warmth.after2", CareUnit.Minutes, 20m, 240m);
    /// <summary>Warmth: after3; minutes, 40 to 480.</summary>
    public static CareKey WarmthAfter3 { get; } = Key("warmth.after3", CareUnit.Minutes, 40m, 480m);
    /// <summary>Warmth: after4; minutes, 60 to 960.</summary>
    public static CareKey WarmthAfter4 { get; } = Key("warmth.after4", CareUnit.Minutes, 60m, 960m);
    /// <summary>Warmth: possible low; °F, 70 to 88.</summary>
    public static CareKey WarmthPossibleLow { get; } = Key("warmth.possible_low", CareUnit.Fahrenheit, 70m, 88m);
    /// <summary>Warmth: possible high; °F, 106 to 115.</summary>
    public static CareKey WarmthPossibleHigh { get; } = Key("warmth.possible_high", CareUnit.Fahrenheit, 106m, 115m);
    /// <summary>Standing: asked; minutes, 10 to 240.</summary>
    public static CareKey StandingAsked { get; } = Key("standing.asked", CareUnit.Minutes, 10m, 240m);
    /// <summary>Standing: late; minutes, 20 to 360.</summary>
    public static CareKey StandingLate { get; } = Key("standing.late", CareUnit.Minutes, 20m, 360m);
    /// <summary>Standing: vet; minutes, 30 to 480.</summary>
    public static CareKey StandingVet { get; } = Key("standing.vet", CareUnit.Minutes, 30m, 480m);
    /// <summary>Nursing: asked; minutes, 20 to 240.</summary>
    public static CareKey NursingAsked { get; } = Key("nursing.asked", CareUnit.Minutes, 20m, 240m);
    /// <summary>Nursing: late; minutes, 40 to 360.</summary>
    public static CareKey NursingLate { get; } = Key("nursing.late", CareUnit.Minutes, 40m, 360m);
    /// <summary>Nursing: vet; minutes, 60 to 480.</summary>
    public static CareKey NursingVet { get; } = Key("nursing.vet", CareUnit.Minutes, 60m, 480m);
    /// <summary>Nursing: second; hours, 2 to 12.</summary>
    public static CareKey NursingSecond { get; } = Key("nursing.second", CareUnit.Hours, 2m, 12m);
    /// <summary>Nursing: second late; hours, 3 to 18.</summary>
    public static CareKey NursingSecondLate { get; } = Key("nursing.second_late", CareUnit.Hours, 3m, 18m);
    /// <summary>Nursing: apart; minutes, 5 to 120.</summary>
    public static CareKey NursingApart { get; } = Key("nursing.apart", CareUnit.Minutes, 5m, 120m);
    /// <summary>Colostrum: asked; minutes, 30 to 480.</summary>
    public static CareKey ColostrumAsked { get; } = Key("colostrum.asked", CareUnit.Minutes, 30m, 480m);
    /// <summary>Colostrum: late; minutes, 45 to 600.</summary>
    public static CareKey ColostrumLate { get; } = Key("colostrum.late", CareUnit.Minutes, 45m, 600m);
    /// <summary>Colostrum: vet; minutes, 60 to 720.</summary>
    public static CareKey ColostrumVet { get; } = Key("colostrum.vet", CareUnit.Minutes, 60m, 720m);
    /// <summary>Colostrum: risk asked; minutes, 15 to 480.</summary>
    public static CareKey ColostrumRiskAsked { get; } = Key("colostrum.risk_asked", CareUnit.Minutes, 15m, 480m);
    /// <summary>Colostrum: risk late; minutes, 30 to 600.</summary>
    public static CareKey ColostrumRiskLate { get; } = Key("colostrum.risk_late", CareUnit.Minutes, 30m, 600m);
    /// <summary>Colostrum: risk vet; minutes, 45 to 720.</summary>
    public static CareKey ColostrumRiskVet { get; } = Key("colostrum.risk_vet", CareUnit.Minutes, 45m, 720m);
    /// <summary>Colostrum: percent; percent, 5 to 20.</summary>
    public static CareKey ColostrumPercent { get; } = Key("colostrum.percent", CareUnit.Percent, 5m, 20m);
    /// <summary>Colostrum: half; hours, 2 to 12.</summary>
    public static CareKey ColostrumHalf { get; } = Key("colostrum.half", CareUnit.Hours, 2m, 12m);
    /// <summary>Colostrum: all; hours, 6 to 24.</summary>
    public static CareKey ColostrumAll { get; } = Key("colostrum.all", CareUnit.Hours, 6m, 24m);
    /// <summary>Colostrum: all again; hours, 12 to 30.</summary>
    public static CareKey ColostrumAllAgain { get; } = Key("colostrum.all_again", CareUnit.Hours, 12m, 30m);
    /// <summary>Colostrum: lapses; hours, 18 to 48.</summary>
    public static CareKey ColostrumLapses { get; } = Key("colostrum.lapses", CareUnit.Hours, 18m, 48m);
    /// <summary>Meconium: asked; hours, 2 to 36.</summary>
    public static CareKey MeconiumAsked { get; } = Key("meconium.asked", CareUnit.Hours, 2m, 36m);
    /// <summary>Meconium: late; hours, 4 to 48.</summary>
    public static CareKey MeconiumLate { get; } = Key("meconium.late", CareUnit.Hours, 4m, 48m);
    /// <summary>Meconium: vet; hours, 6 to 72.</summary>
    public static CareKey MeconiumVet { get; } = Key("meconium.vet", CareUnit.Hours, 6m, 72m);
    /// <summary>Urine: asked; hours, 2 to 36.</summary>
    public static CareKey UrineAsked { get; } = Key("urine.asked", CareUnit.Hours, 2m, 36m);
    /// <summary>Urine: late; hours, 4 to 48.</summary>
    public static CareKey UrineLate { get; } = Key("urine.late", CareUnit.Hours, 4m, 48m);
    /// <summary>Urine: vet; hours, 6 to 72.</summary>
    public static CareKey UrineVet { get; } = Key("urine.vet", CareUnit.Hours, 6m, 72m);
    /// <summary>Weight: asked; hours, 0 to 24.</summary>
    public static CareKey WeightAsked { get; } = Key("weight.asked", CareUnit.Hours, 0m, 24m);
    /// <summary>Weight: late; hours, 1 to 48.</summary>
    public static CareKey WeightLate { get; } = Key("weight.late", CareUnit.Hours, 1m, 48m);
    /// <summary>Weight: days; a count, 1 to 60.</summary>
    public static CareKey WeightDays { get; } = Key("weight.days", CareUnit.Count, 1m, 60m);
    /// <summary>Weight: off percent; percent, 2 to 40.</summary>
    public static CareKey WeightOffPercent { get; } = Key("weight.off_percent", CareUnit.Percent, 2m, 40m);
    /// <summary>Day look: days; a count, 1 to 30.</summary>
    public static CareKey DayLookDays { get; } = Key("day_look.days", CareUnit.Count, 1m, 30m);
    /// <summary>Dam look: asked; hours, 0 to 12.</summary>
    public static CareKey DamLookAsked { get; } = Key("dam_look.asked", CareUnit.Hours, 0m, 12m);
    /// <summary>Dam look: late; hours, 1 to 24.</summary>
    public static CareKey DamLookLate { get; } = Key("dam_look.late", CareUnit.Hours, 1m, 24m);
    /// <summary>Placenta: asked; hours, 1 to 12.</summary>
    public static CareKey PlacentaAsked { get; } = Key("placenta.asked", CareUnit.Hours, 1m, 12m);
    /// <summary>Placenta: late; hours, 2 to 12.</summary>
    public static CareKey PlacentaLate { get; } = Key("placenta.late", CareUnit.Hours, 2m, 12m);
    /// <summary>Placenta: vet; hours, 3 to 24.</summary>
    public static CareKey PlacentaVet { get; } = Key("placenta.vet", CareUnit.Hours, 3m, 24m);
    /// <summary>Labour: late; minutes, 30 to 480.</summary>
    public static CareKey LabourLate { get; } = Key("labour.late", CareUnit.Minutes, 30m, 480m);
    /// <summary>Labour: vet; minutes, 60 to 720.</summary>
    public static CareKey LabourVet { get; } = Key("labour.vet", CareUnit.Minutes, 60m, 720m);
    /// <summary>Labour: late hour; an hour of the day, 11 to 20.</summary>
    public static CareKey LabourLateHour { get; } = Key("labour.late_hour", CareUnit.HourOfDay, 11m, 20m);
    /// <summary>Presentation: late; minutes, 3 to 30.</summary>
    public static CareKey PresentationLate { get; } = Key("presentation.late", CareUnit.Minutes, 3m, 30m);
    /// <summary>Presentation: vet; minutes, 5 to 45.</summary>
    public static CareKey PresentationVet { get; } = Key("presentation.vet", CareUnit.Minutes, 5m, 45m);
    /// <summary>Presentation: birth; minutes, 10 to 90.</summary>
    public static CareKey PresentationBirth { get; } = Key("presentation.birth", CareUnit.Minutes, 10m, 90m);
    /// <summary>Posting: reported late; minutes, 1 to 60.</summary>
    public static CareKey PostingReportedLate { get; } = Key("posting.reported_late", CareUnit.Minutes, 1m, 60m);
    /// <summary>Posting: company; minutes, 0 to 30.</summary>
    public static CareKey PostingCompany { get; } = Key("posting.company", CareUnit.Minutes, 0m, 30m);
    /// <summary>Posting: act second; minutes, 5 to 120.</summary>
    public static CareKey PostingActSecond { get; } = Key("posting.act_second", CareUnit.Minutes, 5m, 120m);
    /// <summary>Posting: act third; minutes, 10 to 240.</summary>
    public static CareKey PostingActThird { get; } = Key("posting.act_third", CareUnit.Minutes, 10m, 240m);
    /// <summary>Posting: act fourth; minutes, 20 to 480.</summary>
    public static CareKey PostingActFourth { get; } = Key("posting.act_fourth", CareUnit.Minutes, 20m, 480m);
    /// <summary>Posting: act every; minutes, 15 to 480.</summary>
    public static CareKey PostingActEvery { get; } = Key("posting.act_every", CareUnit.Minutes, 15m, 480m);
    /// <summary>Posting: act count; a count, 2 to 40.</summary>
    public static CareKey PostingActCount { get; } = Key("posting.act_count", CareUnit.Count, 2m, 40m);
    /// <summary>Posting: vet every; minutes, 3 to 60.</summary>
    public static CareKey PostingVetEvery { get; } = Key("posting.vet_every", CareUnit.Minutes, 3m, 60m);
    /// <summary>Posting: vet count; a count, 2 to 40.</summary>
    public static CareKey PostingVetCount { get; } = Key("posting.vet_count", CareUnit.Count, 2m, 40m);
    /// <summary>Posting: vet then; minutes, 10 to 120.</summary>
    public static CareKey PostingVetThen { get; } = Key("posting.vet_then", CareUnit.Minutes, 10m, 120m);
    /// <summary>Posting: vet hours; hours, 1 to 48.</summary>
    public static CareKey PostingVetHours { get; } = Key("posting.vet_hours", CareUnit.Hours, 1m, 48m);
    /// <summary>Posting: vet last; minutes, 15 to 240.</summary>
    public static CareKey PostingVetLast { get; } = Key("posting.vet_last", CareUnit.Minutes, 15m, 240m);
    /// <summary>Posting: claim; minutes, 2 to 120.</summary>
    public static CareKey PostingClaim { get; } = Key("posting.claim", CareUnit.Minutes, 2m, 120m);
    /// <summary>Posting: claim vet; minutes, 2 to 120.</summary>
    public static CareKey PostingClaimVet { get; } = Key("posting.claim_vet", CareUnit.Minutes, 2m, 120m);
    /// <summary>Posting: claim urgent; minutes, 2 to 60.</summary>
    public static CareKey PostingClaimUrgent { get; } = Key("posting.claim_urgent", CareUnit.Minutes, 2m, 60m);
    /// <summary>Posting: not yet; minutes, 2 to 60.</summary>
    public static CareKey PostingNotYet { get; } = Key("posting.not_yet", CareUnit.Minutes, 2m, 60m);
    /// <summary>Posting: called; minutes, 10 to 240.</summary>
    public static CareKey PostingCalled { get; } = Key("posting.called", CareUnit.Minutes, 10m, 240m);
    /// <summary>Posting: round up pairs; a count, 2 to 20.</summary>
    public static CareKey PostingRoundUpPairs { get; } = Key("posting.round_up_pairs", CareUnit.Count, 2m, 20m);
    /// <summary>Posting: a question of the bot's that nobody answers lapses; hours, 1 to 48.</summary>
    public static CareKey PostingQuestionLapses { get; } = Key("posting.question_lapses", CareUnit.Hours, 1m, 48m);
    /// <summary>Colostrum: assumed weight; kg, 2 to 20.</summary>
    public static CareKey ColostrumAssumedWeight { get; } = Key("colostrum.assumed_weight", CareUnit.Kilograms, 2m, 20m);
    /// <summary>Weight: small; kg, 2 to 15.</summary>
    public static CareKey WeightSmall { get; } = Key("weight.small", CareUnit.Kilograms, 2m, 15m);
    /// <summary>Weight: gain top; g, 100 to 1000.</summary>
    public static CareKey WeightGainTop { get; } = Key("weight.gain_top", CareUnit.Grams, 100m, 1000m);
    /// <summary>Navel: a wet one counts from this age on; hours, 12 to 168.</summary>
    public static CareKey NavelWetAfter { get; } = Key("navel.wet_after", CareUnit.Hours, 12m, 168m);
    /// <summary>Warmth: under normal after this age is for the vet; hours, 12 to 72.</summary>
    public static CareKey WarmthLateCold { get; } = Key("warmth.late_cold", CareUnit.Hours, 12m, 72m);
    /// <summary>Weight: weekly until this age, then monthly; days, 14 to 180.</summary>
    public static CareKey WeightWeeklyDays { get; } = Key("weight.weekly_days", CareUnit.Days, 14m, 180m);
    /// <summary>Weight: a weekly or monthly one is late; days, 1 to 7.</summary>
    public static CareKey WeightWeeklyLate { get; } = Key("weight.weekly_late", CareUnit.Days, 1m, 7m);
    /// <summary>Weight: the loss of the first day that is fine, in percent of the birth weight; percent, 1 to 10.</summary>
    public static CareKey WeightFirstLossPercent { get; } = Key("weight.first_loss_percent", CareUnit.Percent, 1m, 10m);
    /// <summary>Weight: the loss of the first day that is fine; g, 50 to 600.</summary>
    public static CareKey WeightFirstLoss { get; } = Key("weight.first_loss", CareUnit.Grams, 50m, 600m);
    /// <summary>Weight: days over which a slow gain is judged; days, 2 to 7.</summary>
    public static CareKey WeightSlowDays { get; } = Key("weight.slow_days", CareUnit.Days, 2m, 7m);
    /// <summary>Weight: days that the trend looks back; days, 3 to 14.</summary>
    public static CareKey WeightTrendDays { get; } = Key("weight.trend_days", CareUnit.Days, 3m, 14m);
    /// <summary>Feed: milk a day at birth, in percent of the weight; percent, 5 to 20.</summary>
    public static CareKey FeedPercent { get; } = Key("feed.percent", CareUnit.Percent, 5m, 20m);
    /// <summary>Feed: the most milk a day, in percent of the weight; percent, 8 to 25.</summary>
    public static CareKey FeedPercentTop { get; } = Key("feed.percent_top", CareUnit.Percent, 8m, 25m);
    /// <summary>Feed: days until one more percent; days, 1 to 14.</summary>
    public static CareKey FeedStepDays { get; } = Key("feed.step_days", CareUnit.Days, 1m, 14m);
    /// <summary>Feed: feeds a day at birth; a count, 3 to 12.</summary>
    public static CareKey FeedADay { get; } = Key("feed.a_day", CareUnit.Count, 3m, 12m);
    /// <summary>Feed: feeds a day in the second stretch; a count, 3 to 12.</summary>
    public static CareKey FeedADaySecond { get; } = Key("feed.a_day_second", CareUnit.Count, 3m, 12m);
    /// <summary>Feed: feeds a day in the third stretch; a count, 2 to 12.</summary>
    public static CareKey FeedADayThird { get; } = Key("feed.a_day_third", CareUnit.Count, 2m, 12m);
    /// <summary>Feed: age at which the second stretch begins; days, 2 to 30.</summary>
    public static CareKey FeedSecondFrom { get; } = Key("feed.second_from", CareUnit.Days, 2m, 30m);
    /// <summary>Feed: age at which the third stretch begins; days, 4 to 60.</summary>
    public static CareKey FeedThirdFrom { get; } = Key("feed.third_from", CareUnit.Days, 4m, 60m);
    /// <summary>Feed: the most in one feed; ml/kg, 15 to 50.</summary>
    public static CareKey FeedMostPerKg { get; } = Key("feed.most_per_kg", CareUnit.MillilitresPerKilogram, 15m, 50m);
    /// <summary>Feed: late; minutes, 15 to 240.</summary>
    public static CareKey FeedLate { get; } = Key("feed.late", CareUnit.Minutes, 15m, 240m);
    /// <summary>IgG: asked; hours, 12 to 48.</summary>
    public static CareKey IggAsked { get; } = Key("igg.asked", CareUnit.Hours, 12m, 48m);
    /// <summary>IgG: late; hours, 18 to 72.</summary>
    public static CareKey IggLate { get; } = Key("igg.late", CareUnit.Hours, 18m, 72m);
    /// <summary>IgG: untested at this age, ask the vet; hours, 36 to 168.</summary>
    public static CareKey IggLapses { get; } = Key("igg.lapses", CareUnit.Hours, 36m, 168m);
    /// <summary>IgG: under this the vet is called; mg/dL, 400 to 2000.</summary>
    public static CareKey IggLow { get; } = Key("igg.low", CareUnit.MilligramsPerDecilitre, 400m, 2000m);
    /// <summary>Vaccination: the vet's dates are asked for; days, 1 to 120.</summary>
    public static CareKey VaccinationAsked { get; } = Key("vaccination.asked", CareUnit.Days, 1m, 120m);
    /// <summary>Weaning: asked for; days, 90 to 365.</summary>
    public static CareKey WeaningAsked { get; } = Key("weaning.asked", CareUnit.Days, 90m, 365m);
    /// <summary>Early: signs that count at any date; a count, 1 to 5.</summary>
    public static CareKey EarlySigns { get; } = Key("early.signs", CareUnit.Count, 1m, 5m);
    /// <summary>Early: phone late; minutes, 10 to 240.</summary>
    public static CareKey EarlyLate { get; } = Key("early.late", CareUnit.Minutes, 10m, 240m);
    /// <summary>Early: not up by this age is for the vet; minutes, 20 to 240.</summary>
    public static CareKey EarlyUpBy { get; } = Key("early.up_by", CareUnit.Minutes, 20m, 240m);
    /// <summary>Colic: from this day of pregnancy it may be a twisted womb; days, 120 to 300.</summary>
    public static CareKey DamColicFrom { get; } = Key("dam_colic.from", CareUnit.Days, 120m, 300m);
    /// <summary>Udder: asked where it has not nursed; minutes, 15 to 240.</summary>
    public static CareKey UdderAsked { get; } = Key("udder.asked", CareUnit.Minutes, 15m, 240m);
    /// <summary>Udder: late; minutes, 30 to 360.</summary>
    public static CareKey UdderLate { get; } = Key("udder.late", CareUnit.Minutes, 30m, 360m);
    /// <summary>Udder: vet; minutes, 60 to 480.</summary>
    public static CareKey UdderVet { get; } = Key("udder.vet", CareUnit.Minutes, 60m, 480m);
    /// <summary>Rejection: vet; minutes, 30 to 480.</summary>
    public static CareKey RejectionVet { get; } = Key("rejection.vet", CareUnit.Minutes, 30m, 480m);
    /// <summary>Dam check: asked; hours, 12 to 48.</summary>
    public static CareKey DamCheckAsked { get; } = Key("dam_check.asked", CareUnit.Hours, 12m, 48m);
    /// <summary>Dam check: late; hours, 18 to 72.</summary>
    public static CareKey DamCheckLate { get; } = Key("dam_check.late", CareUnit.Hours, 18m, 72m);
    /// <summary>Dam check: a fever in the dam; °F, 101.8 to 106.</summary>
    public static CareKey DamCheckFever { get; } = Key("dam_check.fever", CareUnit.Fahrenheit, 101.8m, 106m);
    /// <summary>Dam check: how long signs of infection count; days, 7 to 60.</summary>
    public static CareKey DamCheckDays { get; } = Key("dam_check.days", CareUnit.Days, 7m, 60m);
    /// <summary>After an assisted birth: days of temperatures morning and evening; a count, 1 to 10.</summary>
    public static CareKey AssistedDays { get; } = Key("assisted.days", CareUnit.Count, 1m, 10m);
    /// <summary>Rebreed: told; days, 10 to 60.</summary>
    public static CareKey RebreedAsked { get; } = Key("rebreed.asked", CareUnit.Days, 10m, 60m);
    /// <summary>Away: the longest rest; hours, 1 to 72.</summary>
    public static CareKey AwayMost { get; } = Key("away.most", CareUnit.Hours, 1m, 72m);
    /// <summary>Coat: thought of under this weather; °F, 0 to 60.</summary>
    public static CareKey CoatUnder { get; } = Key("coat.under", CareUnit.Fahrenheit, 0m, 60m);
    /// <summary>Coat: thought of in a newborn up to this age in days; a count, 1 to 60.</summary>
    public static CareKey CoatDays { get; } = Key("coat.days", CareUnit.Count, 1m, 60m);
    /// <summary>Weight: the low end of the daily gain; g, 50 to 500.</summary>
    public static CareKey WeightGainLow { get; } = Key("weight.gain_low", CareUnit.Grams, 50m, 500m);

    /// <summary>All of them, in the order of the table.</summary>
    public static IReadOnlyList<CareKey> All => all ??= [.. Known, .. DueKeys.All];

    private static IReadOnlyList<CareKey>? all;

    private static CareKey Key(string name, CareUnit unit, decimal low, decimal high)
    {
        var key = new CareKey(name, unit, low, high);
        Known.Add(key);
        return key;
    }
}
