using System.Text;
using System.Text.Json;
using FluentAssertions;
using HerdBot.Host.Telegram;
using Xunit;

namespace HerdBot.Tests.Host.Telegram;

public sealed class TelegramKeysTests
{
    [Theory]
    [InlineData("""{"update_id":7,"message":{"message_id":12,"chat":{"id":-100},"text":"a"}}""", "tgm:-100:12:0")]
    [InlineData("""{"update_id":8,"message":{"message_id":12,"chat":{"id":-100},"text":"a"}}""", "tgm:-100:12:0")]
    [InlineData("""{"update_id":7,"callback_query":{"id":"4382","from":{"id":1}}}""", "tgc:4382")]
    [InlineData("""{"update_id":7,"my_chat_member":{"date":5}}""", "tgu:700:7")]
    [InlineData("""{"update_id":7,"message":{"chat":5}}""", "tgu:700:7")]
    public void The_same_thing_has_the_same_key(string raw, string key) => Key(raw).Should().Be(key);

    [Fact]
    public void An_edit_has_a_key_of_its_own_and_two_within_a_second_have_two()
    {
        var keys = new[]
        {
            Key("""{"update_id":1,"message":{"message_id":12,"chat":{"id":-100},"text":"a boy"}}"""),
            Key("""{"update_id":2,"edited_message":{"message_id":12,"chat":{"id":-100},"edit_date":60,"text":"a girl"}}"""),
            Key("""{"update_id":3,"edited_message":{"message_id":12,"chat":{"id":-100},"edit_date":60,"text":"a boy"}}"""),
            Key("""{"update_id":4,"edited_message":{"message_id":12,"chat":{"id":-100},"edit_date":61,"text":"a boy"}}"""),
        };

        keys.Should().OnlyHaveUniqueItems();
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("5")]
    [InlineData("""{"update_id":"seven"}""")]
    [InlineData("""{"update_id":-7}""")]
    [InlineData("""{"update_id":99999999999}""")]
    public void What_has_no_number_is_known_by_its_content(string raw) => Key(raw).Should().StartWith("tgx:").And.HaveLength(68);

    [Fact]
    public void A_key_is_short_whatever_comes()
    {
        var keys = new[]
        {
            $$$"""{"update_id":1,"callback_query":{"id":"{{{new string('ñ', 500)}}}"}}""",
            """{"update_id":1,"edited_message":{"message_id":9223372036854775807,"chat":{"id":-9223372036854775808},"edit_date":9223372036854775807}}""",
            """{"update_id":1,"edited_message":{"message_id":1,"chat":{"id":1},"edit_date":1,"text":"\uD83E"}}""",
            """{"update_id":1,"callback_query":{"id":"\uD83E"}}""",
        }.Select(Key);

        keys.Should().OnlyContain(key => Encoding.UTF8.GetByteCount(key) <= 200);
    }

    private static string Key(string raw) => TelegramKeys.Of(700, JsonDocument.Parse(raw).RootElement);
}
