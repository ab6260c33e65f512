using System.Collections.Immutable;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.Core.Events;

/// <summary>
/// What happened in a group: the only stored truth. A closed set; nothing is ever changed or deleted, a correction is
/// an event too.
/// </summary>
public abstract record HerdEvent
{
    private HerdEvent() { }

    /// <summary>An animal joined the herd's list.</summary>
    /// <param name="Animal">As it was told.</param>
    public sealed record AnimalAdded(Animal Animal) : HerdEvent
    {
        /// <summary>The record that tells of it, without which it does not stand; null where a list of the herd named it.</summary>
        public FactId? Told { get; init; }
    }

    /// <summary>Somebody wrote something.</summary>
    /// <param name="Message">The chat's id of the message.</param>
    /// <param name="By">Who, by name.</param>
    /// <param name="Text">What.</param>
    /// <param name="At">When it came in.</param>
    /// <param name="ReplyTo">The post it replies to.</param>
    public sealed record LineHeard(string Message, string By, string Text, Instant At, int? ReplyTo) : HerdEvent;

    /// <summary>Somebody changed the words of an earlier message.</summary>
    /// <param name="Message">The chat's id of the message.</param>
    /// <param name="By">Who.</param>
    /// <param name="Text">What it says now.</param>
    /// <param name="At">When.</param>
    public sealed record LineEdited(string Message, string By, string Text, Instant At) : HerdEvent;

    /// <summary>Somebody pressed a button.</summary>
    /// <param name="By">Who.</param>
    /// <param name="Post">The post it is under.</param>
    /// <param name="Verb">What it does.</param>
    /// <param name="Index">Which task or choice.</param>
    /// <param name="At">When.</param>
    public sealed record ButtonPressed(string By, int Post, ButtonVerb Verb, int Index, Instant At) : HerdEvent;

    /// <summary>A voice note, sticker or video came.</summary>
    /// <param name="By">Who sent it.</param>
    /// <param name="What">The chat's word for it.</param>
    /// <param name="At">When.</param>
    /// <param name="Answered">Whether people were asked to dictate it as text.</param>
    public sealed record WordlessHeard(string By, string What, Instant At, bool Answered) : HerdEvent;

    /// <summary>A fact was recorded.</summary>
    /// <param name="Id">Its number.</param>
    /// <param name="Fact">What was said.</param>
    /// <param name="Animal">About whom; null where nobody.</param>
    /// <param name="At">When it happened.</param>
    /// <param name="SaidAt">When it was said.</param>
    /// <param name="By">Who said it.</param>
    public sealed record FactRecorded(FactId Id, Fact Fact, AnimalId? Animal, Instant At, Instant SaidAt, string By) : HerdEvent
    {
        /// <summary>The message it came in; null for a button.</summary>
        public string? Message { get; init; }
        /// <summary>For a birth: the newborn.</summary>
        public AnimalId? Newborn { get; init; }
        /// <summary>The task it answers or claims, where one is meant.</summary>
        public TaskKey? Task { get; init; }
    }

    /// <summary>A record was mended. The old words stay in the history.</summary>
    /// <param name="Id">Which record.</param>
    /// <param name="Becomes">What it says from now on.</param>
    /// <param name="Animal">About whom.</param>
    /// <param name="At">When it happened.</param>
    /// <param name="SaidAt">When it was mended.</param>
    /// <param name="By">Who mended it.</param>
    /// <param name="Correction">The correction as a fact, for people to read.</param>
    public sealed record FactAmended(FactId Id, Fact Becomes, AnimalId? Animal, Instant At, Instant SaidAt, string By, Fact Correction)
        : HerdEvent;

    /// <summary>A record was taken back. It stays in the history and counts no more.</summary>
    /// <param name="Id">Which record.</param>
    /// <param name="SaidAt">When.</param>
    /// <param name="By">Who.</param>
    public sealed record FactWithdrawn(FactId Id, Instant SaidAt, string By) : HerdEvent;

    /// <summary>The bot needs one thing before it records.</summary>
    /// <param name="Question">What it asked and what waits for it.</param>
    public sealed record QuestionAsked(Question Question) : HerdEvent;

    /// <summary>A question needs no answer any more.</summary>
    /// <param name="Post">The post that asked it.</param>
    /// <param name="Answered">False where it lapsed: nobody answered in time. True also where other words have taken its place.</param>
    public sealed record QuestionClosed(int Post, bool Answered) : HerdEvent;

    /// <summary>The bot decided to say something.</summary>
    /// <param name="Post">What.</param>
    public sealed record PostQueued(Post Post) : HerdEvent;

    /// <summary>A post is being handed to the chat.</summary>
    /// <param name="Number">Which post.</param>
    /// <param name="At">When.</param>
    public sealed record PostSending(int Number, Instant At) : HerdEvent;

    /// <summary>The chat has a post.</summary>
    /// <param name="Number">Which post.</param>
    /// <param name="Message">The chat's id of it.</param>
    /// <param name="At">When.</param>
    public sealed record PostSent(int Number, string Message, Instant At) : HerdEvent;

    /// <summary>The chat certainly does not have a post: it refuses it for now, or the line is down. It is tried again.</summary>
    /// <param name="Number">Which post.</param>
    /// <param name="Why">The chat's words, or the line's.</param>
    /// <param name="At">When.</param>
    public sealed record PostParked(int Number, string Why, Instant At) : HerdEvent;
}

/// <summary>A question of the bot's, and the facts that wait for its answer.</summary>
/// <param name="Post">The post that asks it.</param>
/// <param name="Ask">What is missing.</param>
/// <param name="Waiting">The facts that wait.</param>
/// <param name="Choices">The answers on the buttons, in their order.</param>
/// <param name="By">Who wrote the message.</param>
/// <param name="Message">The chat's id of the message.</param>
/// <param name="At">When it was asked.</param>
public sealed record Question(
    int Post, Ask Ask, ImmutableArray<Fact> Waiting, ImmutableArray<string> Choices, string By, string? Message, Instant At);
