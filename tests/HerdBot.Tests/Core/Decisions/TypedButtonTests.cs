using FluentAssertions;
using HerdBot.Core.Care;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using HerdBot.Core.Reading;
using HerdBot.Tests.Support;
using Xunit;

namespace HerdBot.Tests.Core.Decisions;

/// <summary>A button's words, typed, do what the button does: in the farm's language and in the other.</summary>
public sealed class TypedButtonTests
{
    [Theory]
    [InlineData("07:10", CareTaskName.Standing, FactKind.Standing, "Se paró", "Standing")]
    [InlineData("07:40", CareTaskName.Nursing, FactKind.Nursing, "Ya mamó", "Nursing")]
    [InlineData("18:40", CareTaskName.Meconium, FactKind.Meconium, "Ya hizo", "Passed")]
    [InlineData("18:40", CareTaskName.Urine, FactKind.Urine, "Ya orinó", "Peed")]
    [InlineData("08:40", CareTaskName.Placenta, FactKind.Placenta, "Ya salió", "Out")]
    [InlineData("07:40", CareTaskName.DamLook, FactKind.Done, "Todo bien", "All well")]
    [InlineData("07:10", CareTaskName.LookOver, FactKind.Done, "Ya miré", "Looked over")]
    public void What_the_button_of_a_post_says_can_be_written_in_answer_to_it(string at, CareTaskName task, FactKind kind, params string[] words)
    {
        foreach (var (word, language) in words.SelectMany(word => Enum.GetValues<Language>().Select(language => (word, language))))
        {
            var yard = Born(language);
            yard.RunTo(at);
            var post = yard.Posts.Last(post => post.Edits is null && post.Tasks.Any(told => told.Key.Name == task));

            yard.Write("Ben", at, word, post);

            Newest(yard).Fact.Kind.Should().Be(kind, $"'{word}' was written on a farm that speaks {language}");
            Newest(yard).Fact.Task.Should().Be(kind == FactKind.Done ? CareTaskWords.Word(task) : null);
        }
    }

    [Theory]
    [InlineData("Todavía no", FactKind.NotDone)]
    [InlineData("todavia no", FactKind.NotDone)]
    [InlineData("Not yet", FactKind.NotDone)]
    [InlineData("Voy yo", FactKind.Claim)]
    [InlineData("On it", FactKind.Claim)]
    public void Not_yet_and_on_it_can_be_written_in_either_language(string words, FactKind kind)
    {
        foreach (var language in Enum.GetValues<Language>())
        {
            var yard = Born(language);
            yard.RunTo("07:40");
            var post = yard.Posts.Last(post => post.Tasks.Any(told => told.Key.Name == CareTaskName.Nursing));
            yard.Write("Ben", "07:41", words, post);

            Newest(yard).Fact.Should().Match<Fact>(fact => fact.Kind == kind && fact.Task == CareTaskWords.Word(post.Tasks[0].Key.Name), $"'{words}' was written on a farm that speaks {language}");
        }
    }

    [Fact]
    public void Without_a_reply_the_words_count_where_only_one_open_task_has_such_a_button()
    {
        var yard = new Farmyard(Some.Farm() with { Language = Language.Spanish });
        yard.Say("06:00", Some.Fact(FactKind.LabourSign, "Willow") with { Field = NoteTopics.Labour });
        yard.Write("Ben", "06:05", "Se le pasó");

        Newest(yard).Fact.Should().Match<Fact>(fact => fact.Kind == FactKind.Done && fact.Task == "labour" && fact.Animal == "Willow");
    }

    [Fact]
    public void Words_of_no_button_record_nothing()
    {
        var yard = Born(Language.Spanish);
        yard.RunTo("07:40");
        var records = yard.State.Records.Count;
        yard.Write("Ben", "07:41", "Se le pasó");
        yard.Write("Ben", "07:42", "qué linda", yard.Posts[^1]);

        yard.State.Records.Should().HaveCount(records);
    }

    [Theory]
    [InlineData(Language.English, "Not right")]
    [InlineData(Language.English, "está mal")]
    [InlineData(Language.Spanish, "Está mal")]
    [InlineData(Language.Spanish, "not right")]
    public void A_receipt_is_mended_by_the_words_of_its_button_too(Language language, string words)
    {
        var yard = new Farmyard(Some.Farm() with { Language = language });
        var receipt = yard.Say("06:45", Some.Birth("06:40"))[0];
        var asked = yard.Write("Ben", "06:46", words, receipt);

        asked.Should().ContainSingle().Which.Buttons.Select(button => button.Verb).Should().Equal(ButtonVerb.TakeBack, ButtonVerb.Keep);
    }

    [Theory]
    [InlineData("Sí", true)]
    [InlineData("si", true)]
    [InlineData("yes", true)]
    [InlineData("No", false)]
    public void A_grave_thing_is_confirmed_in_either_language(string words, bool recorded)
    {
        foreach (var language in Enum.GetValues<Language>())
        {
            var yard = Born(language);
            yard.SayBy("Ben", "08:00", "murió", Ask.Sure, Some.Fact(FactKind.Death));
            yard.Write("Cleo", "08:01", words);

            yard.State.Records.Any(record => record.Fact.Kind == FactKind.Death).Should().Be(recorded);
        }
    }

    [Theory]
    [InlineData("la cría de Fern")]
    [InlineData("La cria de fern.")]
    [InlineData("cría de Fern")]
    [InlineData("la de Fern")]
    [InlineData("Fern's baby")]
    [InlineData("Fern's")]
    public void Which_animal_is_answered_in_either_language(string words)
    {
        var yard = new Farmyard(Some.Farm() with { Language = Language.Spanish }, "05:00", Some.Dam("Sage"), Some.Dam("Fern"));
        yard.Say("06:45", Some.Birth("06:40"), Some.Birth("06:41", "Fern"));
        var question = yard.SayBy("Ben", "08:00", "10,4 kg", Ask.Animal, Some.Weight(10.4, animal: Fact.AskAnimal));
        yard.Write("Ben", "08:01", words);

        question[0].Text.Should().Be("10.4 kg: ¿de qué animal?");
        question[0].Buttons.Select(button => button.Label).Should().BeEquivalentTo("La cría de Sage", "La cría de Fern");
        yard.State.Records.Single(record => record.Fact.Kind == FactKind.Weight).Animal.Should().Be(yard.State.Named("Fern's baby")!.Id);
    }

    private static Farmyard Born(Language language)
    {
        var yard = new Farmyard(Some.Farm() with { Language = language });
        yard.Say("06:45", Some.Birth("06:40"));
        return yard;
    }

    private static HerdRecord Newest(Farmyard yard) => yard.State.Records[^1];
}
