using System.Globalization;

namespace HerdBot.Tests.Support;

/// <summary>How much of something is tried: a little in every run, as much as one likes where a variable says so (.ci/long).</summary>
internal static class LongRun
{
    public static int Of(string variable, int usual) =>
        Environment.GetEnvironmentVariable(variable) is { Length: > 0 } text ? int.Parse(text, CultureInfo.InvariantCulture) : usual;
}
