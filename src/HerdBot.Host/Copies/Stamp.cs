using System.Globalization;

namespace HerdBot.Host.Copies;

/// <summary>Instants in names of files: sorted by name they are sorted by time.</summary>
internal static class Stamp
{
    private const string Format = "yyyyMMdd-HHmmss";

    public static string Of(TimeProvider time) => time.GetUtcNow().ToString(Format, CultureInfo.InvariantCulture);

    /// <summary>The instant of a stamp; null where it is none.</summary>
    public static DateTimeOffset? Read(string stamp) =>
        DateTimeOffset.TryParseExact(stamp, Format, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at) ? at : null;
}
