using System.Text.Json.Nodes;

namespace HerdBot.Tests.Support.FakeBotApi;

/// <summary>A message the bot sent.</summary>
internal sealed record FakePost(long Chat, int MessageId, string Text, IReadOnlyList<string> ButtonData, int? ReplyTo, JsonObject Body)
{
    /// <summary>The message's id as the bot writes it.</summary>
    public string Id => $"{Chat}/{MessageId}";
}

/// <summary>A call as it came.</summary>
internal sealed record FakeRequest(string Method, JsonObject Body);

/// <summary>What the server knows. Guarded by the server's lock.</summary>
internal sealed class FakeServerState(TimeProvider clock, long botId)
{
    public const string BotName = "HerdTestBot";

    public long BotId { get; } = botId;
    public bool ReadsAll { get; set; } = true;
    public string? Webhook { get; set; }
    public FakeQueue Queue { get; } = new(clock);
    public Dictionary<long, FakeChat> Chats { get; } = [];
    public Dictionary<string, DateTimeOffset> Presses { get; } = [];
    public List<string> Answered { get; } = [];
    public Dictionary<string, string[]> Commands { get; } = [];
    public List<FakePost> Posts { get; } = [];
    public List<FakeRequest> Requests { get; } = [];

    public DateTimeOffset Now => clock.GetUtcNow();

    public long Seconds => Now.ToUnixTimeSeconds();

    /// <summary>The chat a call is for, if the bot may write there.</summary>
    public FakeChat Writable(JsonObject body)
    {
        var id = (long?)body["chat_id"] ?? throw FakeError.Bad("chat_id is empty");
        var chat = Chats.GetValueOrDefault(id) ?? throw FakeError.Bad("chat not found");
        chat.CheckStanding();
        return chat;
    }
}
