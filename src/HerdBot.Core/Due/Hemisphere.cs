namespace HerdBot.Core.Due;

/// <summary>Which half of the earth the farm is in: it turns the seasons round.</summary>
public enum Hemisphere
{
    /// <summary>North of the equator.</summary>
    North,
    /// <summary>South of it.</summary>
    South,
}
