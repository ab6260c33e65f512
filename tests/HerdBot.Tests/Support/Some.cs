using System.Collections.Immutable;
using System.Globalization;
using HerdBot.Core.Calendar;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Tests.Support;

/// <summary>A farm, animals and facts with nothing special about them.</summary>
internal static class Some
{
    /// <summary>The day on which most stories begin: a Sunday in the middle of the season, daylight saving time.</summary>
    public static readonly LocalDate Day = new(2027, 4, 18);

    public const string Baby = "Sage's baby";

    private static readonly LocalTimePattern Seconds = LocalTimePattern.CreateWithInvariantCulture("HH:mm:ss");
    private static readonly ImmutableDictionary<Species, CareTable> Tables = ImmutableDictionary<Species, CareTable>.Empty
        .Add(Species.Llama, CareTable.BuiltIn(Species.Llama)).Add(Species.Alpaca, CareTable.BuiltIn(Species.Alpaca));

    public static Farm Farm(string zone = "America/Denver", int vetMinutes = 0) =>
        new(new FarmClock(DateTimeZoneProviders.Tzdb[zone]), Tables) { People = ["Ana", "Ben", "Cleo"], VetPhone = "555 0134", VetPhoneNight = "555 0199", VetDrive = Duration.FromMinutes(vetMinutes) };

    public static CareTable Llama => Tables[Species.Llama];

    public static CareTable Alpaca => Tables[Species.Alpaca];

    public static Animal Dam(string name, Species species = Species.Llama, HerdEntryState? state = HerdEntryState.Due) =>
        Roster.NewAnimal(name, HerdRole.Dam, species) with { State = state };

    /// <summary>"06:40" on the first day, "19 06:40" on the 19th ("33" is three days after the 30th), seconds where they matter.</summary>
    public static LocalDateTime Local(string time)
    {
        var parts = time.Split(' ');
        var clock = parts[^1].Length == 5 ? parts[^1] + ":00" : parts[^1];
        return (parts.Length == 1 ? Day : Day.PlusDays(int.Parse(parts[0], CultureInfo.InvariantCulture) - Day.Day)) + Seconds.Parse(clock).Value;
    }

    public static Fact Fact(FactKind kind, string? animal = Baby, string? at = null) =>
        new(kind) { Animal = animal, At = at is null ? null : FactTime.Of(Local(at)) };

    public static Fact Birth(string? at = null, string dam = "Sage", int? n = null) => Fact(FactKind.Birth, dam, at) with { N = n };

    public static Fact Temperature(double value, string? at = null, string animal = Baby, FactUnit unit = FactUnit.F) =>
        Fact(FactKind.Temperature, animal, at) with { Value = (decimal)value, Unit = unit };

    public static Fact Weight(double value, FactUnit unit = FactUnit.Kg, string? at = null, string animal = Baby) =>
        Fact(FactKind.Weight, animal, at) with { Value = (decimal)value, Unit = unit };

    public static Fact Colostrum(double millilitres, string? at = null, string animal = Baby) =>
        Fact(FactKind.Colostrum, animal, at) with { Value = (decimal)millilitres, Unit = FactUnit.Ml };

    public static Fact Note(string topic, string? animal = Baby, string? at = null) => Fact(FactKind.Note, animal, at) with { Field = topic, Text = "as seen" };

    public static Fact Done(CareTaskName task, string? animal = Baby, string? at = null) =>
        Fact(FactKind.Done, animal, at) with { Task = CareTaskWords.Word(task) };

    public static Fact Claim(string task, string? animal = Baby) => Fact(FactKind.Claim, animal) with { Task = task };
}
