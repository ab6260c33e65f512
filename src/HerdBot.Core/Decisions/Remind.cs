using System.Collections.Immutable;
using HerdBot.Core.Events;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;

namespace HerdBot.Core.Decisions;

/// <summary>What is due now, as posts. Asking twice does no harm: what was posted is in the history.</summary>
public static class Remind
{
    /// <summary>The reminders, alarms and round-ups that are due.</summary>
    /// <param name="state">The herd.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="now">The instant.</param>
    /// <param name="offSince">On the first look after a start: when the bot was last seen alive; else null.</param>
    /// <returns>The events, none where nothing is due, and when to look again; null where nothing can fall due.</returns>
    public static (ImmutableArray<HerdEvent> Events, Instant? Next) At(HerdState state, Farm farm, Instant now, Instant? offSince = null)
    {
        ArgumentNullException.ThrowIfNull(state);
        var draft = new Draft(state, farm, now);
        Asking.CloseLapsed(draft);
        var due = PostingPlan.At(draft.State, farm, draft.Plan, now, offSince);
        foreach (var post in due.Posts)
        {
            draft.Say(PostTexts.Of(draft, post));
        }
        if (draft.Events.IsEmpty)
        {
            return ([], due.Next);
        }
        return (draft.Events, PostingPlan.At(draft.State, farm, draft.Plan, now).Next);
    }
}
