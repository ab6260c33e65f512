using HerdBot.Core.Due;
using HerdBot.Core.Herd;
using HerdBot.Tests.Support;
using NodaTime;

namespace HerdBot.Tests.Core.Due;

/// <summary>Dams about whom nothing special is known.</summary>
internal static class SomeDue
{
    public static readonly Gestation Alpaca = Gestation.Of(Some.Alpaca);

    public static DueForecast Forecast(DueCase asked) => DueForecast.Of(asked.Species == Species.Alpaca ? Some.Alpaca : Some.Llama, asked)!;

    /// <summary>An alpaca mated on a day, looked at ten days later.</summary>
    public static DueForecast Mated(LocalDate day, Hemisphere? hemisphere = null, Species species = Species.Alpaca) =>
        Forecast(new DueCase(species, [Mating.On(day)], day.PlusDays(10)) { Hemisphere = hemisphere });

    public static int DaysTo(this LocalDate from, LocalDate to) => Period.DaysBetween(from, to);
}
