using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Meaning;

/// <summary>Tells the weather's figures from an animal's.</summary>
internal static class WeatherReader
{
    public static bool Takes(Statement statement, Clause clause, Item item) =>
        (item.Unit is null || Readings.IsDegree(item.Unit)) && !clause.HasAny(Tag.Temperature, Tag.Weight, Tag.HasDam, Tag.HasBaby, Tag.Had, Tag.Sex, Tag.Baby, Tag.Born)
        && (clause.Has(Tag.Weather) || IsOut(statement, clause, item) || IsCold(statement, clause, item) || (item.Kind == ItemKind.Number && statement.SentenceHas(clause, Tag.Weather) && !clause.HasAny(Tag.HasAnimal) && (item.Value % 1 == 0 || Readings.TemperatureScale(item.Value) is null or FactUnit.C)));

    // "20F out"
    private static bool IsOut(Statement statement, Clause clause, Item item) =>
        Readings.IsDegree(item.Unit) && clause.Items.IndexOf(item) is var at && at + 1 < clause.Items.Count && statement.Scan.TokenOf(clause.Items[at + 1]).Text == "out" && !clause.Has(Tag.HasAnimal);

    // "hace 3 grados", "41 degrees": what no body has
    private static bool IsCold(Statement statement, Clause clause, Item item) =>
        item.Kind == ItemKind.Number && clause.Has(Tag.Degrees) && !clause.Has(Tag.HasAnimal)
        && (Readings.TemperatureScale(item.Value) is null || (Readings.TemperatureScale(item.Value) == FactUnit.C && statement.Known.Context.Units == UnitSystem.Us) || clause.Has(Tag.Hace));

    public static void Read(Statement statement, Clause clause, Item item)
    {
        var draft = statement.Add(FactKind.Weather, clause, item);
        draft.Value = clause.Has(Tag.BelowZero) ? -item.Value : item.Value;
        draft.Unit = item.Unit ?? (statement.Known.Context.Units == UnitSystem.Metric ? FactUnit.C : FactUnit.F);
        item.Used = true;
    }
}
