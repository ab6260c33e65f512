using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>The wire: how calls come in and how they are answered, well or badly.</summary>
internal sealed class FakeWire(FakeGate gate, FakeServerState state, TimeProvider clock, string token) : IAsyncDisposable
{
    /// <summary>Calls with this header are a test's own and not the bot's.</summary>
    public const string ProbeHeader = "X-Probe";

    private static int _dumps;

    private readonly FakeMethods _methods = new(state);
    private readonly List<(string? Method, Fault Fault)> _faults = [];
    private readonly CancellationTokenSource _closing = new();
    private WebApplication? _app;
    private CancellationTokenSource? _poller;

    /// <summary>True while a poll waits for something to come.</summary>
    public bool Polled => gate.Read(() => _poller is not null);

    public string Url { get; private set; } = "";

    public async Task OpenAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        _app = builder.Build();
        _app.Run(HandleAsync);
        await _app.StartAsync();
        Url = _app.Urls.Single();
    }

    public void Break(string? method, Fault fault, int times) => gate.Change(() => _faults.AddRange(Enumerable.Repeat((method, fault), times)));

    /// <summary>Closes the server; its address then refuses every connection.</summary>
    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref _app, null) is not { } app)
            return;
        await _closing.CancelAsync();
        Dump();
        await app.DisposeAsync();
        _closing.Dispose();
    }

    private async Task HandleAsync(HttpContext http)
    {
        if (http.Request.Path.Value?.Split('/') is not ["", var bot, var method])
        {
            http.Response.StatusCode = 404;
            return;
        }
        var body = await ReadAsync(http.Request);
        var own = http.Request.Headers.ContainsKey(ProbeHeader);
        var fault = gate.Change(() =>
        {
            if (!own)
                state.Requests.Add(new FakeRequest(method, body));
            return own ? null : TakeFault(method);
        });
        if (fault is Fault.Html or Fault.Error or Fault.Dropped or Fault.NoResult)
        {
            await BreakAsync(http, fault);
            return;
        }
        var (status, answer) = bot == $"bot{token}"
            ? await CallAsync(method, body, http.RequestAborted)
            : (401, new FakeError(401, "Unauthorized").Body());
        await AnswerAsync(http, status, answer, fault);
    }

    private async Task<(int Status, JsonObject Answer)> CallAsync(string method, JsonObject body, CancellationToken aborted)
    {
        try
        {
            var result = method == "getUpdates" ? await PollAsync(body, aborted) : gate.Change(() => _methods.Call(method, body));
            return (200, new JsonObject { ["ok"] = true, ["result"] = result });
        }
        catch (FakeError error)
        {
            return (error.Code, error.Body());
        }
        catch (Exception e) when (e is InvalidOperationException or FormatException)
        {
            return (400, FakeError.Bad($"a field has the wrong type: {e.Message}").Body());
        }
    }

    private async Task<JsonNode> PollAsync(JsonObject body, CancellationToken aborted)
    {
        var seconds = Math.Min((int?)body["timeout"] ?? 0, 50);
        var offset = (long?)body["offset"] ?? 0;
        var limit = Math.Clamp((int?)body["limit"] ?? 100, 1, 100);
        using var run = CancellationTokenSource.CreateLinkedTokenSource(aborted, _closing.Token);
        var endsAt = clock.GetUtcNow() + TimeSpan.FromSeconds(seconds);
        using var wake = clock.CreateTimer(_ => gate.Change(() => { }), null, TimeSpan.FromSeconds(seconds), Timeout.InfiniteTimeSpan);
        var entered = gate.Change(() =>
        {
            CheckWebhook("");
            _poller?.Cancel();
            _poller = run;
            state.Queue.Allow(body["allowed_updates"] is JsonArray kinds ? [.. kinds.Select(kind => (string)kind!)] : null);
            // Confirms within the change, so that whoever waits for the confirmation is told.
            state.Queue.Read(offset, limit);
            return gate.Changed;
        });
        try
        {
            for (var changed = entered; ; changed = gate.Changed)
            {
                var batch = gate.Read(() => state.Queue.Read(offset, limit));
                if (batch.Count > 0 || clock.GetUtcNow() >= endsAt)
                    return batch;
                await changed.WaitAsync(run.Token);
                gate.Read(() => CheckWebhook("terminated by setWebhook request"));
            }
        }
        catch (OperationCanceledException) when (!aborted.IsCancellationRequested && !_closing.IsCancellationRequested)
        {
            throw FakeError.Conflict("terminated by other getUpdates request; make sure that only one bot instance is running");
        }
        finally
        {
            gate.Change(() => _poller = _poller == run ? null : _poller);
        }
    }

    private int CheckWebhook(string otherwise)
    {
        if (state.Webhook is null)
            return 0;
        throw FakeError.Conflict(otherwise.Length > 0
            ? otherwise
            : "can't use getUpdates method while webhook is active; use deleteWebhook to delete the webhook first");
    }

    private Fault? TakeFault(string method)
    {
        var index = _faults.FindIndex(fault => fault.Method is null || fault.Method == method);
        if (index < 0)
            return null;
        var fault = _faults[index].Fault;
        _faults.RemoveAt(index);
        return fault;
    }

    private static Task BreakAsync(HttpContext http, Fault fault)
    {
        switch (fault)
        {
            case Fault.Html html:
                return WriteAsync(http, html.Status, "text/html", "<html><body>Please log in</body></html>");
            case Fault.Error { RetryAfter: { } seconds }:
                return WriteAsync(http, 429, "application/json", FakeError.TooMany(seconds).Body().ToJsonString());
            case Fault.Error error:
                return WriteAsync(http, error.Code, "application/json", new FakeError(error.Code, error.Description).Body().ToJsonString());
            case Fault.NoResult:
                return WriteAsync(http, 200, "application/json", """{"ok":true,"result":null}""");
            default:
                http.Abort();
                return Task.CompletedTask;
        }
    }

    private async Task AnswerAsync(HttpContext http, int status, JsonObject answer, Fault? fault)
    {
        var text = answer.ToJsonString();
        switch (fault)
        {
            case Fault.AnswerLost:
                http.Abort();
                break;
            case Fault.HalfAnswer:
                http.Response.ContentLength = text.Length;
                await http.Response.WriteAsync(text[..(text.Length / 2)]);
                await http.Response.Body.FlushAsync();
                http.Abort();
                break;
            case Fault.Silence:
                using (var hold = CancellationTokenSource.CreateLinkedTokenSource(http.RequestAborted, _closing.Token))
                    await Task.Delay(Timeout.InfiniteTimeSpan, clock, hold.Token).ContinueWith(_ => { }, TaskScheduler.Default);
                break;
            default:
                await WriteAsync(http, status, "application/json", text);
                break;
        }
    }

    private static Task WriteAsync(HttpContext http, int status, string type, string text)
    {
        http.Response.StatusCode = status;
        http.Response.ContentType = type;
        return http.Response.WriteAsync(text);
    }

    private static async Task<JsonObject> ReadAsync(HttpRequest request)
    {
        if (request.HasFormContentType)
            return await ReadFormAsync(request);
        using var reader = new StreamReader(request.Body);
        var text = await reader.ReadToEndAsync();
        return text.Length == 0 ? [] : JsonNode.Parse(text)!.AsObject();
    }

    // A call with a file comes as a form: objects are written as JSON, a file stands for itself by its name and size.
    private static async Task<JsonObject> ReadFormAsync(HttpRequest request)
    {
        var form = await request.ReadFormAsync();
        var body = new JsonObject();
        foreach (var (name, value) in form)
            body[name] = value.ToString() is ['{' or '[', ..] json ? JsonNode.Parse(json) : name == "chat_id" ? long.Parse(value.ToString(), System.Globalization.CultureInfo.InvariantCulture) : (JsonNode)value.ToString();
        foreach (var file in form.Files)
        {
            var field = body.FirstOrDefault(entry => entry.Value is JsonValue text && text.ToString() == $"attach://{file.Name}").Key ?? file.Name;
            body[field] = $"{file.FileName}: {file.Length} bytes";
        }
        return body;
    }

    // The witness that checks the bot's calls against the published types asks for them by this variable.
    private void Dump()
    {
        if (Environment.GetEnvironmentVariable("HERDBOT_REQUEST_DUMP") is not { Length: > 0 } folder)
            return;
        var lines = gate.Read(() => state.Requests.ToList()).Select(request => new JsonObject { ["method"] = request.Method, ["body"] = request.Body.DeepClone() }.ToJsonString());
        File.WriteAllLines(Path.Combine(folder, $"{Environment.ProcessId}-{Interlocked.Increment(ref _dumps)}.jsonl"), lines);
    }
}
