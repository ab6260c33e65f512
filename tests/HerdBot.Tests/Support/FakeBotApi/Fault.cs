namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>What goes wrong with a call. A closed set.</summary>
internal abstract record Fault
{
    private Fault() { }

    /// <summary>A proxy's or captive portal's page in place of an answer.</summary>
    public sealed record Html(int Status) : Fault;

    /// <summary>An error in Telegram's form.</summary>
    public sealed record Error(int Code, string Description, int? RetryAfter = null) : Fault;

    /// <summary>Half of the answer, then the connection closes.</summary>
    public sealed record HalfAnswer : Fault;

    /// <summary>The connection closes before anything is done.</summary>
    public sealed record Dropped : Fault;

    /// <summary>The call is carried out, and the connection closes before the answer.</summary>
    public sealed record AnswerLost : Fault;

    /// <summary>The call is carried out, and the answer never comes.</summary>
    public sealed record Silence : Fault;

    /// <summary>"ok", and nothing where the result should be.</summary>
    public sealed record NoResult : Fault;
}
