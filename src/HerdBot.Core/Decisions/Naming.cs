using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Wording;

namespace HerdBot.Core.Decisions;

/// <summary>Who joins the herd, who leaves it, and under which names: what cannot stand, and what is asked first.</summary>
internal static class Naming
{
    private static readonly (string Phrase, HerdRole Role)[] Roles = [("role.dam", HerdRole.Dam), ("role.sire", HerdRole.Sire), ("role.young", HerdRole.Young)];

    /// <summary>The phrases that name a role.</summary>
    public static IEnumerable<string> RoleWords => Roles.Select(role => role.Phrase);

    /// <summary>Why a roster fact cannot stand, to be said; null where it can. Names and tags are unique among those that are here.</summary>
    public static string? Refusal(Draft draft, Fact fact)
    {
        if (fact.Kind != FactKind.Roster)
        {
            return null;
        }
        var animal = fact.Field == RosterWords.Added ? null : Recording.AnimalOf(draft.State, fact);
        return fact.Field != RosterWords.Added && animal is null ? draft.Phrases.Say("roster.nobody", ("animal", draft.Speaker.Name(fact.Animal ?? "")))
            : Holder(draft.State, fact) is not { } holder ? null
            : holder == animal ? draft.Phrases.Say("roster.known", ("animal", draft.Called(animal)), ("name", fact.Name ?? fact.Traits?.Tag ?? ""))
            : fact.Name is null ? draft.Phrases.Say("roster.tag_taken", ("tag", fact.Traits?.Tag ?? ""), ("animal", draft.Called(holder)))
            : draft.Phrases.Say("roster.taken", ("name", fact.Name), ("animal", Described(draft.Phrases, holder, fact.Name)));
    }

    /// <summary>What is asked before a roster fact is recorded; null where nothing is.</summary>
    public static Doubt? Doubt(Draft draft, Fact fact)
    {
        if (Refusal(draft, fact) is not null)
        {
            return null;
        }
        if (fact is { Field: RosterWords.Added, Sex: null, Traits: null or { Role: null } })
        {
            return new Doubt(fact, Ask.Sure, draft.Phrases.Say("ask.role", ("name", fact.Name ?? "")), [.. Roles.Select(role => draft.Phrases.Say(role.Phrase))]);
        }
        var leaves = RosterWords.Leaves(fact.Field) && Recording.AnimalOf(draft.State, fact) is { } animal && draft.Plan.Any(task => task.Key.Animal == animal.Id && !(task.DoneAt <= draft.Now) && !(task.LapsesAt <= draft.Now));
        return leaves ? new Doubt(fact, Ask.Sure, draft.Phrases.Say("ask.sure.leaves", ("animal", draft.Speaker.Name(fact.Animal ?? "")), ("what", draft.FactLines.Say(fact, "")))) : null;
    }

    /// <summary>The fact with the role that an answer gives; as it is where it gives none.</summary>
    public static Fact Answered(Fact fact, string answer) =>
        Array.Find(Roles, role => Phrases.Is(role.Phrase, answer)) is { Phrase: not null } told && fact.Field == RosterWords.Added
            ? fact with { Traits = (fact.Traits ?? new AnimalTraits()) with { Role = told.Role } } : fact;

    /// <summary>"dam", or the name of the one that is called so beside its name.</summary>
    private static string Described(Phrases phrases, Animal animal, string name) => string.Equals(animal.Name, name, StringComparison.OrdinalIgnoreCase)
        ? phrases.SayFirst([$"role.{FactWords.Snake(animal.Role.ToString())}", "role.young"]).ToLowerInvariant() : animal.Name;

    /// <summary>Who bears the name or tag that a fact gives.</summary>
    private static Animal? Holder(HerdState state, Fact fact) =>
        fact.Name is { } name ? state.Named(name) is { } named && named.IsHere() && !(fact.Field == RosterWords.Renamed && IsNick(state, fact, named, name)) ? named : null
        : state.Tagged(fact.Traits?.Tag);

    // A nickname, or a name of old, may become the name.
    private static bool IsNick(HerdState state, Fact fact, Animal named, string name) =>
        Recording.AnimalOf(state, fact)?.Id == named.Id && !string.Equals(named.Name, name, StringComparison.OrdinalIgnoreCase);
}
