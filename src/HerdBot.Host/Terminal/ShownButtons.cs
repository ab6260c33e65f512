using System.Collections.Immutable;
using System.Globalization;
using HerdBot.App.Ports;

namespace HerdBot.Host.Terminal;

/// <summary>The buttons that a post shows, pressed by their number from 1.</summary>
/// <param name="Message">The chat's id of the post.</param>
/// <param name="Buttons">At least one.</param>
internal sealed record ShownButtons(string Message, ImmutableArray<PostButton> Buttons)
{
    /// <summary>The button of a number; null where there is none.</summary>
    public PostButton? this[int number] => number >= 1 && number <= Buttons.Length ? Buttons[number - 1] : null;

    /// <summary>"1 Standing · 2 Not yet · 3 On it".</summary>
    public override string ToString() =>
        string.Join(" · ", Buttons.Select((button, index) => string.Create(CultureInfo.InvariantCulture, $"{index + 1} {button.Label}")));
}
