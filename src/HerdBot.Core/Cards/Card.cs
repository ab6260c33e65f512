namespace HerdBot.Core.Cards;

/// <summary>How something is done, on one card: what to do, what to be careful about, and who says so.</summary>
/// <param name="Id">Its name in the file.</param>
/// <param name="Sources">Publications that the card rests on, or that it is common practice.</param>
/// <param name="English">The card in English.</param>
/// <param name="Spanish">The card in Spanish.</param>
public sealed record Card(string Id, string Sources, CardText English, CardText Spanish);

/// <summary>A card in one language. Numbers of the care table stand in braces by their key and are filled in when it is shown.</summary>
/// <param name="Title">What it is about.</param>
/// <param name="Text">What to do.</param>
/// <param name="Caution">What can hurt an animal or a person.</param>
/// <param name="Words">What people ask with: each entry one or more words that must all be there; <c>a|b</c> either, <c>a*</c> a beginning.</param>
public sealed record CardText(string Title, string Text, string Caution, IReadOnlyList<string> Words);
