using HerdBot.App.Ports;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.Host.Calendar;

/// <summary>The pictures that go out with posts.</summary>
public sealed class Pictures : IPictures
{
    /// <inheritdoc/>
    public byte[]? Draw(string name, HerdState state, Farm farm, Instant at) => name == Post.Season ? SeasonPicture.Draw(state, farm, at) : null;
}
