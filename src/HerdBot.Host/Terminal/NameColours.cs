using Spectre.Console;

namespace HerdBot.Host.Terminal;

/// <summary>A steady colour for each name, readable on light and dark. A help for the eye alone: the name is always there.</summary>
internal static class NameColours
{
    private static readonly Color[] Palette = [new(95, 135, 175), new(95, 155, 95), new(175, 135, 50), new(170, 110, 165), new(70, 150, 150), new(190, 115, 80)];

    /// <summary>The farm's own people have different ones, as far as they reach; others the one that their name comes to.</summary>
    public static Style Of(string name, IReadOnlyList<string> people)
    {
        var place = people.ToList().IndexOf(name);
        return new Style(Palette[(place >= 0 ? place : name.Sum(letter => letter)) % Palette.Length]);
    }
}
