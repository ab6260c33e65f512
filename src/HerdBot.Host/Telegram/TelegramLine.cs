using System.Net.Sockets;
using Telegram.Bot;

namespace HerdBot.Host.Telegram;

/// <summary>
/// The line to Telegram: one client for the long poll and one for everything else, with time limits of their own.
/// The clients are made here and not by a factory that would log their addresses, which hold the token.
/// </summary>
public sealed class TelegramLine : IDisposable
{
    private readonly SocketsHttpHandler _handler;
    private readonly HttpClient _pollClient;
    private readonly HttpClient _sendClient;

    public TelegramLine(TelegramOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        Options = options;
        Veil = new TokenVeil(options.Token);
        _handler = new SocketsHttpHandler
        {
            ConnectCallback = ConnectAsync,
            PooledConnectionLifetime = TimeSpan.FromMinutes(15),
            UseCookies = false,
        };
        _pollClient = new HttpClient(_handler, disposeHandler: false) { Timeout = options.PollTime + options.PollGrace };
        _sendClient = new HttpClient(_handler, disposeHandler: false) { Timeout = options.SendTime };
        Poll = Client(_pollClient);
        Send = Client(_sendClient);
    }

    public TelegramOptions Options { get; }

    public TokenVeil Veil { get; }

    public ITelegramBotClient Poll { get; }

    public ITelegramBotClient Send { get; }

    public void Dispose()
    {
        _pollClient.Dispose();
        _sendClient.Dispose();
        _handler.Dispose();
    }

    private TelegramBotClient Client(HttpClient http) =>
        // The outbox keeps its own schedule; a client that sleeps through a 429 would hold all other chats up.
        new(new TelegramBotClientOptions(Options.Token, Options.BaseUrl) { RetryThreshold = 0, RetryCount = 0 }, http);

    // By the handler's own ConnectTimeout a connection that never came about looks like any other time-out. An
    // exception from here is reported as a connection error instead: certainly not sent.
    private async ValueTask<Stream> ConnectAsync(SocketsHttpConnectionContext context, CancellationToken cancellation)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(Options.ConnectTime);
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(context.DnsEndPoint, limit.Token);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            socket.Dispose();
            throw new IOException($"No connection within {Options.ConnectTime.TotalSeconds:0.#} s.");
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
