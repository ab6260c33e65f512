using System.Globalization;

namespace HerdBot.Core.Herd;

/// <summary>What a newborn without a name of its own is called in records and files, whatever the farm's language: "Sage's baby", of twins "Sage's baby 2".</summary>
/// <param name="Dam">The dam's name.</param>
/// <param name="N">Its number among twins, from 1; null where there is one alone.</param>
public readonly record struct BabyName(string Dam, int? N)
{
    private const string Mark = "'s baby";

    /// <summary>A name of this shape taken apart; null for any other name.</summary>
    public static BabyName? Read(string? name)
    {
        if (name is null || name.IndexOf(Mark, StringComparison.OrdinalIgnoreCase) is not (> 0 and var end))
        {
            return null;
        }
        return new BabyName(name[..end], int.TryParse(name[(end + Mark.Length)..], NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture, out var n) ? n : null);
    }

    /// <inheritdoc/>
    public override string ToString() => Dam + Mark + (N is { } n ? string.Create(CultureInfo.InvariantCulture, $" {n}") : "");
}
