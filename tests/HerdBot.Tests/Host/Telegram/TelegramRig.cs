using System.Collections.Concurrent;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;
using HerdBot.Tests.Support;
using HerdBot.Tests.Support.FakeBotApi;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;

namespace HerdBot.Tests.Host.Telegram;

/// <summary>The adapter on a line to the fake server, with hands for all it needs.</summary>
internal sealed class TelegramRig : IAsyncDisposable
{
    public static readonly FakePerson Ana = new(4711, "Ana", "Moreno", "ana_m");
    public static readonly FakePerson Tom = new(4712, "Tom");

    private readonly ILoggerFactory _loggers;
    private TelegramReceiver? _receiver;

    private TelegramRig(FakeBotApi fake, TimeProvider time, TelegramOptions options)
    {
        Fake = fake;
        Time = time;
        Line = new TelegramLine(options);
        _loggers = LoggerFactory.Create(logging => logging.SetMinimumLevel(LogLevel.Trace).AddProvider(Log));
        Chat = new TelegramChat(Line, name => Numbers.TryGetValue(name, out var id) ? id : null, _loggers.CreateLogger<TelegramChat>());
        Inbound = new TelegramInbound(Presence);
    }

    public FakeBotApi Fake { get; }
    public TimeProvider Time { get; }
    public TelegramLine Line { get; }
    public TelegramPresence Presence { get; } = new();
    public HeldIntake Intake { get; } = new();
    public LogSheet Log { get; } = new();
    public TelegramChat Chat { get; }
    public TelegramInbound Inbound { get; }
    public Dictionary<string, long> Numbers { get; } = [];

    public static async Task<TelegramRig> StartAsync(TimeProvider? time = null, bool receive = false, TimeSpan? sendTime = null)
    {
        var fake = await FakeBotApi.StartAsync();
        var rig = new TelegramRig(fake, time ?? new FakeTimeProvider(), OptionsFor(fake, sendTime));
        if (receive)
            await rig.ReceiveAsync();
        return rig;
    }

    public static TelegramOptions OptionsFor(FakeBotApi fake, TimeSpan? sendTime = null) => new()
    {
        Token = fake.Token,
        BaseUrl = fake.Url,
        SendTime = sendTime ?? Patience.Hang,
        PollGrace = Patience.Hang,
    };

    /// <summary>Starts the receiver and waits until it listens, or until it has come as far as it can.</summary>
    public async Task ReceiveAsync(bool untilPolled = true)
    {
        _receiver = new TelegramReceiver(Line, Intake, Presence, Time, _loggers.CreateLogger<TelegramReceiver>());
        await _receiver.StartAsync(default);
        if (untilPolled)
            await Fake.WaitForAsync(fake => fake.Polled);
    }

    public async Task StopAsync()
    {
        if (_receiver is null)
            return;
        await _receiver.StopAsync(default);
        _receiver.Dispose();
        _receiver = null;
    }

    /// <summary>Waits until the intake holds so many updates, and returns what they mean.</summary>
    public async Task<Inbound?[]> TakenAsync(int count)
    {
        await Intake.WaitForAsync(count);
        return [.. Intake.Entries.Select(Inbound.Read)];
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        Line.Dispose();
        await Fake.DisposeAsync();
        _loggers.Dispose();
    }
}

/// <summary>An intake that can hold its breath or fail.</summary>
internal sealed class HeldIntake : IIntake
{
    private readonly Lock _gate = new();
    private readonly List<InboxEntry> _entries = [];
    private TaskCompletionSource _changed = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private int _calls;

    /// <summary>While not done, taking in does not return.</summary>
    public Task Hold { get; set; } = Task.CompletedTask;

    /// <summary>So many calls to come fail.</summary>
    public int Failing { get; set; }

    public IReadOnlyList<InboxEntry> Entries
    {
        get
        {
            lock (_gate)
                return [.. _entries];
        }
    }

    public int Calls
    {
        get
        {
            lock (_gate)
                return _calls;
        }
    }

    public async Task TakeInAsync(IReadOnlyList<InboxEntry> entries, CancellationToken cancellation = default)
    {
        Change(() => _calls++);
        await Hold.WaitAsync(cancellation);
        if (Failing > 0)
        {
            Failing--;
            throw new IOException("The disk is full.");
        }
        Change(() => _entries.AddRange(entries.Where(entry => !_entries.Exists(known => known.Key == entry.Key))));
    }

    public Task WaitForAsync(int entries) => WaitForAsync(() => _entries.Count >= entries);

    public Task WaitForCallsAsync(int calls) => WaitForAsync(() => _calls >= calls);

    private async Task WaitForAsync(Func<bool> isSo)
    {
        while (true)
        {
            Task changed;
            lock (_gate)
            {
                if (isSo())
                    return;
                changed = _changed.Task;
            }
            await changed.WaitAsync(Patience.Hang);
        }
    }

    private void Change(Action change)
    {
        TaskCompletionSource before;
        lock (_gate)
        {
            change();
            (before, _changed) = (_changed, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously));
        }
        before.SetResult();
    }
}

/// <summary>Every line that was logged, at any level.</summary>
internal sealed class LogSheet : ILoggerProvider
{
    private readonly ConcurrentQueue<string> _lines = [];

    public string Text => string.Join('\n', _lines);

    public IEnumerable<string> Warnings => _lines.Where(line => line.StartsWith("Warning", StringComparison.Ordinal));

    public ILogger CreateLogger(string categoryName) => new Page(categoryName, _lines);

    public void Dispose() { }

    private sealed class Page(string category, ConcurrentQueue<string> lines) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            lines.Enqueue($"{logLevel} {category} {formatter(state, exception)} {exception}");
    }
}

/// <summary>A clock on which every pause is over at once and is written down.</summary>
internal sealed class HastyTime : TimeProvider
{
    private readonly Lock _gate = new();
    private readonly List<TimeSpan> _pauses = [];
    private DateTimeOffset _now = new(2026, 5, 2, 4, 30, 0, TimeSpan.Zero);

    public IReadOnlyList<TimeSpan> Pauses
    {
        get
        {
            lock (_gate)
                return [.. _pauses];
        }
    }

    public override DateTimeOffset GetUtcNow()
    {
        lock (_gate)
            return _now;
    }

    public override long GetTimestamp() => GetUtcNow().Ticks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        lock (_gate)
        {
            _pauses.Add(dueTime);
            _now += dueTime;
        }
        ThreadPool.QueueUserWorkItem(_ => callback(state));
        return new Spent();
    }

    private sealed class Spent : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => false;

        public void Dispose() { }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
