using System.Text.Encodings.Web;
using System.Text.Json;
using HerdBot.App.Ports;

namespace HerdBot.App.Messages;

/// <summary>What a terminal or a script brings, as JSON of our own.</summary>
public sealed class PlainInboundFormat : IInboundFormat
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The inbox entry of a message, an edit or a press.</summary>
    public static InboxEntry Write(Inbound inbound)
    {
        ArgumentNullException.ThrowIfNull(inbound);
        var raw = inbound switch
        {
            Inbound.Line line => new Plain("line", line.Group.Value, line.From.Name, line.MessageId, line.Text, line.ReplyTo),
            Inbound.Edit edit => new Plain("edit", edit.Group.Value, edit.From.Name, edit.MessageId, edit.Text, null),
            Inbound.Tap tap => new Plain("tap", tap.Group.Value, tap.From.Name, "", tap.Data, null),
            _ => throw new ArgumentException("A terminal has only lines, edits and taps.", nameof(inbound)),
        };
        return new InboxEntry(inbound.Key, inbound.At, JsonSerializer.Serialize(raw, Options));
    }

    /// <inheritdoc/>
    public Inbound? Read(InboxEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        Plain raw;
        try
        {
            raw = JsonSerializer.Deserialize<Plain>(entry.Raw, Options) ?? throw new FormatException("nothing in it");
        }
        catch (JsonException odd)
        {
            throw new FormatException(odd.Message, odd);
        }
        var (group, from) = (new GroupId(raw.Group), new Person("name:" + raw.From, raw.From));
        return raw.Type switch
        {
            "line" => new Inbound.Line(entry.Key, group, from, entry.ReceivedAt, raw.Message, raw.Text, raw.ReplyTo),
            "edit" => new Inbound.Edit(entry.Key, group, from, entry.ReceivedAt, raw.Message, raw.Text),
            "tap" => new Inbound.Tap(entry.Key, group, from, entry.ReceivedAt, raw.Text),
            _ => throw new FormatException($"unknown type '{raw.Type}'"),
        };
    }

    private sealed record Plain(string Type, string Group, string From, string Message, string Text, string? ReplyTo);
}
