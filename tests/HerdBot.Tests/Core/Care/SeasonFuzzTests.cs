using CsCheck;
using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Decisions;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Care;

/// <summary>Whatever is said, in whatever order: what must hold of every plan and every post.</summary>
public sealed class SeasonFuzzTests
{
    private static readonly FactKind[] Kinds = [.. Enum.GetValues<FactKind>().Where(kind => kind is not (FactKind.Correction or FactKind.Birth))];

    private static readonly string?[] Topics =
        [null, NoteTopics.Weak, NoteTopics.HeadDown, NoteTopics.Stream, NoteTopics.InView, NoteTopics.Labour, NoteTopics.Abnormal, NoteTopics.DamIll, NoteTopics.CloseUp];

    private static readonly Gen<(int Pause, Fact Fact, int Press)> Said =
        from pause in Gen.Int[0, 200]
        from kind in Gen.Int[0, Kinds.Length - 1].Select(n => Kinds[n])
        from animal in Gen.Int[0, 3].Select(n => new[] { "Sage", "Willow", Some.Baby, Some.Baby }[n])
        from value in Gen.Int[880, 1050]
        from topic in Gen.Int[0, Topics.Length - 1].Select(n => Topics[n])
        from neg in Gen.Frequency((5, Gen.Const(false)), (1, Gen.Const(true)))
        from unsure in Gen.Frequency((5, Gen.Const(false)), (1, Gen.Const(true)))
        from press in Gen.Int[0, 5]
        select (pause, Of(kind, animal, value, topic) with { Neg = neg, Unsure = unsure }, press);

    [Fact]
    public void Plans_and_posts_keep_their_promises()
    {
        Said.List[1, 12].Each(said =>
        {
            var yard = new Farmyard();
            yard.Say("06:45", Some.Birth("06:40"));
            foreach (var (pause, fact, press) in said)
            {
                yard.Say(yard.Clock(yard.Now + Duration.FromMinutes(pause)), fact);
                PressSomething(yard, press);
                Holds(yard);
            }
            yard.RunTo(yard.Clock(yard.Now + Duration.FromHours(9)));
            Holds(yard);
        }, times: 40);
    }

    private static void Holds(Farmyard yard)
    {
        var plan = CarePlan.At(yard.State, yard.Farm, yard.Now);
        plan.Should().BeEquivalentTo(CarePlan.At(yard.State, yard.Farm with { }, yard.Now), order => order.WithStrictOrdering(), "what is taken over from an earlier plan is what would be worked out anew");
        plan.Select(task => task.Key).Should().OnlyHaveUniqueItems();
        plan.Should().NotContain(task => task.Steps.Length == 0 || !Rises(task.Steps.Select(step => step.At)));
        plan.Should().NotContain(task => task.Steps.Select(step => step.Label).Distinct().Count() < task.Steps.Length);

        yard.RunTo(yard.Clock(yard.Now));
        var (again, next) = Remind.At(yard.State, yard.Farm, yard.Now);
        again.Should().BeEmpty("what was posted is in the history");
        (next > yard.Now || next is null).Should().BeTrue();

        yard.Posts.Should().NotContain(post => post.Buttons.Length > 3 || post.Buttons.Any(button => AnswersATask(button) && button.Index >= Told(yard, post).Tasks.Length));
        yard.Posts.Should().NotContain(post => post.Text.Length == 0 || post.Text.Contains('{'));
        yard.Posts.Should().NotContain(post => post.Kind == PostKind.Alarm && post.Tasks.All(task => task.Level < Level.Vet));
        yard.Posts.Should().NotContain(post => post.Kind == PostKind.Reminder && post.Tasks.Any(task => task.Level == Level.Vet));
    }

    private static void PressSomething(Farmyard yard, int press)
    {
        if (press > 2 || yard.Posts.LastOrDefault(post => post.Buttons.Length > press) is not { } post)
        {
            return;
        }
        var button = post.Buttons[press];
        yard.Take(Press.Button(yard.State, yard.Farm, yard.Now, "Ben", post.Edits ?? post.Number, button.Verb, button.Index));
    }

    /// <summary>The post that an edit changes, or the post itself: buttons count its tasks.</summary>
    private static Post Told(Farmyard yard, Post post) => post.Edits is { } number ? yard.Posts.Single(one => one.Number == number) : post;

    private static bool AnswersATask(Button button) => button.Verb is ButtonVerb.Done or ButtonVerb.NotYet or ButtonVerb.OnIt;

    private static bool Rises(IEnumerable<Instant> instants) => instants.Zip(instants.Skip(1)).All(pair => pair.First <= pair.Second);

    private static Fact Of(FactKind kind, string animal, int value, string? topic)
    {
        var fact = new Fact(kind) { Animal = animal, Field = topic, Text = "as seen" };
        return kind switch
        {
            FactKind.Temperature => fact with { Value = value / 10m, Unit = FactUnit.F, Animal = Some.Baby },
            FactKind.Weight => fact with { Value = value / 100m, Unit = FactUnit.Kg, Animal = Some.Baby },
            FactKind.Colostrum or FactKind.Feed => fact with { Value = value / 5m, Unit = FactUnit.Ml, Animal = Some.Baby },
            FactKind.Claim => fact with { Task = topic is null ? CareTaskWords.CallVet : "standing" },
            FactKind.Done or FactKind.NotDone => fact with { Task = CareTaskWords.Word((CareTaskName)(value % 20)) },
            _ => fact,
        };
    }
}
