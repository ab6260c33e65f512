using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Herd;
using HerdBot.Host.Rehearsal;
using HerdBot.Host.Telegram;
using NodaTime;

namespace HerdBot.Tests.Host.Program;

/// <summary>A program on Telegram's stand-in that a script is played on: what the script says is written, edited and pressed there.</summary>
internal sealed class ScriptedLife(ProgramRig rig, Dictionary<string, int> written) : IRehearsalLife
{
    private const string Posts = "post ";

    public GroupId Group => rig.Stream;

    public HerdState State => rig.State;

    public IHerdStore Store => rig.Life.Store;

    public Task HearAsync(Inbound inbound)
    {
        switch (inbound)
        {
            case Inbound.Line line:
                written[line.MessageId] = rig.Fake.Say(rig.Group, rig.Person(line.From.Name), line.Text, ReplyTo(line.ReplyTo));
                break;
            case Inbound.Edit edit:
                rig.Fake.Edit(rig.Group, written[edit.MessageId], edit.Text);
                break;
            case Inbound.Tap tap when ButtonData.TryRead(tap.Data, out var post, out _, out _):
                rig.Fake.Press(rig.Group, MessageOf(post), tap.Data, rig.Person(tap.From.Name));
                break;
        }
        return rig.Life.SettleAsync();
    }

    public Task RunToAsync(Instant target) => rig.Life.RunToAsync(target);

    public Task CutAsync() => rig.CutAsync();

    public Task EndAsync() => Task.CompletedTask;

    private int? ReplyTo(string? meant) => meant is null ? null
        : meant.StartsWith(Posts, StringComparison.Ordinal) ? MessageOf(int.Parse(meant[Posts.Length..], System.Globalization.CultureInfo.InvariantCulture))
        : written[meant];

    private int MessageOf(int post) =>
        TelegramIds.TryMessage(State.Posts[post].Message, out _, out var message) ? message : throw new InvalidOperationException($"Post {post} was not sent.");
}
