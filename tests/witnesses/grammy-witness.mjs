// A second client: grammY polls the stand-in, speaks, hears a press, and stops.
// Usage: node grammy-witness.mjs URL TOKEN. Ends with 0 once it was told "that is all" and had stopped cleanly.
import { Bot, InlineKeyboard } from "grammy";

const [url, token] = process.argv.slice(2);
const bot = new Bot(token, { client: { apiRoot: url } });
const limit = setTimeout(() => fail("nothing more happened for 30 seconds"), 30_000);

function fail(why) {
  console.error(`grammY: ${why}`);
  process.exit(1);
}

bot.catch((error) => fail(error.message));

bot.on("message:text", async (ctx) => {
  if (ctx.msg.text === "that is all") {
    await bot.stop();
    clearTimeout(limit);
    return;
  }
  await ctx.reply(`${ctx.from.first_name} said: ${ctx.msg.text}`, {
    reply_parameters: { message_id: ctx.msg.message_id },
    reply_markup: new InlineKeyboard().text("Standing", "v1:up:7"),
  });
  await ctx.react("👍");
});

bot.on("edited_message:text", (ctx) => ctx.reply(`now: ${ctx.editedMessage.text}`));

bot.on("callback_query:data", async (ctx) => {
  await ctx.answerCallbackQuery();
  await ctx.editMessageText(`${ctx.from.first_name} pressed ${ctx.callbackQuery.data}`);
});

bot.on("my_chat_member", (ctx) => ctx.reply(`I am ${ctx.myChatMember.new_chat_member.status} of ${ctx.chat.title}`));

// What the stand-in refuses must reach a client as Telegram's own refusals do.
const refused = await bot.api.sendMessage(5, "nobody there").catch((error) => error);
if (refused.error_code !== 400 || refused.description !== "Bad Request: chat not found")
  fail(`a refusal was understood as ${JSON.stringify(refused)}`);

await bot.start({ allowed_updates: ["message", "edited_message", "callback_query", "my_chat_member"] });
