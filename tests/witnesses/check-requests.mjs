// A second reading of the Bot API: every call that the tests saw the bot make is held against the published types.
// Usage: node check-requests.mjs FOLDER, where the tests have left a line {"method", "body"} for each call.
import { execFileSync } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL(".", import.meta.url));
const folder = process.argv[2];
const expected = ["sendMessage", "editMessageText", "setMessageReaction", "answerCallbackQuery", "setMyCommands", "getUpdates", "deleteWebhook"];
const bare = ["getMe"];

const lines = readdirSync(folder).filter((name) => name.endsWith(".jsonl"))
  .flatMap((name) => readFileSync(join(folder, name), "utf8").split("\n").filter(Boolean));
const calls = [...new Set(lines)].map((line) => JSON.parse(line));

const missing = expected.filter((method) => !calls.some((call) => call.method === method));
if (missing.length > 0)
  throw new Error(`The tests never called ${missing.join(", ")}: nothing was checked.`);
const spoken = calls.filter((call) => bare.includes(call.method) && Object.keys(call.body).length > 0);
if (spoken.length > 0)
  throw new Error(`${spoken[0].method} takes no parameters.`);

const checked = calls.filter((call) => !bare.includes(call.method));
mkdirSync(join(here, "generated"), { recursive: true });
writeFileSync(join(here, "generated", "requests.ts"), [
  'import type { APIMethodParams } from "@gramio/types/utils";',
  "export const requests = [",
  ...checked.map((call) => `  ${JSON.stringify(call.body)} satisfies APIMethodParams<${JSON.stringify(call.method)}>,`),
  "];",
  "",
].join("\n"));

try {
  execFileSync(process.execPath, [join(here, "node_modules", "typescript", "bin", "tsc"), "-p", here], { stdio: "inherit" });
} catch {
  console.error("A call does not agree with the published types, or a mistake was not caught (see above).");
  process.exit(1);
}
console.log(`Witness @gramio/types: ${checked.length} different calls agree with the Bot API's published types, and every planted mistake was caught.`);
