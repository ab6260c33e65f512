using System.Text.RegularExpressions;
using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Posting;
using HerdBot.Core.Reading;
using HerdBot.Core.Wording;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Architecture;

/// <summary>The phrases: none missing, none idle, none with a dose, and short enough for one eye at four in the morning.</summary>
public sealed class WordingTests
{
    private static readonly Phrases English = Phrases.Of(Language.English);

    public static TheoryData<Language> Languages => [.. Enum.GetValues<Language>()];

    /// <summary>The parts of keys that are put together in the code.</summary>
    private static readonly string[] PutTogether =
        ["noun.", "asked.", "late.", "vet.", "lapsed.", "button.", "fact.", "missing.", "reply.warm.", "why.species.", "season.", "order.", "short.", "post.lapsed."];

    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_language_has_the_same_phrases_with_the_same_blanks(Language language)
    {
        var other = Phrases.Of(language);

        other.Keys.Should().BeEquivalentTo(English.Keys);
        English.Keys.Where(key => !Blanks(other, key).SetEquals(Blanks(English, key))).Should().BeEmpty();
    }

    [Fact]
    public void No_phrase_is_left_in_the_other_language()
    {
        // Words that are the same in both: units, and a full stop of bare blanks.
        string[] same = ["placenta", "No", "IgG {value}", "llama", "alpaca", "{n} min", "{n} h", "{ml} ml", "{oz} fl oz ({ml} ml)"];

        English.Keys.Where(key => Regex.IsMatch(Regex.Replace(English.Raw(key), @"\{\w+\}", ""), @"\p{L}") && English.Raw(key) == Phrases.Of(Language.Spanish).Raw(key))
            .Select(key => English.Raw(key)).Distinct().Should().BeSubsetOf(same);
    }

    [Fact]
    public void Every_phrase_is_used()
    {
        var code = string.Join("\n", ReferenceTests.Files().Select(File.ReadAllText));

        English.Keys.Where(key => !code.Contains($"\"{key}\"") && !PutTogether.Any(key.StartsWith)).Should().BeEmpty();
    }

    [Fact]
    public void A_phrase_that_is_put_together_names_a_task_a_kind_of_fact_or_a_band()
    {
        string[] words = [.. Enum.GetValues<CareTaskName>().Select(CareTaskWords.Word), .. Enum.GetValues<FactKind>().Select(FactWords.Word)];
        string[] besides = ["noun.other", "vet.now", "vet.phone", "vet.phone.none", "vet.sum", "button.other", "button.not_yet", "button.on_it", "button.mend", "button.take_back", "button.keep", "button.yes", "button.no", "fact.unsure", "fact.at", "fact.from_to"];

        English.Keys.Where(key => PutTogether.Any(key.StartsWith) && !key.StartsWith("reply.") && !key.StartsWith("why.") && !key.StartsWith("season.") && !key.StartsWith("order.") && !key.StartsWith("post.") && !words.Contains(key.Split('.')[1])).Should().BeSubsetOf(besides);
    }

    [Fact]
    public void Every_phrase_that_the_code_names_is_there()
    {
        var code = string.Join("\n", ReferenceTests.Files().Select(File.ReadAllText));
        var named = Regex.Matches(code, @"[Pp]hrases\.(?:Say|Is|Words)\(""([a-z_.]+)""").Select(match => match.Groups[1].Value).Distinct().ToList();

        named.Should().HaveCountGreaterThan(30);
        named.Where(key => !English.Has(key)).Should().BeEmpty();
    }

    [Fact]
    public void Every_kind_of_fact_can_be_said() =>
        Enum.GetValues<FactKind>().Where(kind => kind is not (FactKind.Undo or FactKind.Correction) && !FactWords.Word(kind).StartsWith("question"))
            .Where(kind => !English.Has($"fact.{FactWords.Word(kind)}")).Should().BeEmpty();

    [Fact]
    public void Every_task_of_the_plan_has_a_name_and_a_line_for_each_of_its_steps()
    {
        foreach (var task in AllTasks())
        {
            var word = CareTaskWords.Word(task.Key.Name);
            English.Has($"noun.{word}").Should().BeTrue(word);
            foreach (var step in task.Steps)
            {
                var stage = step.Level == Level.Vet ? "vet" : step.State == TaskState.Late ? "late" : "asked";
                English.Has($"{stage}.{word}").Should().BeTrue($"{stage}.{word} is said at step {step.Label} of {task.Key}");
            }
        }
    }

    [Fact]
    public void Every_task_that_the_plan_can_emit_is_tried_here() => AllTasks().Select(task => task.Key.Name).Distinct().Should().BeEquivalentTo(
    [
        CareTaskName.Igg, CareTaskName.Vaccination, CareTaskName.Weaning, CareTaskName.Feed, CareTaskName.Coat, CareTaskName.Udder, CareTaskName.Rejection, CareTaskName.DamCheck,
        CareTaskName.DamBleeding, CareTaskName.Prolapse, CareTaskName.DamColic, CareTaskName.VetToday, CareTaskName.Rebreed,
        CareTaskName.LookOver, CareTaskName.Weak, CareTaskName.CordDip, CareTaskName.CordWatch, CareTaskName.Temperature, CareTaskName.Warm, CareTaskName.Standing,
        CareTaskName.Nursing, CareTaskName.Colostrum, CareTaskName.Meconium, CareTaskName.Urine, CareTaskName.Weight, CareTaskName.DayLook, CareTaskName.Labour,
        CareTaskName.Presentation, CareTaskName.DamLook, CareTaskName.Placenta, CareTaskName.LookIn,
    ]);

    [Theory]
    [MemberData(nameof(Languages))]
    public void No_phrase_holds_a_dose(Language language)
    {
        // An amount with a unit may stand there for the strength of a disinfectant, a length of cord, a pinch of time; never in ml, mg, g, IU, units or drops.
        // Weights of the examples, shares and "nothing yet" are no doses.
        var texts = Phrases.Of(language).Keys.Select(key => Phrases.Of(language).Raw(key)).ToList();
        var amounts = texts.SelectMany(text => Regex.Matches(text, @"\d[\d.,-]*\s*(?:%|\p{L}+)").Select(match => match.Value.Trim()));

        amounts.Select(amount => Regex.Replace(amount, @"\s+", " ")).Distinct().Should().BeSubsetOf(
            ["0.5 %", "5 min", "2-3 cm", "15 min", "6:40", "40, 24 lb", "24 lb", "4 instead", "40", "4", "30", "30 s", "1 to", "1 a", "20 de", "0,5 %", "9,8 kg", "7,8 kg", "17 lb", "0 ml", "7 days", "7 días", "100 carry", "10 that", "100 tardan", "100 llevan", "10 están"]);
        texts.Should().NotContain(text => Regex.IsMatch(text, @"\b(mg|mcg|iu|ui|units?|unidades|drops|gotas|cc|inject|inyect\w*|dose|dosis)\b", RegexOptions.IgnoreCase) && !text.Contains("which unit"));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void No_phrase_cheers_or_shouts(Language language) =>
        Phrases.Of(language).Keys.Where(key => Phrases.Of(language).Raw(key).IndexOfAny(['!', '¡']) >= 0).Should().BeEmpty();

    [Fact]
    public void A_question_in_Spanish_begins_with_its_mark() =>
        Phrases.Of(Language.Spanish).Keys.Where(key => Phrases.Of(Language.Spanish).Raw(key) is var text && text.Count(c => c == '?') != text.Count(c => c == '¿')).Should().BeEmpty();

    [Theory]
    [MemberData(nameof(Languages))]
    public void An_alarm_fits_in_three_hundred_characters_and_a_reminder_too(Language language)
    {
        var yard = new Farmyard(Some.Farm() with { Language = language });
        yard.Say("06:45", Some.Birth("06:40"));
        yard.Say("07:30", Some.Temperature(94.1));
        yard.RunTo("20 12:00");

        yard.Posts.Where(post => post.Kind == PostKind.Alarm).Should().OnlyContain(post => post.Text.Length <= 300);
        yard.Posts.Where(post => post.Kind == PostKind.Reminder).Should().OnlyContain(post => post.Text.Length <= 300);
    }

    [Fact]
    public void A_value_is_put_in_as_it_is_and_never_read_as_a_phrase() =>
        English.Say("reply.receipt", ("animal", "{facts}"), ("facts", "{animal} {{")).Should().Be("{facts}: {animal} {{.");

    private static readonly string[] BabyTroubles =
    [
        NoteTopics.Breathing, NoteTopics.GraveDefect, NoteTopics.Defect, NoteTopics.Strains, NoteTopics.Scours, NoteTopics.Joint, NoteTopics.Navel, NoteTopics.OffMilk,
        NoteTopics.Early, NoteTopics.CoatOn, NoteTopics.ByHand,
    ];

    private static readonly string[] DamTroubles =
        [NoteTopics.Bleeds, NoteTopics.Prolapse, NoteTopics.Colic, NoteTopics.DamIll, NoteTopics.Infection, NoteTopics.NoMilk, NoteTopics.Rejects];

    private static HashSet<string> Blanks(Phrases phrases, string key) =>
        [.. Regex.Matches(phrases.Raw(key), @"\{(\w+)\}").Select(match => match.Groups[1].Value)];

    private static List<CareTask> AllTasks()
    {
        var yard = new Farmyard();
        yard.Say("06:00", Some.Fact(FactKind.LabourSign, "Willow") with { Field = NoteTopics.Labour }, Some.Fact(FactKind.WaterBroke, "Willow"), Some.Note(NoteTopics.DamIll, "Sage"));
        yard.Say("06:45", Some.Birth("06:40"), Some.Note(NoteTopics.Weak), Some.Fact(FactKind.CordBleeding));
        var tasks = yard.PlanAt("06:45").ToList();
        yard.Say("07:00", Some.Temperature(97), Some.Fact(FactKind.CordBleeding) with { Neg = true }, Some.Fact(FactKind.CordDip));
        tasks.AddRange(yard.PlanAt("08:30"));
        yard.Say("08:31", Some.Temperature(99.4), Some.Fact(FactKind.Nursing));
        yard.Say("08:45", Some.Temperature(99.8));
        tasks.AddRange(yard.PlanAt("08:46"));
        yard.Say("10:46", Some.Temperature(103.4), Some.Weight(6.4));
        yard.Say("10:50", [.. BabyTroubles.Select(topic => Some.Note(topic)), .. DamTroubles.Select(topic => Some.Note(topic, "Sage")), Some.Fact(FactKind.Assistance, "Sage"),
            Some.Fact(FactKind.Igg) with { Value = 640, Unit = FactUnit.MgPerDl }, Some.Fact(FactKind.Placenta, "Sage") with { Field = NoteTopics.Torn },
            Some.Note(NoteTopics.Order) with { Text = "vet says check her feet twice a day for 2 days" }]);
        tasks.AddRange(yard.PlanAt("10:46"));
        tasks.AddRange(yard.PlanAt("19 08:00"));
        var mated = new Farmyard();
        mated.Say("05:00", Some.Fact(FactKind.Breeding, "Sage") with { At = new FactTime(Some.Day.PlusDays(-380), null) }, Some.Fact(FactKind.Breeding, "Willow") with { At = new FactTime(Some.Day.PlusDays(-320), null) });
        tasks.AddRange(mated.PlanAt("06:00"));
        return tasks;
    }
}
