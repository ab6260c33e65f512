using HerdBot.Core.Reading;

namespace HerdBot.App.Access;

/// <summary>All that the bot says about access, in one language.</summary>
public sealed record AccessWords
{
    /// <summary>To the new owner.</summary>
    public required string Welcome { get; init; }
    /// <summary>To the owner, where there is no group to work in yet.</summary>
    public required string AddMe { get; init; }
    /// <summary>To the owner, where a private message could belong to several groups.</summary>
    public required string WhichGroup { get; init; }
    /// <summary>To somebody with a code that is wrong, spent or too old.</summary>
    public required string BadCode { get; init; }
    /// <summary>To somebody who is nobody here.</summary>
    public required string Outsider { get; init; }
    /// <summary>To a group the owner has not agreed to.</summary>
    public required string Waits { get; init; }
    /// <summary>To a group the bot starts to work in.</summary>
    public required string Begins { get; init; }
    /// <summary>To the owner: {0} is the group, {1} who brought the bot there.</summary>
    public required string MayI { get; init; }
    /// <summary>The button that agrees.</summary>
    public required string Approve { get; init; }
    /// <summary>The button that does not.</summary>
    public required string Refuse { get; init; }
    /// <summary>To the owner: the bot works in {0}.</summary>
    public required string Approved { get; init; }
    /// <summary>To the owner: the bot stays silent in {0}.</summary>
    public required string Refused { get; init; }
    /// <summary>A group whose title is not known.</summary>
    public required string SomeGroup { get; init; }

    /// <summary>The words of a language.</summary>
    public static AccessWords Of(Language language) => language == Language.Spanish ? Spanish : English;

    private static AccessWords English { get; } = new()
    {
        Welcome = "You are the owner now. Add me to the farm's group and I start there.",
        AddMe = "Add me to the farm's group; I work there.",
        WhichGroup = "I work in several groups. Write in the one you mean.",
        BadCode = "That code is not good, or not any more. Start the bot again for a new one.",
        Outsider = "This bot works for one farm. Nothing is done with what is written here.",
        Waits = "Nothing is recorded here until the farm's owner agrees.",
        Begins = "I keep the birth log here. Write as you talk: 'Juniper had a boy 5:20, 17 lb'.",
        MayI = "May I work in {0}? Brought there by {1}. Until you say so I record nothing.",
        Approve = "Approve",
        Refuse = "Refuse",
        Approved = "I work in {0} from now on.",
        Refused = "I stay silent in {0}.",
        SomeGroup = "a group without a title",
    };

    private static AccessWords Spanish { get; } = new()
    {
        Welcome = "Ahora eres quien manda aquí. Añádeme al grupo de la granja y empiezo allí.",
        AddMe = "Añádeme al grupo de la granja; trabajo allí.",
        WhichGroup = "Trabajo en varios grupos. Escribe en el que corresponda.",
        BadCode = "Ese código no vale, o ya no. Reinicia el bot para tener uno nuevo.",
        Outsider = "Este bot trabaja para una sola granja. Lo que se escriba aquí no se usa.",
        Waits = "Aquí no se anota nada hasta que el dueño de la granja lo apruebe.",
        Begins = "Aquí llevo el registro de partos. Escribe como hablas: 'Juniper tuvo un macho 5:20, 7,8 kg'.",
        MayI = "¿Puedo trabajar en {0}? Me añadió {1}. Hasta que lo digas no anoto nada.",
        Approve = "Aprobar",
        Refuse = "Rechazar",
        Approved = "Desde ahora trabajo en {0}.",
        Refused = "En {0} me quedo callado.",
        SomeGroup = "un grupo sin título",
    };
}
