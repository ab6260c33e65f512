using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Calendar;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Benchmarks;

/// <summary>An invented farm of twelve dams, four of them with newborns.</summary>
internal static class Yard
{
    private static readonly string[] Dams = ["Clementine", "Bramblewick", "Dandelion", "Mabel", "Saffron", "Tansy", "Nutmeg", "Quill", "Sorrel", "Thistle", "Marigold", "Cobweb"];

    private static readonly string[] Lines = ["Clementine had a girl, 24 lb", "temp 100.4", "Clementine's baby is up", "Clementine's baby nursing", "cord dipped on Clementine's baby", "how is Clementine's baby?", "nice sunset tonight", "Clementine's baby 99.8F"];

    public static GroupId Group { get; } = new("farm");

    public static Farm Farm { get; } = new(new FarmClock(DateTimeZoneProviders.Tzdb["America/Denver"]),
        new[] { Species.Llama, Species.Alpaca }.Aggregate(System.Collections.Immutable.ImmutableDictionary<Species, CareTable>.Empty, (tables, species) => tables.Add(species, CareTable.BuiltIn(species))))
    {
        People = ["Marisol", "Teo"],
    };

    public static FarmSetup Setup { get; } = new(Farm, [.. Dams.Select(name => Roster.NewAnimal(name, HerdRole.Dam, Species.Llama) with { State = HerdEntryState.Due })]);

    public static Inbound Line(int n, Instant at) =>
        new Inbound.Line($"line {n}", Group, new Person("name:Teo", "Teo"), at, $"message {n}", Lines[n % Lines.Length], null);
}
