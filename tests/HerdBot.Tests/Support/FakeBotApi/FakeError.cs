using System.Text.Json.Nodes;

namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>A refusal in Telegram's own form.</summary>
internal sealed class FakeError(int code, string description, JsonObject? parameters = null) : Exception(description)
{
    public int Code { get; } = code;

    public JsonObject Body()
    {
        var body = new JsonObject { ["ok"] = false, ["error_code"] = Code, ["description"] = Message };
        if (parameters is not null)
            body["parameters"] = parameters.DeepClone();
        return body;
    }

    public static FakeError Bad(string what) => new(400, $"Bad Request: {what}");

    public static FakeError Forbidden(string what) => new(403, $"Forbidden: {what}");

    public static FakeError Conflict(string what) => new(409, $"Conflict: {what}");

    public static FakeError TooMany(int seconds) =>
        new(429, $"Too Many Requests: retry after {seconds}", new JsonObject { ["retry_after"] = seconds });
}
