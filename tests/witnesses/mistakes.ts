// Mistakes that the check must catch: where one of them is no error, the compiler reports the line above it as unused.
import type { APIMethodParams } from "@gramio/types/utils";

export const mistakes = [
  // @ts-expect-error the text is called "text"
  { chat_id: -5, txt: "Up?" } satisfies APIMethodParams<"sendMessage">,
  // @ts-expect-error a message needs a text
  { chat_id: -5 } satisfies APIMethodParams<"sendMessage">,
  // @ts-expect-error there is no such parameter
  { chat_id: -5, text: "Up?", reply_to: 7 } satisfies APIMethodParams<"sendMessage">,
  // @ts-expect-error a command needs a description
  { commands: [{ command: "open" }] } satisfies APIMethodParams<"setMyCommands">,
  // @ts-expect-error this is no mark of Telegram's
  { chat_id: -5, message_id: 7, reaction: [{ type: "emoji", emoji: "✅" }] } satisfies APIMethodParams<"setMessageReaction">,
  // @ts-expect-error the number of a message is a number
  { chat_id: -5, message_id: "7", text: "Up." } satisfies APIMethodParams<"editMessageText">,
  // @ts-expect-error there is no such kind of entity
  { chat_id: -5, text: "Up?", entities: [{ type: "fat", offset: 0, length: 2 }] } satisfies APIMethodParams<"sendMessage">,
  // @ts-expect-error a button carries "callback_data"
  { chat_id: -5, text: "Up?", reply_markup: { inline_keyboard: [[{ text: "Yes", data: "y" }]] } } satisfies APIMethodParams<"sendMessage">,
];
