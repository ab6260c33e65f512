using System.Text.Json.Nodes;
using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Host.Telegram;
using NodaTime;
using Telegram.Bot;
using Telegram.Bot.Types;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

public sealed class TelegramInboundTests
{
    private const long GroupNumber = -1001700000001;
    private static readonly GroupId Group = new("tg:-1001700000001");
    private static readonly Instant Said = Instant.FromUtc(2026, 5, 2, 4, 30);
    private static readonly Instant Taken = Said + Duration.FromSeconds(3);
    private static readonly Person Ana = new("tg:4711", "Ana M.");

    private readonly TelegramInbound _inbound = new(new TelegramPresence { UserName = "WillowHerdBot" });

    [Fact]
    public void A_message_is_a_line_with_its_sender_its_time_and_its_words()
    {
        var line = Read(Message(m => m["text"] = "Juniper had a boy 5:20\n17 lb"));

        line.Should().Be(new Inbound.Line("key", Group, Ana, Said, "-1001700000001/12", "Juniper had a boy 5:20\n17 lb", null));
    }

    [Fact]
    public void A_caption_counts_as_words_and_a_reply_names_its_message()
    {
        var line = Read(Message(m =>
        {
            m["photo"] = new JsonArray(new JsonObject { ["file_id"] = "x", ["width"] = 1, ["height"] = 1 });
            m["caption"] = "standing";
            m["reply_to_message"] = new JsonObject { ["message_id"] = 9, ["date"] = 1, ["chat"] = Chat() };
        }));

        line.Should().Be(new Inbound.Line("key", Group, Ana, Said, "-1001700000001/12", "standing", "-1001700000001/9"));
    }

    [Theory]
    [InlineData("/open@WillowHerdBot now please", "/open now please")]
    [InlineData("/open@willowherdbot", "/open")]
    [InlineData("/open", "/open")]
    [InlineData("/due Juniper", "/due Juniper")]
    [InlineData("mail ana@WillowHerdBot", "mail ana@WillowHerdBot")]
    public void A_command_loses_our_own_name(string typed, string passedOn) =>
        Read(Message(m => m["text"] = typed)).Should().BeOfType<Inbound.Line>().Which.Text.Should().Be(passedOn);

    [Fact]
    public void A_command_for_another_bot_is_not_for_us() =>
        Read(Message(m => m["text"] = "/open@DoorKeeperBot")).Should().BeNull();

    [Fact]
    public void A_reply_within_a_topic_that_replies_to_nothing_names_no_message()
    {
        var first = new JsonObject { ["message_id"] = 5, ["date"] = 1, ["chat"] = Chat() };

        var plain = Read(Message(m => Fill(m, ("text", "up"), ("is_topic_message", true), ("message_thread_id", 5), ("reply_to_message", first.DeepClone()))));
        var reply = Read(Message(m => Fill(m, ("text", "up"), ("is_topic_message", true), ("message_thread_id", 4), ("reply_to_message", first.DeepClone()))));

        plain.Should().BeOfType<Inbound.Line>().Which.ReplyTo.Should().BeNull();
        reply.Should().BeOfType<Inbound.Line>().Which.ReplyTo.Should().Be("-1001700000001/5");
    }

    [Fact]
    public void An_edit_bears_its_own_time_and_the_new_words()
    {
        var raw = Update("edited_message", Body(m => Fill(m, ("text", "Juniper had a girl"), ("edit_date", Said.ToUnixTimeSeconds() + 60))));

        Read(raw).Should().Be(new Inbound.Edit("key", Group, Ana, Said + Duration.FromMinutes(1), "-1001700000001/12", "Juniper had a girl"));
    }

    [Fact]
    public void A_press_names_its_chat_and_what_the_button_carries()
    {
        var tap = Tap(Body(m => m["text"] = "Up?"));

        Read(tap).Should().Be(new Inbound.Tap("key", Group, Ana, Taken, "v1:up:7"));
    }

    [Fact]
    public void A_press_on_a_message_too_old_to_be_told_of_counts_too()
    {
        var tap = Tap(new JsonObject { ["chat"] = Chat(), ["message_id"] = 3, ["date"] = 0 });

        Read(tap).Should().BeOfType<Inbound.Tap>().Which.Group.Should().Be(Group);
    }

    [Theory]
    [InlineData("voice")]
    [InlineData("video_note")]
    [InlineData("video")]
    [InlineData("audio")]
    [InlineData("sticker")]
    [InlineData("photo")]
    [InlineData("location")]
    public void What_has_no_words_is_named(string what) =>
        Read(Message(m => m[what] = what == "photo" ? new JsonArray() : new JsonObject()))
            .Should().Be(new Inbound.Wordless("key", Group, Ana, Said, "-1001700000001/12", what));

    [Fact]
    public void The_other_pictures_of_an_album_say_nothing() =>
        Read(Message(m => Fill(m, ("photo", new JsonArray()), ("media_group_id", "55")))).Should().BeNull();

    [Theory]
    [InlineData("new_chat_title")]
    [InlineData("pinned_message")]
    [InlineData("new_chat_members")]
    [InlineData("something_new_of_next_month")]
    public void Service_messages_and_kinds_to_come_say_nothing(string kind) =>
        Read(Message(m => m[kind] = new JsonObject())).Should().BeNull();

    [Theory]
    [InlineData("member", null, true)]
    [InlineData("administrator", null, true)]
    [InlineData("restricted", true, true)]
    [InlineData("restricted", false, false)]
    [InlineData("left", null, false)]
    [InlineData("kicked", null, false)]
    public void A_change_of_our_standing_tells_whether_we_are_in(string status, bool? isMember, bool member)
    {
        var standing = new JsonObject { ["status"] = status };
        if (isMember is { } known)
            standing["is_member"] = known;

        var read = Read(Update("my_chat_member", Change(standing)));

        read.Should().Be(new Inbound.Membership("key", Group, Ana, Said, "Willow Bend", member));
    }

    [Fact]
    public void A_move_is_told_by_either_chat()
    {
        var group = new GroupId("tg:-4100001");

        var leaving = Read(Message(m => Fill(m, ("migrate_to_chat_id", GroupNumber), ("chat", Chat(-4100001)))));
        var arriving = Read(Message(m => m["migrate_from_chat_id"] = -4100001));

        leaving.Should().Be(new Inbound.Moved("key", group, Ana, Said, Group));
        arriving.Should().Be(new Inbound.Moved("key", group, Ana, Said, Group));
    }

    [Fact]
    public void A_private_chat_is_marked_as_such()
    {
        var chat = new JsonObject { ["id"] = 4711, ["type"] = "private", ["first_name"] = "Ana" };

        Read(Message(m => Fill(m, ("text", "/start AB12"), ("chat", chat))))
            .Should().Be(new Inbound.Line("key", new GroupId("tg:4711"), Ana, Said, "4711/12", "/start AB12", null) { Private = true });
    }

    [Fact]
    public void An_anonymous_administrator_is_the_group_and_not_the_bot_that_stands_in()
    {
        var line = Read(Message(m => Fill(m,
            ("text", "up"), ("sender_chat", Chat()), ("author_signature", "Barn office"),
            ("from", new JsonObject { ["id"] = 1087968824, ["is_bot"] = true, ["first_name"] = "Group" }))));

        line.Should().BeOfType<Inbound.Line>().Which.From.Should().Be(new Person("tg:-1001700000001", "Barn office"));
    }

    [Theory]
    [InlineData("from", """{"id":9,"is_bot":true,"first_name":"Other"}""")]
    [InlineData("via_bot", """{"id":9,"is_bot":true,"first_name":"Other"}""")]
    [InlineData("forward_origin", """{"type":"user","sender_user":{"id":700100200,"is_bot":true,"first_name":"Herd"}}""")]
    [InlineData("is_automatic_forward", "true")]
    [InlineData("chat", """{"id":-100555,"type":"channel","title":"News"}""")]
    public void What_no_person_says_says_nothing(string part, string value) =>
        Read(Message(m => Fill(m, ("text", "Juniper had a boy"), (part, JsonNode.Parse(value))))).Should().BeNull();

    [Theory]
    [InlineData("Ana", "Moreno", null, "Ana M.")]
    [InlineData("Ana", null, "ana", "Ana")]
    [InlineData("Ana Lucía", "Ñandú", null, "Ana Lucía Ñ.")]
    [InlineData(" Ana\n\u202EB ", null, null, "Ana B")]
    [InlineData("\u200B", null, "ana", "ana")]
    [InlineData("\u200B", "Moreno", null, "Moreno")]
    [InlineData("", null, null, "Somebody")]
    [InlineData("👩‍🌾", null, null, "👩‍🌾")]
    public void A_person_is_called_by_the_first_name_and_an_initial(string first, string? last, string? user, string name) =>
        TelegramNames.Of(new WireUser { Id = 4711, FirstName = first, LastName = last, Username = user }).Should().Be(new Person("tg:4711", name));

    [Theory]
    [InlineData("""{"update_id":1,"message":{"text":"no chat","message_id":1,"date":1}}""")]
    [InlineData("""{"update_id":1,"message":{"chat":null,"message_id":1,"date":1,"text":"x"}}""")]
    [InlineData("""{"update_id":1,"message":{"chat":{"id":5},"message_id":"one","date":1,"text":"x"}}""")]
    [InlineData("""{"update_id":1,"message":{"chat":{"id":5},"message_id":1,"date":1777696200000000,"text":"x"}}""")]
    [InlineData("""{"update_id":1,"message":{"chat":{"id":5},"message_id":1,"date":1,"text":"\uD83E"}}""")]
    [InlineData("""{"update_id":1,"my_chat_member":{"chat":{"id":5},"from":{"id":1},"date":1,"new_chat_member":{"status":"halfmember"}}}""")]
    [InlineData("""{"update_id":1,"message":[]}""")]
    [InlineData("[1]")]
    [InlineData("{\"update_id\":1,")]
    [InlineData("")]
    public void What_cannot_be_read_is_said_to_be_so_and_nothing_worse(string raw)
    {
        var reading = () => Read(raw);

        reading.Should().Throw<FormatException>();
    }

    [Theory]
    [InlineData("""{"update_id":1}""")]
    [InlineData("null")]
    [InlineData("""{"update_id":1,"comet_sighting":{}}""")]
    public void What_is_of_no_kind_we_know_says_nothing(string raw) => Read(raw).Should().BeNull();

    [Fact]
    public void A_forward_of_an_unknown_kind_costs_none_of_its_words()
    {
        var raw = Message(m => Fill(m, ("text", "Juniper had a boy"), ("forward_origin", new JsonObject { ["type"] = "martian" })));

        var byTheLibrary = () => System.Text.Json.JsonSerializer.Deserialize<Update>(raw, JsonBotAPI.Options);

        byTheLibrary.Should().Throw<System.Text.Json.JsonException>();
        Read(raw).Should().BeOfType<Inbound.Line>().Which.Text.Should().Be("Juniper had a boy");
    }

    [Fact]
    public void Our_few_fields_are_read_as_the_library_reads_them()
    {
        // Witness: Telegram.Bot 22.10.3.3 on the same JSON.
        var raw = Message(m => Fill(m,
            ("text", "up"), ("edit_date", 1777696300), ("author_signature", "office"), ("media_group_id", "55"),
            ("is_topic_message", true), ("message_thread_id", 5), ("sender_chat", Chat())));

        var theirs = System.Text.Json.JsonSerializer.Deserialize<Update>(raw, JsonBotAPI.Options)!.Message!;
        var ours = System.Text.Json.JsonSerializer.Deserialize<WireUpdate>(raw, WireUpdate.Options)!.Message!;

        (ours.MessageId, ours.Text, ours.AuthorSignature, ours.MediaGroupId, ours.IsTopicMessage, ours.MessageThreadId)
            .Should().Be((theirs.Id, theirs.Text, theirs.AuthorSignature, theirs.MediaGroupId, theirs.IsTopicMessage, theirs.MessageThreadId));
        (ours.Chat.Id, ours.From!.Id, ours.From.FirstName, ours.From.LastName, ours.From.IsBot, ours.SenderChat!.Id)
            .Should().Be((theirs.Chat.Id, theirs.From!.Id, theirs.From.FirstName, theirs.From.LastName, theirs.From.IsBot, theirs.SenderChat!.Id));
        DateTimeOffset.FromUnixTimeSeconds(ours.Date).UtcDateTime.Should().Be(theirs.Date);
        DateTimeOffset.FromUnixTimeSeconds(ours.EditDate!.Value).UtcDateTime.Should().Be(theirs.EditDate);
    }

    private Inbound? Read(string raw) => _inbound.Read(new InboxEntry("key", Taken, raw));

    private static string Message(Action<JsonObject> fill) => Update("message", Body(fill));

    private static string Tap(JsonObject message) => Update("callback_query", new JsonObject
    {
        ["id"] = "438",
        ["from"] = From(),
        ["chat_instance"] = "1",
        ["data"] = "v1:up:7",
        ["message"] = message,
    });

    private static JsonObject Change(JsonObject standing) => new()
    {
        ["chat"] = Chat(),
        ["from"] = From(),
        ["date"] = Said.ToUnixTimeSeconds(),
        ["new_chat_member"] = standing,
    };

    private static string Update(string kind, JsonObject content) => new JsonObject { ["update_id"] = 7001, [kind] = content }.ToJsonString();

    private static JsonObject Body(Action<JsonObject> fill)
    {
        var message = new JsonObject { ["message_id"] = 12, ["from"] = From(), ["chat"] = Chat(), ["date"] = Said.ToUnixTimeSeconds() };
        fill(message);
        return message;
    }

    private static JsonObject From() => new() { ["id"] = 4711, ["is_bot"] = false, ["first_name"] = "Ana", ["last_name"] = "Moreno" };

    private static JsonObject Chat(long id = GroupNumber) => new() { ["id"] = id, ["type"] = "supergroup", ["title"] = "Willow Bend" };

    private static void Fill(JsonObject message, params (string Name, JsonNode? Value)[] parts) =>
        Array.ForEach(parts, part => message[part.Name] = part.Value);
}
