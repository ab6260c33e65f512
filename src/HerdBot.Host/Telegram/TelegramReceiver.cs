using System.Text.Json;
using HerdBot.App.Ports;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;
using NodaTime.Extensions;
using Telegram.Bot.Requests;

namespace HerdBot.Host.Telegram;

/// <summary>
/// Fetches updates and hands them over as they came. Telegram forgets an update once a poll asks for a later one, so
/// that is done only after the intake has it on disk.
/// </summary>
public sealed partial class TelegramReceiver(
    TelegramLine line, IIntake intake, TelegramPresence presence, TimeProvider time, ILogger<TelegramReceiver> log)
    : BackgroundService
{
    private static readonly TimeSpan LastWord = TimeSpan.FromSeconds(5);

    private long? _next;
    private long? _confirmed;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            await RepeatAsync(GreetAsync, once: true, stoppingToken);
            await RepeatAsync(PollAsync, once: false, stoppingToken);
        }
        // Not by cancellation alone: a call that fails just as the host stops ends up here too.
        catch (Exception) when (stoppingToken.IsCancellationRequested)
        {
            await ConfirmAsync();
        }
    }

    private async Task RepeatAsync(Func<CancellationToken, Task<TimeSpan>> step, bool once, CancellationToken stopping)
    {
        while (true)
        {
            stopping.ThrowIfCancellationRequested();
            var pause = await TryAsync(step, stopping);
            if (pause > TimeSpan.Zero)
                await Task.Delay(pause, time, stopping);
            else if (once)
                return;
        }
    }

    // The one boundary where anything may go wrong: the net, Telegram's mood, the disk. None of it ends the loop.
    private async Task<TimeSpan> TryAsync(Func<CancellationToken, Task<TimeSpan>> step, CancellationToken stopping)
    {
        try
        {
            var pause = await step(stopping);
            presence.Heard(time.GetCurrentInstant());
            return pause;
        }
        catch (Exception failure) when (!stopping.IsCancellationRequested)
        {
            presence.Failed();
            var pause = PollPause.After(failure, presence.Failures);
            LogFailed(presence.Failures, pause, PollPause.Advice(failure) ?? "", line.Veil.Tell(failure));
            return pause;
        }
    }

    private async Task<TimeSpan> GreetAsync(CancellationToken stopping)
    {
        var me = await line.Send.SendRequest(new GetMeRequest(), stopping);
        presence.UserName = me.Username;
        if (!me.CanReadAllGroupMessages)
            LogPrivacy(me.Username);
        await line.Send.SendRequest(new DeleteWebhookRequest { DropPendingUpdates = false }, stopping);
        foreach (var commands in TelegramCommands.Requests())
            await SwallowAsync(() => line.Send.SendRequest(commands, stopping), "The command menu was not set", stopping);
        LogReceiving(me.Username);
        return TimeSpan.Zero;
    }

    private async Task<TimeSpan> PollAsync(CancellationToken stopping)
    {
        var asked = time.GetTimestamp();
        var offset = _next;
        var batch = await line.Poll.SendRequest(
            new GetRawUpdates { Offset = offset, Timeout = (int)line.Options.PollTime.TotalSeconds }, stopping);
        _confirmed = offset;
        if (batch.Length == 0)
            return time.GetElapsedTime(asked) < PollPause.Shortest ? PollPause.Shortest : TimeSpan.Zero;

        var at = time.GetCurrentInstant();
        await intake.TakeInAsync([.. batch.Select(update => Entry(update, at))], stopping);
        // The number of the last one, not the greatest: after a quiet week Telegram may count on from anywhere.
        _next = batch.Select(TelegramKeys.UpdateId).LastOrDefault(id => id is not null) + 1 ?? _next;
        await AnswerAsync(batch, stopping);
        // A batch that brings us no further would come again at once, for ever.
        return _next == offset ? PollPause.Shortest : TimeSpan.Zero;
    }

    private InboxEntry Entry(JsonElement update, Instant at) =>
        new(TelegramKeys.Of(line.Poll.BotId, update), at, update.GetRawText());

    // A press shows as busy until it is answered. What it does is reported by a post of its own.
    private Task AnswerAsync(JsonElement[] batch, CancellationToken stopping) =>
        Task.WhenAll(batch.Select(TelegramKeys.CallbackId).OfType<string>().Select(id => SwallowAsync(
            () => line.Send.SendRequest(new AnswerCallbackQueryRequest { CallbackQueryId = id }, stopping),
            "A press was not answered; it counts all the same", stopping)));

    private async Task SwallowAsync(Func<Task> request, string what, CancellationToken stopping)
    {
        try
        {
            await request();
        }
        catch (Exception failure) when (!stopping.IsCancellationRequested)
        {
            LogLeft(what, line.Veil.Tell(failure));
        }
    }

    // Spares the next start what is safely stored already. Where it fails, that comes again and is passed over.
    private async Task ConfirmAsync()
    {
        if (_next == _confirmed)
            return;
        using var limit = new CancellationTokenSource(LastWord, time);
        await SwallowAsync(
            () => line.Poll.SendRequest(new GetRawUpdates { Offset = _next, Limit = 1, Timeout = 0 }, limit.Token),
            "The last batch was not confirmed; it will come again", CancellationToken.None);
    }

    [LoggerMessage(3001, LogLevel.Warning, "Receiving failed {Failures} times in a row, next try in {Pause}. {Advice} {Failure}")]
    private partial void LogFailed(int failures, TimeSpan pause, string advice, string failure);

    [LoggerMessage(3002, LogLevel.Warning, "@{Name} does not see plain messages in groups: privacy mode is on. Turn it off at @BotFather (/setprivacy), then remove the bot from the group and add it again, or make it an administrator.")]
    private partial void LogPrivacy(string? name);

    [LoggerMessage(3003, LogLevel.Information, "Receiving as @{Name}.")]
    private partial void LogReceiving(string? name);

    [LoggerMessage(3004, LogLevel.Debug, "{What}. {Failure}")]
    private partial void LogLeft(string what, string failure);
}
