namespace HerdBot.Tests.Rehearsals.CareRows;

/// <summary>One row of the care table, or one edge of it, and how it plays through the whole program.</summary>
/// <param name="Row">The row's name in the list of rows.</param>
/// <param name="What">Which edge.</param>
/// <param name="Script">
/// A line each: "06:45 Ana: words", "19 06:00 Ben: words" (the day of the month), "07:00 Ana tap 1 standing", "07:00 Ana re temperature: 98.4"
/// (a reply to the post that lists the task), "12:00 down 15:00", and last "until 09:00".
/// </param>
/// <param name="Shows">
/// A line each. "07:10 standing asked fine": so the task first stood in a post, at this very minute and in this order; of each
/// task that is named every such first is listed, so none came earlier, later or besides. "at 07:10 standing late act": one of
/// several. "no standing", "no standing 07:00-07:30": no post tells of it (then). "says 07:10 words", "mute 07:10 words": a post
/// of that minute has the words or has them not, as a regular expression. "record temperature 98.4": it was recorded.
/// A task may name its animal: "udder@Sage", "dam_look@Willow". Without one it is the dam's or her baby's, as the task goes.
/// </param>
public sealed record CareRow(string Row, string What, string Script, string Shows)
{
    /// <summary>The farm's settings that differ from the usual ones, as JSON without the braces.</summary>
    public string Settings { get; init; } = "";

    /// <summary>Llama or alpaca.</summary>
    public string Species { get; init; } = "llama";

    /// <summary>Metric farms read kilograms and °C.</summary>
    public string Units { get; init; } = "us";

    /// <summary>More lines of the herd as JSON, each with a comma before it.</summary>
    public string Herd { get; init; } = "";

    /// <summary>How a test list shows it.</summary>
    public override string ToString() => $"{Row}: {What}";
}
