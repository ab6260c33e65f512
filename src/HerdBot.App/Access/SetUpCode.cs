using NodaTime;

namespace HerdBot.App.Access;

/// <summary>The code shown on the bot's own console, by which its owner is known. Good once, for a short time.</summary>
/// <param name="Code">Letters and digits; upper and lower case count the same.</param>
/// <param name="MadeAt">When it was made.</param>
public sealed record SetUpCode(string Code, Instant MadeAt)
{
    /// <summary>How long a code is good for.</summary>
    public static readonly Duration ValidFor = Duration.FromMinutes(30);

    /// <summary>True where what was typed is this code, in time, and nobody has used it.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="now">The present.</param>
    /// <param name="ownerSince">When the owner became known; null where there is none.</param>
    public bool Opens(string typed, Instant now, Instant? ownerSince) =>
        string.Equals(typed, Code, StringComparison.OrdinalIgnoreCase)
        && now >= MadeAt && now < MadeAt + ValidFor
        && (ownerSince is null || ownerSince < MadeAt);
}
