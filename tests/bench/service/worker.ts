import { setTimeout as pause } from "node:timers/promises";
import { Temporal } from "temporal-polyfill";
import { manualClock } from "../../../src/clock.ts";
import { compose } from "../../../src/compose.ts";
import { silentLog } from "../../../src/log.ts";

// A process of its own that sweeps: arguments are the database, the instant and how long a message takes
// to send, milliseconds. Says when it is connected, waits for a word, then sends all that is due and says
// which messages it sent, by their nonces.

const [databaseUrl = "", now = "", sendMs = "0"] = process.argv.slice(2);

const app = await compose({
  face: "discord",
  databaseUrl,
  clock: manualClock(Temporal.Instant.from(now)),
  log: silentLog,
});
if (!app.ok) throw new Error(app.problem.sentence);
const sent: string[] = [];
const tick = app.value.tickFor({
  send: async ({ nonce }) => {
    await pause(Number(sendMs));
    sent.push(nonce);
    return { kind: "sent", messageId: nonce, where: "direct message", directClosed: false };
  },
});
process.send?.("ready");
process.once("message", async () => {
  const report = await tick();
  process.send?.({ sent, errors: report.errors });
  await app.value.close();
  process.disconnect();
});
