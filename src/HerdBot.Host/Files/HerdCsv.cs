using CsvHelper;
using HerdBot.App.Herds;

namespace HerdBot.Host.Files;

/// <summary>Reads a list of animals as spreadsheets write it: commas, semicolons or tabs, quoted or not, with or without a byte order mark.</summary>
public static class HerdCsv
{
    /// <summary>The lines below the heads.</summary>
    /// <param name="text">The file's text.</param>
    /// <returns>The lines that are not empty, and what is wrong with heads and quotes; no lines where there is no name among the heads.</returns>
    public static (IReadOnlyList<HerdRow> Rows, IReadOnlyList<string> Problems) Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var problems = new List<string>();
        using var csv = CsvReader.FromText(text.TrimStart('\uFEFF'), new CsvReaderOptions
        {
            TrackLineNumbers = true,
            TrimWhitespace = true,
            MalformedData = CsvMalformedDataHandling.Skip,
            OnMalformedRecord = bad => problems.Add($"Line {bad.LineNumber}: the quotes do not close; write each quoted cell with one quote before and one after it."),
        });
        string[] heads = [.. csv.Headers];
        if (heads.Length == 0)
        {
            return ([], ["The list is empty. Its first line must hold the heads of the columns, the first of them 'name'."]);
        }
        var columns = Array.ConvertAll(heads, HerdColumns.Of);
        if (!columns.Contains("name"))
        {
            return ([], [$"Line 1: there is no column 'name'. The heads are {string.Join(", ", heads)}; there may be {string.Join(", ", HerdColumns.Names)}."]);
        }
        problems.AddRange(Unread(heads, columns));
        return (Rows(csv, columns), problems);
    }

    private static IEnumerable<string> Unread(string[] heads, string?[] columns)
    {
        for (var i = 0; i < heads.Length; i++)
        {
            if (columns[i] is not { } column)
            {
                yield return $"Line 1: the column '{heads[i]}' is not read; there may be {string.Join(", ", HerdColumns.Names)}.";
            }
            else if (Array.IndexOf(columns, column) < i)
            {
                yield return $"Line 1: the column '{heads[i]}' is there twice; the first counts.";
            }
        }
    }

    private static List<HerdRow> Rows(CsvReader csv, string?[] columns)
    {
        var rows = new List<HerdRow>();
        while (csv.Read())
        {
            var cells = new Dictionary<string, string>(StringComparer.Ordinal);
            for (var i = 0; i < columns.Length && i < csv.FieldCount; i++)
            {
                if (columns[i] is { } column && csv.GetString(i).Trim() is { Length: > 0 } cell)
                {
                    cells.TryAdd(column, cell);
                }
            }
            if (cells.Count > 0)
            {
                rows.Add(new HerdRow((int)csv.LineNumber, cells));
            }
        }
        return rows;
    }
}
