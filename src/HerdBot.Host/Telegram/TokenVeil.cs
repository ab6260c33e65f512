namespace HerdBot.Host.Telegram;

/// <summary>Takes the token out of whatever is about to be logged or told.</summary>
public sealed class TokenVeil
{
    private readonly string _secret;

    public TokenVeil(string token)
    {
        ArgumentNullException.ThrowIfNull(token);
        _secret = token[(token.IndexOf(':', StringComparison.Ordinal) + 1)..];
    }

    /// <summary>The text with the token's secret part blotted out.</summary>
    public string Hide(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return _secret.Length == 0 ? text : text.Replace(_secret, "***", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>What an exception and those behind it say, in one line. Exceptions are never logged as they are.</summary>
    public string Tell(Exception exception)
    {
        ArgumentNullException.ThrowIfNull(exception);
        var said = new List<string>();
        for (var e = exception; e is not null; e = e.InnerException)
            said.Add($"{e.GetType().Name}: {e.Message}");
        return Hide(string.Join(" <- ", said.Distinct()));
    }
}
