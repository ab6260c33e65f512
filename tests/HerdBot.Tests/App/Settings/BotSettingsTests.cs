using FluentAssertions;
using HerdBot.App.Settings;
using HerdBot.Core.Care;
using HerdBot.Core.Herd;
using HerdBot.Tests.Architecture;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Settings;

/// <summary>A settings file is whole, or every problem is told at once in plain words.</summary>
public sealed class BotSettingsTests
{
    [Theory]
    [InlineData("", "The settings file is not whole JSON: line 1*")]
    [InlineData("{ \"farm\": { \"zone\": ", "The settings file is not whole JSON: line 1*A brace, a quote or a comma is missing there or just before.")]
    [InlineData("[]", "The settings file must hold one object in braces.")]
    [InlineData("{}", "farm is missing.")]
    [InlineData("""{"farm":7}""", "farm must be an object in braces.")]
    [InlineData("""{"farm":{}}""", "farm.zone is missing; write the farm's time zone, like \"America/Denver\".")]
    [InlineData("""{"farm":{"zone":"Denver"}}""", "farm.zone is 'Denver', which is no time zone; write one like \"America/Denver\".")]
    [InlineData("""{"farm":{"zone":7}}""", "farm.zone must be text in quotes.")]
    [InlineData("""{"farm":{"zone":"UTC","units":"imperial"}}""", "farm.units is 'imperial'; it must be 'us' or 'metric'.")]
    [InlineData("""{"farm":{"zone":"UTC","herd":[{"role":"dam"}]}}""", "farm.herd[1].name is missing.")]
    [InlineData("""{"farm":{"zone":"UTC","herd":"Sage"}}""", "farm.herd must be a list of objects in braces.")]
    [InlineData("""{"farm":{"zone":"UTC","herd":[{"name":"Sage"},{"name":"sage"}]}}""", "farm.herd names Sage twice.")]
    [InlineData("""{"farm":{"zone":"UTC","words":{"slurpy":"nursin"}}}""", "farm.words cannot stand: 'slurpy' is to mean 'nursin', which is no meaning; there are *")]
    [InlineData("""{"farm":{"zone":"UTC","words":{"up":"nursing"}}}""", "farm.words cannot stand: 'up' is to mean 'nursing', but it means 'standing' already.")]
    [InlineData("""{"farm":{"zone":"UTC","words":{"Sage":"nursing"},"herd":[{"name":"Sage"}]}}""", "farm.words cannot stand: 'Sage' is an animal's name.")]
    [InlineData("""{"farm":{"zone":"UTC","words":{"slurpy":7}}}""", "farm.words.slurpy must be text in quotes.")]
    [InlineData("""{"farm":{"zone":"UTC","nicknames":{"Fern":"Sage"},"herd":[{"name":"Sage"},{"name":"Fern"}]}}""", "farm.nicknames cannot stand: 'Fern' is to be Sage, but Fern bears that name.")]
    [InlineData("""{"farm":{"zone":"UTC","people":[{"owner":true}]}}""", "farm.people[1].name is missing.")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"vetMinutes":"ten"}}""", "care.vetMinutes must be a whole number from 0 to 300.")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"vetMinutes":301}}""", "care.vetMinutes must be a whole number from 0 to 300.")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"iggTest":"yes"}}""", "care.iggTest must be true or false.")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"quietHours":["22:00"]}}""", "care.quietHours must be 2 times like [\"22:00\", \"06:00\"].")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"quietHours":["22:00","25:00"]}}""", "care.quietHours must be 2 times like [\"22:00\", \"06:00\"].")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"roundUps":"07:00"}}""", "care.roundUps must be a list of times like [\"07:00\"].")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"numbers":{"standing.late":45}}}""", "care.numbersBy is missing: name the vet whose numbers these are.")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"numbersBy":"Dr. Hale","numbers":{"standing.late":"soon"}}}""", "care.numbers.standing.late must be a number.")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"numbersBy":"Dr. Hale","numbers":{"standing.later":45}}}""", "care.numbers cannot stand: The care table knows no standing.later.")]
    [InlineData("""{"farm":{"zone":"UTC"},"care":{"numbersBy":"Dr. Hale","numbers":{"standing.late":1}}}""", "care.numbers cannot stand: standing.late is 1; it must be from 20 to 360 min.")]
    [InlineData("""{"farm":{"zone":"UTC"},"server":"localhost"}""", "server must be an address like \"http://127.0.0.1:8081\".")]
    [InlineData("""{"farm":{"zone":"UTC"},"tokn":"x"}""", "tokn is no setting; known here are *token.")]
    [InlineData("""{"farm":{"zone":"UTC","vetPhone":"1"}}""", "farm.vetPhone is no setting; known here are *")]
    public void A_bad_file_is_refused_with_a_plain_sentence(string text, string problem)
    {
        var (settings, problems) = BotSettings.Read(text);

        settings.Should().BeNull();
        problems.Should().ContainSingle().Which.Should().Match(problem);
    }

    [Fact]
    public void All_problems_are_told_at_once()
    {
        var (_, problems) = BotSettings.Read("""{"farm":{"zone":"Denver","units":"imperial","sped":1,"herd":[{"name":"Sage","role":"cow"}]},"care":{"vetMinutes":-1},"tokn":"x"}""");

        problems.Should().HaveCount(6);
        problems.Should().OnlyContain(problem => problem.EndsWith('.') && !problem.Contains("Exception"));
    }

    [Fact]
    public void A_number_that_only_an_alpaca_cannot_have_is_told_too()
    {
        var (_, problems) = BotSettings.Read("""{"farm":{"zone":"UTC"},"care":{"numbersBy":"Dr. Hale","numbers":{"due.early_watch":347}}}""");

        problems.Should().ContainSingle().Which.Should().Contain("due must rise");
    }

    [Fact]
    public void The_least_file_will_do()
    {
        var (settings, problems) = BotSettings.Read("""{"farm":{"zone":"America/Denver"}}""");

        problems.Should().BeEmpty();
        settings!.Setup.Farm.RoundUps.Should().Equal(new LocalTime(7, 0), new LocalTime(19, 0));
        settings.Token.Should().BeNull();
        settings.Warnings().Should().Contain("care.vetPhone is missing: alarms will say 'phone the vet' without a number.");
    }

    [Fact]
    public void The_care_part_is_taken_over()
    {
        var (settings, _) = BotSettings.Read("""
            {"farm":{"zone":"America/Denver","species":"alpaca","people":[{"name":"Ben"},{"name":"Ana","owner":true}]},
             "care":{"vetPhone":" 555 0134 ","vetMinutes":25,"quietHours":["21:00","05:30"],"roundUps":["12:00"],"numbersBy":"Dr. Hale","numbers":{"standing.late":45}}}
            """);

        var farm = settings!.Setup.Farm;
        (farm.VetPhone, farm.VetDrive, farm.People[0], farm.Species).Should().Be(("555 0134", Duration.FromMinutes(25), "Ana", Species.Alpaca));
        farm.QuietHours.Should().Be(new HerdBot.Core.Calendar.DaySpan(new LocalTime(21, 0), new LocalTime(5, 30)));
        farm.TableOf(Species.Llama)!.Number(CareKeys.StandingLate).Should().Be(45);
        farm.TableOf(Species.Llama)!.Source(CareKeys.StandingLate).Should().Be("Dr. Hale");
    }

    [Fact]
    public void The_example_file_is_valid_as_it_stands()
    {
        var (settings, problems) = BotSettings.Read(File.ReadAllText(Path.Combine(ReferenceTests.Root(), "bot.settings.example.json")));

        problems.Should().BeEmpty();
        settings!.Warnings().Should().BeEmpty();
    }
}
