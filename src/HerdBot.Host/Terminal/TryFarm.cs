using System.Collections.Immutable;
using HerdBot.App.Messages;
using HerdBot.Core.Calendar;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading;
using NodaTime;

namespace HerdBot.Host.Terminal;

/// <summary>The farm that is there to try things on. It, its people and its animals are made up.</summary>
public static class TryFarm
{
    private static readonly Species[] Cared = [Species.Llama, Species.Alpaca];
    private static readonly string[] SpanishDams = ["Luna", "Calandria", "Pirca", "Vizcacha", "Inti"];
    private static readonly string[] Dams = ["Juniper", "Marigold", "Pepita", "Thistle", "Zuni"];

    /// <summary>The farm and its herd.</summary>
    /// <remarks>Telephone numbers 555-0100 to 555-0199 are set aside for invented people in North America.</remarks>
    public static FarmSetup Setup { get; } = new(
        new Farm(new FarmClock(DateTimeZoneProviders.Tzdb["America/Denver"]), Cared.ToImmutableDictionary(species => species, CareTable.BuiltIn))
        {
            People = ["Ines", "Wade", "Lupe"],
            VetPhone = "970-555-0142",
            VetPhoneNight = "970-555-0177",
        },
        [.. Dams.Select(name => Roster.NewAnimal(name, HerdRole.Dam, Species.Llama) with { State = HerdEntryState.Due }), Roster.NewAnimal("Basalt", HerdRole.Sire, Species.Llama)]);

    /// <summary>A farm in the high valleys that speaks Spanish.</summary>
    public static FarmSetup Spanish { get; } = new(
        Setup.Farm with
        {
            Clock = new FarmClock(DateTimeZoneProviders.Tzdb["America/La_Paz"]),
            Units = UnitSystem.Metric,
            Dates = DateOrder.DayFirst,
            Language = Language.Spanish,
            People = ["Nélida", "Tomás", "Yamila"],
            VetPhone = "555 0142",
            VetPhoneNight = "555 0177",
        },
        [.. SpanishDams.Select(name => Roster.NewAnimal(name, HerdRole.Dam, Species.Llama) with { State = HerdEntryState.Due }), Roster.NewAnimal("Quebracho", HerdRole.Sire, Species.Llama)]);

    /// <summary>The farm that speaks a language.</summary>
    public static FarmSetup In(Language language) => language == Language.Spanish ? Spanish : Setup;
}
