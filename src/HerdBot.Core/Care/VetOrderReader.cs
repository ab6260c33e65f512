using System.Text.Json;
using HerdBot.Core.Reading.Lexicon;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>Takes a vet's order out of the words it was told in: what, how often, until when. The words are data.</summary>
public static class VetOrderReader
{
    private const int DaysIfNobodySays = 3;
    private static readonly JsonElement Words = Load();
    private static readonly Dictionary<string, int> Numbers = Words.GetProperty("numbers").EnumerateObject().ToDictionary(number => number.Name, number => number.Value.GetInt32());

    /// <summary>The order; null where the words set no time for anything: then they are only kept.</summary>
    /// <param name="text">What somebody wrote.</param>
    /// <param name="said">The farm's day on which it was told.</param>
    /// <param name="monthFirst">Whether 5/6 is the sixth of May.</param>
    public static VetOrder? Read(string text, LocalDate said, bool monthFirst)
    {
        ArgumentNullException.ThrowIfNull(text);
        var words = Letters.Fold(text).Split([' ', ',', '.', ':', ';', '\'', '(', ')', '&'], StringSplitOptions.RemoveEmptyEntries);
        var (often, every) = (Often(words), Every(words));
        var (on, until) = Dates(words, said, monthFirst);
        if (often is null && every is null && on is null && until is null)
        {
            return null;
        }
        var first = on ?? said;
        var last = until ?? (often is null && every is null ? first : first.PlusDays(DaysIfNobodySays));
        var aDay = every is null ? often ?? 1 : (int?)null;
        return last < first ? null : new VetOrder(Task(words), text, aDay, every, first, last, until is not null || on is not null);
    }

    private static CareTaskName Task(string[] words)
    {
        var word = Words.GetProperty("tasks").EnumerateObject().Where(task => task.Value.EnumerateArray().Any(name => words.Contains(name.GetString()))).Select(task => task.Name).FirstOrDefault();
        return CareTaskWords.TryParse(word, out var task) ? task : CareTaskName.VetToday;
    }

    private static int? Often(string[] words)
    {
        var text = $" {string.Join(' ', words)} ";
        return Words.GetProperty("often").EnumerateArray().Where(often => often.GetProperty("words").EnumerateArray().Any(phrase => text.Contains($" {phrase.GetString()} ", StringComparison.Ordinal)))
            .Select(often => (int?)often.GetProperty("times").GetInt32()).FirstOrDefault();
    }

    private static int? Every(string[] words)
    {
        for (var i = 0; i + 2 < words.Length; i++)
        {
            if (Is(words, i, "every") && Number(words[i + 1]) is { } hours and > 0 and <= 24 && Is(words, i + 2, "hours"))
            {
                return hours;
            }
        }
        return null;
    }

    /// <summary>A day that is named for the thing itself, and the day on which it ends.</summary>
    private static (LocalDate? On, LocalDate? Until) Dates(string[] words, LocalDate said, bool monthFirst)
    {
        LocalDate? on = null, until = null;
        for (var i = 0; i < words.Length; i++)
        {
            if (Is(words, i, "for") && i + 2 < words.Length && Number(words[i + 1]) is { } count and > 0 && (Is(words, i + 2, "day") || Is(words, i + 2, "week")))
            {
                until = said.PlusDays(count * (Is(words, i + 2, "week") ? 7 : 1) - 1);
            }
            else if (Is(words, i, "until") && Day(words, i + 1, said, monthFirst) is { } end)
            {
                (until, i) = (end, i + 2);
            }
            else if (Day(words, i, said, monthFirst) is { } day)
            {
                on ??= day;
            }
        }
        return (on, until);
    }

    private static LocalDate? Day(string[] words, int i, LocalDate said, bool monthFirst)
    {
        if (i >= words.Length)
        {
            return null;
        }
        return Is(words, i, "tomorrow") ? said.PlusDays(1)
            : Is(words, i, "on") || words[i] == "the" ? Day(words, i + 1, said, monthFirst)
            : Row("weekdays", words[i]) is { } weekday ? said.Next((IsoDayOfWeek)weekday)
            : Row("months", words[i]) is { } month && i + 1 < words.Length && DayNumber(words[i + 1]) is { } after ? Coming(said, month, after)
            : DayNumber(words[i]) is { } before && i + 1 < words.Length && Row("months", words[words[i + 1] == "de" && i + 2 < words.Length ? i + 2 : i + 1]) is { } named ? Coming(said, named, before)
            : Slashed(words[i], said, monthFirst);
    }

    private static LocalDate? Slashed(string word, LocalDate said, bool monthFirst) =>
        word.Split('/') is [var one, var two] && Number(one) is { } first && Number(two) is { } second ? monthFirst ? Coming(said, first, second) : Coming(said, second, first) : null;

    /// <summary>The next such day; null where the calendar has none.</summary>
    private static LocalDate? Coming(LocalDate said, int month, int day)
    {
        if (month is < 1 or > 12 || day < 1 || day > CalendarSystem.Iso.GetDaysInMonth(said.Year, month))
        {
            return null;
        }
        var date = new LocalDate(said.Year, month, day);
        return date >= said ? date : date.PlusYears(1);
    }

    private static int? DayNumber(string word) => Number(word.EndsWith("th", StringComparison.Ordinal) || word.EndsWith("st", StringComparison.Ordinal) || word.EndsWith("nd", StringComparison.Ordinal) || word.EndsWith("rd", StringComparison.Ordinal) ? word[..^2] : word) is { } day and >= 1 and <= 31 ? day : null;

    private static int? Number(string word) => Numbers.TryGetValue(word, out var known) ? known : int.TryParse(word, out var figure) ? figure : null;

    private static int? Row(string name, string word)
    {
        var at = Words.GetProperty(name).EnumerateArray().ToList().FindIndex(row => row.EnumerateArray().Any(one => one.GetString() == word));
        return at < 0 ? null : at + 1;
    }

    private static bool Is(string[] words, int i, string name) => Words.GetProperty(name).EnumerateArray().Any(one => one.GetString() == words[i]);

    private static JsonElement Load()
    {
        using var stream = typeof(VetOrderReader).Assembly.GetManifestResourceStream("Reading/Lexicon/orders.json") ?? throw new InvalidDataException("The words of orders are not embedded.");
        using var json = JsonDocument.Parse(stream);
        return json.RootElement.Clone();
    }
}
