using System.Text;
using HerdBot.Host.LiteDb;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Host.Health;

/// <summary>When the bot last heard its chats, kept beside the data file over the night and over a start.</summary>
/// <param name="data">The data file.</param>
internal sealed class HeardFile(string data)
{
    private readonly string path = Path.GetFullPath(data) + ".heard";

    /// <summary>When it was; null where nothing is known.</summary>
    public Instant? Read() => File.Exists(path) && InstantPattern.ExtendedIso.Parse(File.ReadAllText(path).Trim()) is { Success: true } parsed ? parsed.Value : null;

    /// <summary>Keeps it.</summary>
    public void Write(Instant at) => DurableFile.WriteWhole(path, file => file.Write(Encoding.UTF8.GetBytes(InstantPattern.ExtendedIso.Format(at))));
}
