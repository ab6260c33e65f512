using System.Globalization;
using HerdBot.App.Messages;
using HerdBot.Core.Herd;
using HerdBot.Core.Wording;
using HerdBot.Host.Rehearsal;
using NodaTime;

namespace HerdBot.Host.Terminal;

/// <summary>Takes typed lines to the program until the end.</summary>
/// <param name="house">The program, started.</param>
/// <param name="screen">Where all is shown.</param>
/// <param name="farm">The farm; its first person speaks first.</param>
/// <param name="clock">The farm's clock.</param>
/// <param name="mark">Sets this session's messages apart from those of earlier ones on the same data.</param>
internal sealed class TrySession(PlainHouse house, ChatScreen screen, Farm farm, TimeProvider clock, string mark)
{
    private readonly Phrases phrases = Phrases.Of(farm.Language);
    private readonly HashSet<string> people = [.. farm.People];
    private string speaker = farm.People[0];
    private int messages;

    /// <summary>Runs until the lines end, somebody quits or it is told to stop.</summary>
    public async Task RunAsync(ITypedLines lines, CancellationToken stop)
    {
        while (await lines.NextAsync(speaker, stop) is { } line)
        {
            var typed = TypedLine.Read(line, speaker, people, [.. house.State.Animals.Select(animal => animal.Name)]);
            speaker = typed.By;
            people.Add(typed.By);
            if (typed is TypedLine.Quit)
            {
                break;
            }
            await TakeAsync(typed, stop);
        }
        await house.SettleAsync(stop);
    }

    private async Task TakeAsync(TypedLine typed, CancellationToken stop)
    {
        switch (typed)
        {
            case TypedLine.Said said:
                var key = Key();
                await HearAsync(new Inbound.Line(key, PlainHouse.Group, Who(said.By), Now, key, said.Text, null), stop);
                break;
            case TypedLine.Tapped tapped:
                await TapAsync(tapped, stop);
                break;
            case TypedLine.Unclear:
                screen.Note(phrases.Say("try.tap"));
                break;
            case TypedLine.Time:
                screen.Note(phrases.Say("try.time", ("time", screen.Time)));
                break;
            case TypedLine.Help:
                screen.Announce(phrases.Say("try.help"));
                break;
        }
    }

    private async Task TapAsync(TypedLine.Tapped tapped, CancellationToken stop)
    {
        switch (screen.Buttons)
        {
            case null:
                screen.Note(phrases.Say("try.no_buttons"));
                break;
            case { } shown when shown[tapped.Number] is { } button:
                await HearAsync(new Inbound.Tap(Key(), PlainHouse.Group, Who(tapped.Presser), Now, button.Data), stop);
                break;
            case { } shown:
                screen.Note(phrases.Say("try.no_such_button", ("n", tapped.Number.ToString(CultureInfo.InvariantCulture)), ("buttons", shown.ToString())));
                break;
        }
    }

    private Task HearAsync(Inbound inbound, CancellationToken stop)
    {
        screen.Hear(inbound);
        return house.HearAsync(inbound, stop);
    }

    private string Key() => string.Create(CultureInfo.InvariantCulture, $"{mark}/{++messages}");

    private Instant Now => Instant.FromDateTimeOffset(clock.GetUtcNow());

    private static Person Who(string name) => new("name:" + name, name);
}
