namespace HerdBot.Core.Facts;

/// <summary>What a roster fact does to the herd's list: the words of its <see cref="Fact.Field"/>.</summary>
public static class RosterWords
{
    /// <summary>An animal joined the herd.</summary>
    public const string Added = "added";
    /// <summary>A newborn got its name.</summary>
    public const string Named = "named";
    /// <summary>A named animal is called otherwise from now on.</summary>
    public const string Renamed = "renamed";
    /// <summary>A name beside the name.</summary>
    public const string Nickname = "nickname";
    /// <summary>An ear tag or collar number.</summary>
    public const string Tag = "tag";
    /// <summary>Sold.</summary>
    public const string Sold = "sold";
    /// <summary>Left the herd in another way.</summary>
    public const string Gone = "gone";

    /// <summary>Whether the animal has left the herd.</summary>
    public static bool Leaves(string? field) => field is Sold or Gone;

    /// <summary>Whether the animal goes by another name from now on. Old histories hold names without a word.</summary>
    public static bool Names(string? field) => field is null or Named or Renamed;
}
