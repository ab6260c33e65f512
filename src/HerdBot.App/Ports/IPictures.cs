using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.App.Ports;

/// <summary>Draws what goes out as a picture.</summary>
public interface IPictures
{
    /// <summary>Draws a picture.</summary>
    /// <param name="name">Which.</param>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="at">As of when.</param>
    /// <returns>PNG; null where there is nothing to draw, or no such picture.</returns>
    byte[]? Draw(string name, HerdState state, Farm farm, Instant at);
}
