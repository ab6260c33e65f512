using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Times;

/// <summary>Reads words that are a time in themselves: noon, yesterday, this morning, just now.</summary>
internal static class PartReader
{
    public static When? Read(Item item)
    {
        if (item.Is(Tag.Noon) || item.Is(Tag.Midnight))
        {
            return When.Clock(item.Is(Tag.Noon) ? 12 : 0, 0, HalfOfDay.Exact);
        }

        if (item.Is(Tag.AtBirth))
        {
            return new When(WhenKind.AtBirth);
        }

        return Day(item) ?? Part(item);
    }

    private static When? Day(Item item) =>
        item.Is(Tag.Yesterday) ? new When(WhenKind.Day) { DayOffset = -1 }
        : item.Is(Tag.LastNight) ? new When(WhenKind.Vague) { Part = PartOfDay.Night }
        : item.Is(Tag.Tomorrow) && !item.Is(Tag.NotDone) ? new When(WhenKind.Day) { DayOffset = 1 }
        : item.Is(Tag.Today) ? new When(WhenKind.Vague) { DayOffset = 0 }
        : item.Is(Tag.Tonight) && !item.Is(Tag.Weather) ? new When(WhenKind.Vague) { Part = PartOfDay.Evening, DayOffset = 0 }
        : null;

    private static When? Part(Item item) =>
        item.Is(Tag.Morning) ? new When(WhenKind.Vague) { Part = PartOfDay.Morning }
        : item.Is(Tag.Afternoon) ? new When(WhenKind.Vague) { Part = PartOfDay.Afternoon }
        : item.Is(Tag.Evening) ? new When(WhenKind.Vague) { Part = PartOfDay.Evening }
        : item.Is(Tag.VaguePast) ? new When(WhenKind.Vague)
        : null;
}
