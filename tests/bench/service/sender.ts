import { Agent, request } from "node:http";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { Temporal } from "temporal-polyfill";
import { reply, text } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import { manualClock } from "../../../src/clock.ts";
import { compose } from "../../../src/compose.ts";
import { createMailbox } from "../../../src/discord/mailbox.ts";
import { createMessenger } from "../../../src/discord/messenger.ts";
import type { Messenger, OutgoingMessage } from "../../../src/jobs/ports.ts";
import { silentLog } from "../../../src/log.ts";
import { reminder } from "../../src/store/kit.ts";
import type { WorldTold } from "./load/talk.ts";
import { ownCpu, startPlatform } from "./played.ts";

const PEOPLE = 500;
const PER_SECOND = 50;
const GOAL = 0.02;
/** What is sent before anything is measured: channels are opened, code is compiled. */
const WARM_UP = 100;
/** Long enough to hold the collections of garbage that come now and then. */
const ROUNDS = 4;
/**
 * Messages at full speed before the steady state is measured: as many as some minutes at the platform's
 * rate, after which the engine has compiled what is used again and again.
 */
const BUSY_BEFORE = 10_000;
const AT_ONCE = 8;
const NOW = Temporal.Instant.from("2026-10-25T12:00:00Z");

/**
 * The sender kept busy at the platform's 50 requests a second: by itself, and as a whole sweep with its
 * claims and records on the embedded file, beside a bare HTTP client posting as much.
 */
export async function benchSender(folder: string, write: (line: string) => void): Promise<boolean> {
  const { child, world } = await startPlatform(1, PEOPLE);
  const paced = startSender(world, PER_SECOND);
  const unpaced = startSender(world, 1_000_000);
  try {
    const swept = await sweepCpu(folder, world, paced.messenger);
    const oneRound = swept.outgoing.length - WARM_UP;
    const atFirst = await sendCpu(swept.outgoing, paced.messenger, ROUNDS, "first");
    await sendCpu(swept.outgoing, unpaced.messenger, Math.ceil(BUSY_BEFORE / oneRound), "between");
    const sent = await sendCpu(swept.outgoing, paced.messenger, ROUNDS, "again");
    const bare = await bareCpu(world);
    const said = (
      what: string,
      { share, seconds }: { share: number; seconds: number },
      n: number,
    ) =>
      `  ${what}: ${(share * 100).toFixed(1)} % of one core at ${(n / seconds).toFixed(0)} a second, ${((share * seconds * 1_000) / n).toFixed(2)} ms each, ${(share / bare.share).toFixed(1)} x the bare client`;
    write("the sender kept busy, its own processor time:");
    write(said("a bare HTTP client posting as much", bare, PEOPLE));
    write(said("the sender by itself, at first", atFirst, ROUNDS * oneRound));
    write(said(`the sender by itself, after ${BUSY_BEFORE} messages`, sent, ROUNDS * oneRound));
    write(said("whole sweeps on SQLite", swept.cpu, PEOPLE - WARM_UP));
    const isGood = sent.share <= GOAL;
    write(
      `the sender at the platform's ${PER_SECOND} requests a second: ${(sent.share * 100).toFixed(1)} % of one core, goal ${GOAL * 100} %: ${isGood ? "ok" : "missed"}`,
    );
    return isGood;
  } finally {
    paced.stop();
    unpaced.stop();
    child.kill();
  }
}

function startSender({ token, applicationId, apiBase }: WorldTold, requestsPerSecond: number) {
  const mailbox = createMailbox({ token, applicationId, apiBase, requestsPerSecond });
  const messenger = createMessenger({ mailbox, log: silentLog, onTokenRefused: () => undefined });
  return { messenger, stop: () => mailbox.stop() };
}

/** Sweeps that deliver one reminder to each person; some first, to warm up. Also gives what was sent. */
async function sweepCpu(folder: string, world: WorldTold, messenger: Messenger) {
  const clock = manualClock(NOW);
  const path = join(folder, "sender.db");
  const app = await compose({
    face: "discord",
    databaseUrl: `file:${path}`,
    clock,
    log: silentLog,
  });
  if (!app.ok) throw new Error(app.problem.sentence);
  const { stores, tickFor, close } = app.value;
  const [guild] = world.guilds;
  if (guild === undefined) throw new Error("nobody is there");
  const group = await stores.groups.open(groupId(guild.id), guild.name);
  for (const [n, person] of guild.people.entries()) {
    const { id: memberId } = await stores.members.open(group.id, person.id, person.name);
    const dueAt = NOW.add({ minutes: n < WARM_UP ? 1 : 90 });
    const due = reminder("k", { dueAt, helpsUntil: dueAt.add({ hours: 9 }) });
    await stores.reminders.replan({
      memberId,
      version: 0,
      now: NOW,
      reminders: [due],
      replanAt: null,
    });
  }
  const outgoing: OutgoingMessage[] = [];
  const tick = tickFor({
    send: (message) => {
      outgoing.push(message);
      return messenger.send(message);
    },
  });
  clock.advanceTo(NOW.add({ minutes: 2 }));
  await tick();
  clock.advanceTo(NOW.add({ minutes: 91 }));
  const cpu = await ownCpu(async () => {
    const { sent } = await tick();
    if (sent !== PEOPLE - WARM_UP) throw new Error(`${sent} were sent`);
  });
  await close();
  return { cpu, outgoing };
}

/** The same messages anew, so many times, without claims and records. */
async function sendCpu(
  outgoing: readonly OutgoingMessage[],
  messenger: Messenger,
  rounds: number,
  name: string,
) {
  const again = Array.from({ length: rounds }, (_, round) =>
    outgoing.slice(WARM_UP).map((message, n) => ({
      ...message,
      nonce: `${name}-${round}-${n}`,
      // Their claims would be over before the last round.
      isOurs: () => true,
    })),
  );
  const rest = again.flat().values();
  const lane = async (): Promise<void> => {
    for (const message of rest) {
      const result = await messenger.send(message);
      if (result.kind !== "sent") throw new Error(`not sent: ${JSON.stringify(result)}`);
    }
  };
  return ownCpu(() => Promise.all(Array.from({ length: AT_ONCE }, lane)));
}

/** As many requests of the size of a message at the same pace, by Node's own client, as long at work. */
async function bareCpu({ apiBase, token }: WorldTold) {
  const agent = new Agent({ keepAlive: true });
  const body = JSON.stringify({ words: reply("Thaw", { parts: [text("x".repeat(1_000))] }) });
  const post = (): Promise<void> =>
    new Promise((resolve, reject) => {
      const headers = {
        authorization: `Bot ${token}`,
        "content-type": "application/json",
        "content-length": String(Buffer.byteLength(body)),
      };
      const url = `${apiBase}/v10/channels/1/messages`;
      const asking = request(url, { method: "POST", agent, headers }, (answer) => {
        answer.resume().on("end", resolve);
      });
      asking.on("error", reject).end(body);
    });
  for (let n = 0; n < BUSY_BEFORE / AT_ONCE; n += 1) {
    await Promise.all(Array.from({ length: AT_ONCE }, post));
  }
  const cpu = await ownCpu(async () => {
    const beganMs = performance.now();
    for (let n = 0; n < PEOPLE; n += 1) {
      await pause(Math.max(0, beganMs + (n * 1_000) / PER_SECOND - performance.now()));
      await post();
    }
  });
  agent.destroy();
  return cpu;
}
