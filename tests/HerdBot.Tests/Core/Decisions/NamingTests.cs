using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>The herd's list as people change it in words.</summary>
public sealed class NamingTests
{
    [Fact]
    public void A_newborns_tasks_go_on_under_its_name()
    {
        var yard = Born();
        var before = yard.PlanAt("07:00").Select(task => task.Key).ToList();
        yard.Write("Ana", "06:50", "we're calling Sage's baby Clover").Should().ContainSingle().Which.Text.Should().StartWith("Clover: new name for Sage's baby.");

        yard.PlanAt("07:00").Select(task => task.Key).Should().Equal(before);
        yard.RunTo("07:15").SelectMany(post => post.Tasks).Where(task => task.Key.Name == CareTaskName.Standing).Should().OnlyContain(task => task.Animal == "Clover");
        yard.Write("Ben", "07:20", "clover is standing");
        yard.Stands(CareTaskName.Standing, "07:20", "Clover").Should().Be("done fine");
    }

    [Theory]
    [InlineData("Sage's baby is standing")]
    [InlineData("Sage's girl is up")]
    [InlineData("Clover is up")]
    [InlineData("Clovie is up")]
    [InlineData("tag 31 is up")]
    public void All_its_names_are_understood(string text)
    {
        var yard = Born();
        yard.Write("Ana", "06:50", "we're calling Sage's baby Clover");
        yard.Write("Ana", "06:51", "we call Clover Clovie");
        yard.Write("Ana", "06:52", "Clover is tag 31");

        yard.Write("Ben", "07:20", text);

        yard.Stands(CareTaskName.Standing, "07:20", "Clover").Should().Be("done fine");
    }

    [Fact]
    public void A_dam_that_is_renamed_lends_her_new_name_to_her_newborn_and_answers_to_the_old()
    {
        var yard = Born();
        yard.Write("Ana", "06:50", "Sage is now Salvia");

        yard.State.Newborns.Should().ContainSingle().Which.Name.Should().Be("Salvia's baby");
        yard.Write("Ben", "07:20", "Sage's baby is up");
        yard.Stands(CareTaskName.Standing, "07:20", "Salvia's baby").Should().Be("done fine");
    }

    [Fact]
    public void A_newcomer_without_a_role_is_asked_for_it_once()
    {
        var yard = Born();
        var asked = yard.Write("Ana", "06:50", "new llama: Luna").Should().ContainSingle().Subject;
        asked.Text.Should().Be("Luna: a dam, a sire or a young one?");
        yard.State.Named("Luna").Should().BeNull();

        yard.Choose("Ben", "06:55", asked, 0)[0].Text.Should().Be("Luna: joins the herd, dam, llama.");
        yard.State.Named("luna").Should().Match<Animal>(luna => luna.Role == HerdRole.Dam && luna.Sex == Sex.Female && luna.Species == Species.Llama);
    }

    [Fact]
    public void A_newcomer_is_of_the_farms_species_where_none_is_told()
    {
        var yard = new Farmyard(Some.Farm() with { Species = Species.Alpaca });
        yard.Write("Ana", "06:50", "bought a new stud, Atlas");

        yard.State.Named("Atlas")!.Species.Should().Be(Species.Alpaca);
    }

    [Theory]
    [InlineData("we're calling Sage's baby Willow", "There is a Willow in the herd already (dam)*")]
    [InlineData("new dam: Willow, brown", "There is a Willow in the herd already (dam)*")]
    [InlineData("Willow is tag 14", "Tag 14 is on Sage*")]
    [InlineData("we're calling Willow's baby Clover", "Clover: which animal?")]
    public void What_is_taken_or_unknown_is_told_and_nothing_is_changed(string text, string answer)
    {
        var yard = Born();
        yard.Write("Ana", "06:48", "Sage is tag 14");
        var records = yard.State.Records;

        yard.Write("Ana", "06:50", text).Should().ContainSingle().Which.Text.Should().Match(answer);

        yard.State.Records.Should().BeEquivalentTo(records, options => options.WithStrictOrdering());
    }

    [Fact]
    public void Scratch_that_takes_a_newcomer_out_again_and_the_name_is_free()
    {
        var yard = Born();
        yard.Write("Ana", "06:50", "new dam: Luna, brown");
        yard.Write("Ana", "06:51", "scratch that");
        yard.State.Named("Luna").Should().BeNull();

        yard.Write("Ana", "06:52", "we're calling Sage's baby Luna");
        yard.State.Named("Luna").Should().Match<Animal>(luna => luna.Role == HerdRole.Young);
    }

    [Fact]
    public void Scratch_that_gives_an_animal_its_old_name_back()
    {
        var yard = Born();
        yard.Write("Ana", "06:50", "Willow is now Osier");
        yard.Write("Ana", "06:51", "scratch that");

        yard.State.Roster.Select(animal => animal.Name).Should().Equal("Sage", "Willow");
        yard.State.Named("Osier").Should().BeNull();
    }

    [Fact]
    public void One_that_is_cared_for_leaves_only_when_somebody_says_so_twice()
    {
        var yard = Born();
        var asked = yard.Write("Ana", "06:50", "Sold Sage").Should().ContainSingle().Subject;
        asked.Kind.Should().Be(PostKind.Ask);
        yard.State.Named("Sage")!.State.Should().Be(HerdEntryState.Due);

        yard.Choose("Ben", "06:55", asked, 0)[0].Text.Should().StartWith("Sage: sold.");
        yard.State.Named("Sage")!.State.Should().Be(HerdEntryState.Sold);
        yard.PlanAt("09:00").Should().NotContain(task => task.Key.Animal == yard.State.Named("Sage")!.Id);
        yard.PlanAt("09:00").Should().NotBeEmpty("her newborn is still here");
    }

    [Fact]
    public void One_that_nobody_is_asked_about_leaves_at_once_and_its_name_may_be_given_again()
    {
        var yard = Born();
        yard.Write("Ana", "06:50", "Sold Willow").Should().ContainSingle().Which.Text.Should().Be("Willow: sold.");
        yard.Write("Ana", "06:51", "new dam: Willow, brown").Should().ContainSingle().Which.Text.Should().StartWith("Willow: joins the herd");

        yard.State.Roster.Count(animal => animal.Name == "Willow").Should().Be(2);
        yard.State.Named("Willow").Should().Match<Animal>(willow => willow.IsHere() && willow.Colour == "brown");
        yard.State.Roster.Select(animal => animal.Id).Should().OnlyHaveUniqueItems();
    }

    [Fact]
    public void Two_that_share_a_part_of_their_names_are_asked_for_by_their_whole_names()
    {
        var yard = new Farmyard(null, "05:00", Some.Dam("Luna Grande"), Some.Dam("Luna Chica"), Some.Dam("Sage"));
        var asked = yard.Write("Ana", "06:50", "Luna's water broke").Should().ContainSingle().Subject;

        asked.Text.Should().EndWith("which Luna?");
        asked.Buttons.Select(button => button.Label).Should().Equal("Luna Grande", "Luna Chica");
        yard.Write("Ana", "06:51", "luna chica");
        yard.State.Records.Should().ContainSingle().Which.Animal.Should().Be(yard.State.Named("Luna Chica")!.Id);
    }

    [Fact]
    public void An_animal_that_is_added_by_a_button_goes_with_the_message_that_named_it()
    {
        var yard = Born();
        var asked = yard.Write("Ana", "06:50", "Juniper had a boy").Should().ContainSingle().Subject;
        yard.Choose("Ana", "06:51", asked, asked.Buttons.Length - 1);
        yard.State.Named("Juniper").Should().NotBeNull();

        yard.Write("Ana", "06:52", "scratch that");
        yard.State.Named("Juniper").Should().BeNull();
        yard.State.Newborns.Should().ContainSingle("Sage's stays");
    }

    private static Farmyard Born()
    {
        var yard = new Farmyard();
        yard.Say("06:45", Some.Birth("06:40") with { Sex = Sex.Female });
        return yard;
    }
}
