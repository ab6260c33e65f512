using FluentAssertions;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Herd;

/// <summary>What a history comes to.</summary>
public sealed class HerdStateTests
{
    [Fact]
    public void A_newborn_is_called_after_its_dam_until_it_has_a_name()
    {
        var yard = new Farmyard();
        yard.Say("06:45", Some.Birth("06:40") with { Sex = Sex.Female });
        yard.State.Newborns.Should().ContainSingle().Which.Should().Match<Animal>(baby => baby.Name == "Sage's baby" && baby.Role == HerdRole.Newborn && baby.Sex == Sex.Female);
        var id = yard.State.Newborns[0].Id;
        yard.Say("09:00", Some.Fact(FactKind.Roster) with { Name = "Juniper" });

        yard.State.Named("juniper")!.Id.Should().Be(id);
        yard.State.Named("Juniper")!.Role.Should().Be(HerdRole.Young);
        yard.Say("09:10", Some.Fact(FactKind.Nursing));
        yard.State.Records[^1].Animal.Should().Be(id, "her dam's baby is she");
    }

    [Fact]
    public void Births_of_one_dam_within_a_day_are_twins_and_later_ones_are_not()
    {
        var yard = new Farmyard();
        yard.Say("06:45", Some.Birth("06:40"));
        yard.Say("07:45", Some.Birth("07:40", n: 2));

        yard.State.Newborns.Select(baby => (baby.Name, baby.Twin)).Should().Equal(("Sage's baby 1", 1), ("Sage's baby 2", 2));
    }

    [Fact]
    public void A_twin_whose_birth_is_taken_back_leaves_a_single()
    {
        var yard = new Farmyard();
        yard.Say("06:45", Some.Birth("06:40"));
        yard.Say("07:45", Some.Birth("07:40", n: 2));
        yard.Take([new HerdEvent.FactWithdrawn(new FactId(2), yard.Now, "Ana")]);

        yard.State.Newborns.Should().ContainSingle().Which.Should().Match<Animal>(baby => baby.Name == "Sage's baby" && baby.Twin == null);
    }

    [Fact]
    public void Only_the_newest_posts_are_kept_and_every_one_that_waits()
    {
        var state = HerdState.Empty;
        var at = Instant.FromUtc(2027, 4, 18, 12, 0);
        for (var number = 1; number <= 500; number++)
        {
            state = state.Apply(new HerdEvent.PostQueued(new Post(number, PostKind.Reply, Post.Group, "…", at)));
            state = number is 7 or 300 ? state : state.Apply(new HerdEvent.PostSent(number, "x", at));
        }

        state.Unsent.Should().Equal(7, 300);
        state.Posts.Should().ContainKey(7).And.ContainKey(300).And.ContainKey(500);
        state.Posts.Count.Should().BeLessThan(410);
        state.PostCount.Should().Be(500);
    }

    [Fact]
    public void An_event_about_what_nobody_knows_changes_nothing()
    {
        var at = Instant.FromUtc(2027, 4, 18, 12, 0);
        var state = HerdState.Empty.Apply([new HerdEvent.FactWithdrawn(new FactId(9), at, "Ana"), new HerdEvent.PostSent(9, "x", at), new HerdEvent.QuestionClosed(9, true)]);

        state.Records.Should().BeEmpty();
        state.Posts.Should().BeEmpty();
    }

    [Fact]
    public void The_id_of_an_added_animal_follows_from_its_name() =>
        Roster.NewAnimal(" Hazel ", HerdRole.Dam, Species.Llama).Should().Be(new Animal(new AnimalId("hazel"), "Hazel", HerdRole.Dam, Species.Llama));
}
