using HerdBot.Core.Reading.Meaning;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading;

/// <summary>Understands one message. Total: any text gives a reading, none an exception.</summary>
public static class Reader
{
    /// <summary>What the text says, in these circumstances.</summary>
    /// <param name="text">The message as typed, any length and any characters.</param>
    /// <param name="context">The herd, the clock and what was said and recorded before.</param>
    public static Reading Read(string text, ReadingContext context)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(context);
        return Interpreter.Read(Scanner.Read(text, context), explain: false);
    }

    /// <summary>What the text says, with the reasons: which words gave which fact, and why others gave none.</summary>
    /// <param name="text">The message as typed, any length and any characters.</param>
    /// <param name="context">The herd, the clock and what was said and recorded before.</param>
    public static Reading Explain(string text, ReadingContext context)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(context);
        return Interpreter.Read(Scanner.Read(text, context), explain: true);
    }
}
