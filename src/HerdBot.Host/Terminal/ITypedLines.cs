namespace HerdBot.Host.Terminal;

/// <summary>Where typed lines come from.</summary>
internal interface ITypedLines
{
    /// <summary>The next line; null at the end.</summary>
    /// <param name="speaker">Who speaks where the line names nobody.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    Task<string?> NextAsync(string speaker, CancellationToken cancellation);
}

/// <summary>Lines from a file, a pipe, or a terminal without keys.</summary>
internal sealed class ReaderLines(TextReader input) : ITypedLines
{
    // A read of a pipe cannot be broken off; it is left behind when the program ends.
    public Task<string?> NextAsync(string speaker, CancellationToken cancellation) => Task.Run(input.ReadLine, cancellation).WaitAsync(cancellation);
}
