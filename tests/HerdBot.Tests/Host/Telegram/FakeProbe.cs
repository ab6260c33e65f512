using System.Text;
using System.Text.Json.Nodes;
using HerdBot.Tests.Support.FakeBotApi;

namespace HerdBot.Tests.Host.Telegram;

/// <summary>A bare client, to look at the fake server from outside.</summary>
internal sealed class FakeProbe : IDisposable
{
    private readonly HttpClient _http = new();
    private readonly FakeBotApi _fake;

    public FakeProbe(FakeBotApi fake)
    {
        _fake = fake;
        _http.DefaultRequestHeaders.Add(FakeWire.ProbeHeader, "1");
    }

    public async Task<JsonNode> CallAsync(string method, string body = "{}", string? token = null)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await _http.PostAsync(new Uri($"{_fake.Url}/bot{token ?? _fake.Token}/{method}"), content);
        return JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
    }

    public async Task<string> RefusalAsync(string method, string body = "{}")
    {
        var answer = await CallAsync(method, body);
        return (bool)answer["ok"]! ? "" : (string)answer["description"]!;
    }

    public async Task<long[]> PollAsync(string body = "{}") =>
        [.. (await CallAsync("getUpdates", body))["result"]!.AsArray().Select(update => (long)update!["update_id"]!)];

    public void Dispose() => _http.Dispose();
}
