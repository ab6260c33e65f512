namespace HerdBot.App.Herds;

/// <summary>One line of a list of animals.</summary>
/// <param name="Line">Its number in the file, from 1.</param>
/// <param name="Cells">What stands in its columns, by the heads of the file, trimmed; empty cells are left out.</param>
public sealed record HerdRow(int Line, IReadOnlyDictionary<string, string> Cells);
