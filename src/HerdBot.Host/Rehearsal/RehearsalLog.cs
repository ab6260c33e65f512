using System.Text.Encodings.Web;
using System.Text.Json;
using HerdBot.App.Ports;
using HerdBot.App.Records;
using HerdBot.Core.Care;
using HerdBot.Core.Events;
using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Posting;
using NodaTime;
using NodaTime.Text;

namespace HerdBot.Host.Rehearsal;

/// <summary>Prints what was recorded and posted, out of the history itself.</summary>
internal sealed class RehearsalLog(Farm farm, TextWriter output)
{
    private static readonly OffsetDateTimePattern Stamp = OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:sso<+HH:mm>");
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");
    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private long printed;
    private HerdState state = HerdState.Empty;

    /// <summary>Prints what came into a group's history since the last time.</summary>
    public async Task PrintAsync(IHerdStore store, GroupId group)
    {
        foreach (var commit in await store.ReadGroupAsync(group, printed))
        {
            printed = commit.Version;
            foreach (var happened in commit.Commit.Events.Select(EventCodec.Read))
            {
                state = state.Apply(happened);
                Print(happened);
            }
        }
    }

    private void Print(HerdEvent happened)
    {
        switch (happened)
        {
            case HerdEvent.FactRecorded recorded:
                var told = recorded.Fact.Kind == FactKind.Roster ? null : Name(About(recorded)); // A new name is told of by the old one.
                Record(recorded.SaidAt, recorded.Fact with { Animal = told ?? recorded.Fact.Animal }, recorded.By);
                break;
            case HerdEvent.FactAmended amended:
                Record(amended.SaidAt, amended.Correction, amended.By);
                break;
            case HerdEvent.FactWithdrawn withdrawn:
                var record = state.Record(withdrawn.Id)!;
                Record(withdrawn.SaidAt, new Fact(FactKind.Undo) { Animal = Name(record.Animal), Field = FactWords.Word(record.Fact.Kind) }, withdrawn.By);
                break;
            case HerdEvent.PostSent sent:
                Posted(sent.At, state.Posts[sent.Number].Post);
                break;
        }
    }

    /// <summary>A birth is its dam's, a stillbirth the baby's.</summary>
    private static AnimalId? About(HerdEvent.FactRecorded recorded) => recorded.Fact.Kind == FactKind.Death ? recorded.Newborn ?? recorded.Animal : recorded.Animal;

    private string? Name(AnimalId? id) => state.Find(id)?.Name;

    private void Record(Instant at, Fact fact, string by) => Line(at, json =>
    {
        json.WritePropertyName("record");
        using var written = new MemoryStream();
        using (var inner = new Utf8JsonWriter(written, Options))
        {
            FactJson.Write(inner, fact);
        }
        using var parsed = JsonDocument.Parse(written.ToArray());
        json.WriteStartObject();
        foreach (var entry in parsed.RootElement.EnumerateObject())
        {
            entry.WriteTo(json);
        }
        json.WriteString("by", by);
        json.WriteEndObject();
    });

    private void Posted(Instant at, Post post) => Line(at, json =>
    {
        json.WriteString("post", FactWords.Snake(post.Kind.ToString()));
        json.WriteString("to", post.To);
        json.WriteNumber("id", post.Edits ?? post.Number);
        json.WriteString("text", post.Text);
        if (post.Picture is { } picture)
        {
            json.WriteString("file", $"{picture}.png");
        }
        json.WriteStartArray("buttons");
        foreach (var button in post.Buttons)
        {
            json.WriteStringValue(button.Label);
        }
        json.WriteEndArray();
        json.WriteStartArray("tasks");
        foreach (var task in post.Tasks)
        {
            Task(json, task);
        }
        json.WriteEndArray();
    });

    private void Task(Utf8JsonWriter json, PostedTask task)
    {
        json.WriteStartObject();
        json.WriteString("task", CareTaskWords.Word(task.Key.Name));
        json.WriteString("animal", task.Animal);
        json.WriteString("due", Minute.Format(farm.Clock.Local(task.Due)));
        json.WriteString("state", FactWords.Snake(task.State.ToString()));
        json.WriteString("level", FactWords.Snake(task.Level.ToString()));
        json.WriteEndObject();
    }

    private void Line(Instant at, Action<Utf8JsonWriter> body)
    {
        using var written = new MemoryStream();
        using (var json = new Utf8JsonWriter(written, Options))
        {
            json.WriteStartObject();
            json.WriteString("at", Stamp.Format(at.InZone(farm.Clock.Zone).ToOffsetDateTime()));
            body(json);
            json.WriteEndObject();
        }
        output.Write(System.Text.Encoding.UTF8.GetString(written.ToArray()));
        output.Write('\n');
    }
}
