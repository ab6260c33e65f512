using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Due;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.Core.Due;

/// <summary>A dam's pregnancy as it follows from what is on record.</summary>
public sealed class DueBookTests
{
    private static readonly Farm Farm = Some.Farm();
    private static readonly Animal Sage = Roster.NewAnimal("Sage", HerdRole.Dam, Species.Llama);
    private static readonly LocalDate May3 = new(2026, 5, 3);
    private HerdState state = HerdState.Empty.Apply(new HerdEvent.AnimalAdded(Sage));

    [Fact]
    public void A_mating_makes_a_pregnancy_with_a_window()
    {
        Tell(FactKind.Breeding, May3);

        var due = Due(May3.PlusDays(100))!;
        due.Mating.Should().Be(Mating.On(May3));
        due.Days.Should().Be(100);
        due.Case.Hemisphere.Should().Be(Hemisphere.North, "the farm's zone is Denver's");
    }

    [Fact]
    public void A_time_in_the_pen_runs_to_the_day_that_was_named()
    {
        Tell(new Fact(FactKind.Breeding) { Until = May3.PlusDays(48), Field = MatingTopics.Pen }, May3);

        Due(May3.PlusDays(100))!.Mating.Should().Be(new Mating(May3, May3.PlusDays(48)));
    }

    [Fact]
    public void A_time_in_the_pen_without_an_end_is_no_mating_on_one_day()
    {
        Tell(new Fact(FactKind.Breeding) { Field = MatingTopics.Pen }, May3);

        Due(May3.PlusDays(100))!.Mating.IsPen.Should().BeTrue();
    }

    [Fact]
    public void A_birth_ends_it_and_its_length_is_the_dams_own_record()
    {
        Tell(FactKind.Breeding, May3);
        Birth(May3.PlusDays(362));

        Due(May3.PlusDays(365)).Should().BeNull();
        Book.CarriedOf(new AnimalId("sage/1")).Should().Be(362);
        Book.PregnancyOf(Sage.Id)!.Past.Select(length => length.Days).Should().Equal(362);
        Tell(FactKind.Breeding, May3.PlusDays(385));
        Due(May3.PlusDays(400))!.Lean.Mean.Should().BePositive("she carried longer than her kind");
    }

    [Fact]
    public void Twins_are_one_birth_of_one_length()
    {
        Tell(FactKind.Breeding, May3);
        Birth(May3.PlusDays(340), 1);
        Birth(May3.PlusDays(340), 2);

        Book.CarriedOf(new AnimalId("sage/2")).Should().Be(340);
        Book.PregnancyOf(Sage.Id)!.Past.Should().HaveCount(1);
    }

    [Fact]
    public void A_length_that_may_belong_to_any_day_of_a_month_in_the_pen_is_no_record()
    {
        Tell(new Fact(FactKind.Breeding) { Until = May3.PlusDays(30) }, May3);
        Birth(May3.PlusDays(365));

        Book.PregnancyOf(Sage.Id)!.Past.Should().BeEmpty();
        Book.CarriedOf(new AnimalId("sage/1")).Should().BeInRange(335, 365);
    }

    [Fact]
    public void Of_two_matings_the_one_that_fits_the_birth_counts()
    {
        Tell(FactKind.Breeding, May3);
        Tell(FactKind.Breeding, May3.PlusDays(60));
        Birth(May3.PlusDays(60 + 350));

        Book.CarriedOf(new AnimalId("sage/1")).Should().Be(350);
    }

    [Fact]
    public void A_birth_two_hundred_days_after_the_only_mating_has_another_mating_behind_it()
    {
        Tell(FactKind.Breeding, May3);
        Birth(May3.PlusDays(200));

        Book.CarriedOf(new AnimalId("sage/1")).Should().BeNull();
        Book.UnexplainedOf(new AnimalId("sage/1")).Should().Be(200);
    }

    [Fact]
    public void A_stillbirth_ends_it_too()
    {
        Tell(FactKind.Breeding, May3);
        state = state.Apply(new HerdEvent.FactRecorded(state.NextFact, new Fact(FactKind.Death) { Animal = "Sage's baby" }, Sage.Id, At(May3.PlusDays(200)), At(May3.PlusDays(200)), "Ana") { Newborn = new AnimalId("sage/2") });

        Due(May3.PlusDays(210)).Should().BeNull();
    }

    [Fact]
    public void A_mating_that_was_taken_back_or_hedged_counts_for_nothing()
    {
        Tell(new Fact(FactKind.Breeding) { Unsure = true }, May3);
        Tell(FactKind.Breeding, May3.PlusDays(5));
        state = state.Apply(new HerdEvent.FactWithdrawn(new FactId(2), At(May3.PlusDays(6)), "Ana"));

        Due(May3.PlusDays(20)).Should().BeNull();
    }

    [Fact]
    public void A_refusal_counts_as_a_rejection_and_so_does_spitting()
    {
        Tell(FactKind.Breeding, May3);
        Tell(new Fact(FactKind.Breeding) { Neg = true }, May3.PlusDays(14));
        Tell(FactKind.SpitOff, May3.PlusDays(28));
        Tell(new Fact(FactKind.SpitOff) { Neg = true }, May3.PlusDays(40));

        Book.PregnancyOf(Sage.Id)!.Checks.Select(check => check.Result).Should().Equal(CheckResult.SpitOff, CheckResult.SpitOff, CheckResult.Receptive);
    }

    [Fact]
    public void A_vets_due_date_stands_in_for_a_mating_that_nobody_wrote_down()
    {
        var expected = new LocalDate(2027, 5, 20);
        Tell(new Fact(FactKind.PregnancyCheck) { Expected = expected }, new LocalDate(2026, 9, 1));

        var due = Due(new LocalDate(2026, 9, 2))!;
        due.Case.FromVetsDate.Should().BeTrue();
        due.Median.Should().BeInRange(expected.PlusDays(-7), expected.PlusDays(7));
    }

    [Fact]
    public void A_birth_before_day_325_is_early_and_one_before_335_is_looked_at()
    {
        Prematurity Of(int days)
        {
            var yard = HerdState.Empty.Apply(new HerdEvent.AnimalAdded(Sage));
            yard = yard.Apply(new HerdEvent.FactRecorded(yard.NextFact, new Fact(FactKind.Breeding), Sage.Id, At(May3), At(May3), "Ana"));
            yard = yard.Apply(new HerdEvent.FactRecorded(yard.NextFact, new Fact(FactKind.Birth), Sage.Id, At(May3.PlusDays(days)), At(May3.PlusDays(days)), "Ana") { Newborn = new AnimalId("sage/2") });
            return Prematurity.Of(NewbornView.Of(yard, Farm, yard.Newborns[0], At(May3.PlusDays(days)))!);
        }

        Of(324).IsEarly.Should().BeTrue();
        Of(325).Should().Be(new Prematurity(false, true, null));
        Of(334).Should().Be(new Prematurity(false, true, null));
        Of(335).Should().Be(new Prematurity(false, false, null));
    }

    [Theory]
    [InlineData("America/Denver", Hemisphere.North)]
    [InlineData("US/Mountain", Hemisphere.North)]
    [InlineData("America/Lima", Hemisphere.South)]
    [InlineData("Pacific/Auckland", Hemisphere.South)]
    [InlineData("UTC", null)]
    public void The_zone_says_which_half_of_the_earth_the_farm_is_in(string zone, Hemisphere? hemisphere) => Some.Farm(zone).Hemisphere.Should().Be(hemisphere);

    private DueBook Book => state.Due(Farm);

    private DueForecast? Due(LocalDate today) => Book.Of(Sage.Id, today);

    private static Instant At(LocalDate day) => Farm.Clock.At(day, new LocalTime(12, 0));

    private void Tell(FactKind kind, LocalDate on) => Tell(new Fact(kind), on);

    private void Tell(Fact fact, LocalDate on) => state = state.Apply(new HerdEvent.FactRecorded(state.NextFact, fact, Sage.Id, At(on), At(on), "Ana"));

    private void Birth(LocalDate on, int n = 1) => state = state.Apply(
        new HerdEvent.FactRecorded(state.NextFact, new Fact(FactKind.Birth) { N = n }, Sage.Id, At(on), At(on), "Ana") { Newborn = new AnimalId($"sage/{n}") });
}
