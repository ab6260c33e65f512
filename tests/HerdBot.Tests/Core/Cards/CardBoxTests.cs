using FluentAssertions;
using HerdBot.Core.Cards;
using Xunit;

namespace HerdBot.Tests.Core.Cards;

/// <summary>The questions that people ask around a birth find their card, in both languages, with slips of the thumb too.</summary>
public sealed class CardBoxTests
{
    /// <summary>What keepers ask on public question pages and in diaries, said anew here.</summary>
    public static TheoryData<string, string> Questions => new()
    {
        { "signs", "Is she in labour or just uncomfortable?" },
        { "pushing", "How long may she push with nothing showing before I step in?" },
        { "right_way", "What should come first?" },
        { "wrong_way", "I see one foot. What now?" },
        { "wrong_way", "I see only a head. What now?" },
        { "wrong_way", "I can see a tail. What now?" },
        { "pulling", "When should I pull, and how?" },
        { "waters", "Her waters broke and nothing has happened. How long is too long?" },
        { "late_birth", "Is an afternoon or night birth a bad sign?" },
        { "first_minutes", "What do I do in the first ten minutes, and what do I leave alone?" },
        { "standing", "How soon should it sit up and stand?" },
        { "first_drink", "How soon should it nurse, and when is that too late?" },
        { "getting_milk", "How can I tell it is really getting milk?" },
        { "help_nurse", "It searches the wall or the wrong end. How do I help?" },
        { "navel_dip", "What do I dip the navel in, when, and how often?" },
        { "cord_bleeding", "The cord bleeds, what do I do?" },
        { "navel_lump", "There is a lump at the navel. Is that a hernia?" },
        { "placenta", "When should the placenta pass, and what if it hangs?" },
        { "temperature", "What temperature is normal and what is too cold?" },
        { "warm_first", "It is cold: warm it first, or feed it first?" },
        { "colostrum", "How much colostrum, how soon, from what animal?" },
        { "tube", "How do I tube feed, and when should I not?" },
        { "bottle", "How much and how often by bottle?" },
        { "weight", "What should it weigh and how fast should it gain?" },
        { "igg", "When is blood tested for antibodies, and what is low?" },
        { "meconium", "When must meconium pass, and when an enema?" },
        { "pregnant", "How do I know she is pregnant and when is she due?" },
        { "rejects", "She rejects it. What now?" },
        { "no_milk", "She has no milk. What now?" },
        { "kit", "what goes in the kit?" },
        { "pen", "pen them or leave them out?" },
        { "coat", "coat or no coat?" },
        { "early", "how early is too early?" },
        { "rebreed", "when to rebreed?" },
        { "dead_cria", "what to do with a dead cria while she mourns?" },
        { "warming", "how do I warm her?" },
        { "vet", "when do I call the vet?" },
        { "signs", "¿Está de parto o solo incómoda?" },
        { "pushing", "¿Cuánto puede pujar sin que se vea nada antes de que yo haga algo?" },
        { "right_way", "¿Qué debe salir primero?" },
        { "wrong_way", "Se ve una sola mano, ¿qué hago?" },
        { "wrong_way", "Asoma la cola, ¿y ahora?" },
        { "pulling", "¿Cuándo debo jalar, y cómo?" },
        { "waters", "Rompió aguas y no pasó nada. ¿Cuánto es demasiado?" },
        { "late_birth", "¿Es mala señal que nazca de tarde o de noche?" },
        { "first_minutes", "¿Qué hago en los primeros diez minutos y qué dejo tranquilo?" },
        { "standing", "¿En cuánto tiempo debe sentarse y pararse?" },
        { "first_drink", "¿Cuándo debe mamar, y cuándo es demasiado tarde?" },
        { "getting_milk", "¿Cómo sé si de verdad está tomando leche?" },
        { "help_nurse", "Busca la teta en la pared. ¿Cómo la ayudo?" },
        { "navel_dip", "¿Con qué le curo el ombligo, y cada cuánto?" },
        { "cord_bleeding", "El cordón sangra, ¿qué hago?" },
        { "navel_lump", "Tiene un bulto en el ombligo. ¿Es una hernia?" },
        { "placenta", "¿Cuándo debe botar la placenta, y si cuelga?" },
        { "temperature", "¿Qué temperatura es normal y cuál es demasiado fría?" },
        { "warm_first", "Está fría: ¿la caliento primero o le doy de comer?" },
        { "colostrum", "¿Cuánto calostro, qué tan pronto y de qué animal?" },
        { "tube", "¿Cómo le paso la sonda, y cuándo no?" },
        { "bottle", "¿Cuánta mamadera y cada cuánto?" },
        { "weight", "¿Cuánto debe pesar y cuánto debe ganar?" },
        { "igg", "¿Cuándo se hace el análisis de anticuerpos, y qué es bajo?" },
        { "meconium", "¿Cuándo debe hacer el meconio, y cuándo un enema?" },
        { "pregnant", "¿Cómo sé si está preñada y para cuándo es?" },
        { "rejects", "La rechaza, ¿y ahora?" },
        { "no_milk", "No tiene leche, ¿qué hago?" },
        { "kit", "¿qué va en el botiquín?" },
        { "pen", "¿las encierro o las dejo afuera?" },
        { "coat", "¿con abrigo o sin abrigo?" },
        { "early", "¿cuánto es demasiado temprano?" },
        { "rebreed", "¿cuándo la puedo volver a servir?" },
        { "dead_cria", "¿qué hago con la cría muerta?" },
        { "warming", "¿cómo la caliento?" },
        { "vet", "¿cuándo llamo al veterinario?" },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public void A_question_finds_its_card(string card, string question) => (CardBox.Default.Find(question)?.Id).Should().Be(card);

    [Theory]
    [MemberData(nameof(Questions))]
    public void A_question_with_two_letters_swapped_in_a_long_word_finds_it_too(string card, string question)
    {
        foreach (var typed in Slipped(question))
        {
            (CardBox.Default.Find(typed)?.Id).Should().Be(card, typed);
        }
    }

    [Theory]
    [InlineData("warming", "she's freezing, how can I get her warmer, lamp?")]
    [InlineData("bottle", "how many ounces in a bottle for an orphan")]
    [InlineData("placenta", "afterbirth still hanging out of her, what do we do")]
    [InlineData("vet", "should we ring the vet")]
    [InlineData("kit", "what supplies should I have ready")]
    [InlineData("people", "can my pregnant wife help?")]
    [InlineData("colostrum", "can I thaw colostrum in the microwave")]
    [InlineData("overdue", "she is two weeks past due now what")]
    [InlineData("weak", "baby is limp and won't suck")]
    [InlineData("navel_dip", "which iodine for the cord")]
    [InlineData("standing", "it's still wobbly and not standing, normal?")]
    [InlineData("heat", "how to keep them cool on a hot day")]
    [InlineData("weaning", "at what age do you wean")]
    [InlineData("warming", "está helada, ¿le pongo la lámpara?")]
    [InlineData("bottle", "cuánta leche le doy a una guacha")]
    [InlineData("placenta", "todavía le cuelga la placenta")]
    [InlineData("people", "¿puede ayudar una embarazada?")]
    [InlineData("igg", "¿cuándo saco sangre para los anticuerpos?")]
    [InlineData("weaning", "¿a qué edad se desteta?")]
    public void Other_words_for_it_find_it(string card, string question) => (CardBox.Default.Find(question)?.Id).Should().Be(card);

    [Theory]
    [InlineData("who is bringing the hay?")]
    [InlineData("anyone seen my hat?")]
    [InlineData("¿quién trae el pan?")]
    [InlineData("how do I fix the tractor?")]
    public void What_no_card_is_about_finds_none(string question) => CardBox.Default.Find(question).Should().BeNull();

    private static IEnumerable<string> Slipped(string question)
    {
        var words = question.Split(' ');
        for (var i = 0; i < words.Length; i++)
        {
            if (words[i].Count(char.IsLetter) >= 7)
            {
                var typed = words[i].ToCharArray();
                (typed[3], typed[4]) = (typed[4], typed[3]);
                yield return string.Join(' ', [.. words[..i], new string(typed), .. words[(i + 1)..]]);
            }
        }
    }
}
