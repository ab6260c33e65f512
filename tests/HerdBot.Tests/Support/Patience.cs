namespace HerdBot.Tests.Support;

/// <summary>How long a test waits for something that must come about. It only ends tests that hang; nothing is measured by it.</summary>
internal static class Patience
{
    /// <summary>Long enough for a process to start on a machine that has much else to do.</summary>
    public static readonly TimeSpan Hang = TimeSpan.FromMinutes(3);
}
