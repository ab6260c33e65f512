using System.Collections.Immutable;
using HerdBot.Core.Care;
using NodaTime;

namespace HerdBot.Core.Posting;

/// <summary>What sort of post it is.</summary>
public enum PostKind
{
    /// <summary>To a message.</summary>
    Reply,
    /// <summary>Asked or late, up to level act.</summary>
    Reminder,
    /// <summary>Level vet.</summary>
    Alarm,
    /// <summary>To a question.</summary>
    Answer,
    /// <summary>The bot needs one thing.</summary>
    Ask,
    /// <summary>Several at once.</summary>
    RoundUp,
    /// <summary>New words in an earlier post.</summary>
    Edit,
    /// <summary>A mark on a message instead of a post.</summary>
    React,
}

/// <summary>A task as a post told of it.</summary>
/// <param name="Key">Which task.</param>
/// <param name="Animal">The animal's name at the time.</param>
/// <param name="Due">When it was asked for.</param>
/// <param name="State">Where it stood.</param>
/// <param name="Level">How grave it was.</param>
/// <param name="Step">The step's label; "" where the post only mentions what is ahead.</param>
public sealed record PostedTask(TaskKey Key, string Animal, Instant Due, TaskState State, Level Level, string Step);

/// <summary>What a button does. A closed set; the words are in the wording.</summary>
public enum ButtonVerb
{
    /// <summary>The task is done.</summary>
    Done,
    /// <summary>Not yet.</summary>
    NotYet,
    /// <summary>I take it on.</summary>
    OnIt,
    /// <summary>One of the answers to a question.</summary>
    Choose,
    /// <summary>What the receipt states is not right.</summary>
    Mend,
    /// <summary>Takes back what the receipt states.</summary>
    TakeBack,
    /// <summary>What the receipt states is right after all.</summary>
    Keep,
}

/// <summary>A button under a post.</summary>
/// <param name="Label">The whole answer.</param>
/// <param name="Verb">What it does.</param>
/// <param name="Index">Which task of the post it answers, or which choice of a question; from 0.</param>
public sealed record Button(string Label, ButtonVerb Verb, int Index);

/// <summary>Something the bot says.</summary>
/// <param name="Number">Its number in the group, from 1.</param>
/// <param name="Kind">What sort of post.</param>
/// <param name="To">"group", or a person's name.</param>
/// <param name="Text">What it says; the mark for <see cref="PostKind.React"/>.</param>
/// <param name="At">When it was decided.</param>
public sealed record Post(int Number, PostKind Kind, string To, string Text, Instant At)
{
    /// <summary>The tasks it is about, the gravest first.</summary>
    public ImmutableArray<PostedTask> Tasks { get; init; } = [];
    /// <summary>At most three.</summary>
    public ImmutableArray<Button> Buttons { get; init; } = [];
    /// <summary>The chat's id of the message it replies to or marks.</summary>
    public string? ReplyTo { get; init; }
    /// <summary>The post whose words it changes.</summary>
    public int? Edits { get; init; }
    /// <summary>A picture that goes with it, by name; null for none.</summary>
    public string? Picture { get; init; }
    /// <summary>The picture of the season's calendar.</summary>
    public const string Season = "season";
    /// <summary>The whole group.</summary>
    public const string Group = "group";
}
