// Times chrono-node's search for a time in each message of a corpus: after a warm-up, so many rounds over all of it.
// Prints a row for each message: the microseconds of each round, as JSON.
// Usage: node chrono-times.mjs CORPUS.jsonl WARM-UP-ROUNDS ROUNDS
import { readFileSync } from "node:fs";
import * as chrono from "chrono-node";

const corpus = process.argv[2];
const [warmUp, rounds] = process.argv.slice(3).map(Number);
const messages = readFileSync(corpus, "utf8").split("\n").filter(Boolean).map((line) => {
  const { text, given } = JSON.parse(line);
  return { text, now: new Date(given.now), taken: [] };
});
const search = ({ text, now }) => chrono.parse(text, now, { forwardDate: false });

for (let round = 0; round < warmUp; round++) {
  messages.forEach(search);
}
for (let round = 0; round < rounds; round++) {
  for (const message of messages) {
    const start = process.hrtime.bigint();
    search(message);
    message.taken.push(Number(process.hrtime.bigint() - start) / 1000);
  }
}
console.log(JSON.stringify(messages.map(({ taken }) => taken)));
