using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Calendar;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Benchmarks;

/// <summary>An invented farm of twelve dams, all of which give birth, one after the other.</summary>
internal static class Yard
{
    private static readonly string[] Dams = ["Clementine", "Bramblewick", "Dandelion", "Mabel", "Saffron", "Tansy", "Nutmeg", "Quill", "Sorrel", "Thistle", "Marigold", "Cobweb"];

    private static readonly string[] Lines = ["Clementine had a girl, 24 lb", "Clementine's baby temp 100.4", "Clementine's baby is up", "Clementine's baby nursing", "cord dipped on Clementine's baby", "how is Clementine's baby?", "nice sunset tonight", "Clementine's baby 99.8F"];

    /// <summary>How many messages it takes until every dam has had her day.</summary>
    private static readonly int Round = Lines.Length * Dams.Length;

    public static GroupId Group { get; } = new("farm");

    public static Farm Farm { get; } = new(new FarmClock(DateTimeZoneProviders.Tzdb["America/Denver"]),
        new[] { Species.Llama, Species.Alpaca }.Aggregate(System.Collections.Immutable.ImmutableDictionary<Species, CareTable>.Empty, (tables, species) => tables.Add(species, CareTable.BuiltIn(species))))
    {
        People = ["Marisol", "Teo"],
    };

    public static FarmSetup Setup { get; } = new(Farm, [.. Dams.Select(name => Roster.NewAnimal(name, HerdRole.Dam, Species.Llama) with { State = HerdEntryState.Due })]);

    public static Inbound Line(int n, Instant at) =>
        new Inbound.Line($"line {n}", Group, new Person("name:Teo", "Teo"), at, $"message {n}", Words(n), null);

    /// <summary>Each dam in her turn; nobody gives birth twice.</summary>
    private static string Words(int n) =>
        (n >= Round && n % Lines.Length == 0 ? "Clementine's baby 24.5 lb" : Lines[n % Lines.Length]).Replace(Dams[0], Dams[n / Lines.Length % Dams.Length], StringComparison.Ordinal);
}
