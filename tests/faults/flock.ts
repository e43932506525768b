import { Temporal } from "temporal-polyfill";
import { groupId } from "../../shared/ids.ts";
import { openStore } from "../../src/store/open.ts";
import { type DiscordServer, startDiscordServer } from "../discord-server/server.ts";
import { textOf } from "../discord-server/view.ts";
import type { Message } from "../discord-server/world.ts";
import { botProcesses } from "./bot-processes.ts";
import { type EndOf, judge, type Verdict } from "./check.ts";
import type { Pool } from "./crew.ts";
import { channelOf, fill, gather, type Person } from "./fill.ts";
import { Killer } from "./kills.ts";
import type { Place, Places } from "./place.ts";
import type { FlockPlan, Shut, StepPlan } from "./plan.ts";
import { sweepProcesses } from "./sweep-processes.ts";
import { countIn, type FaultCounts, Weather } from "./weather.ts";

/** The processes of a flock, all of one kind. */
export interface Processes {
  /** A sweep of each; resolves when they have ended or died. Dead ones are replaced. */
  sweep(): Promise<void>;
  /** Their clocks now go so much ahead of the true time. */
  setAhead(ms: number): void;
  /** Kills one of them, as `kill -9` does. */
  kill(): void;
  /** When something is waiting next, by the store; null when nothing is. */
  nextDue(): Promise<number | null>;
  close(): Promise<void>;
}

/** Everything that a flock's processes work with. */
export interface Stand {
  readonly plan: FlockPlan;
  readonly place: Place;
  readonly server: DiscordServer;
  readonly pool: Pool;
  readonly counts: FaultCounts;
  /** How far ahead of the true time the flock lives, milliseconds. */
  readonly aheadMs: () => number;
}

/** How a run ended, by its seed. */
export interface RunEnd {
  readonly seed: number;
  readonly verdicts: readonly Verdict[];
}

const DAY_OF_FLOCK = "2026-10-23";
/** So long the bot's mailbox waits for an answer. */
const REQUEST_MAX_MS = 15_000;
/** Sweeps after the last fault; a reminder that is refused for long needs a few. */
const CALM_SWEEPS_MAX = 60;

/** One flock from its first reminder to the last: through faults and crashes, then in calm until nothing waits. */
export async function liveThrough(
  plan: FlockPlan,
  parts: { readonly pool: Pool; readonly places: Places; readonly counts: FaultCounts },
): Promise<readonly RunEnd[]> {
  const server = await startDiscordServer({ token: "aaa.bbb.ccc" });
  const place = await parts.places.make(plan.stage);
  try {
    const people = gather(server, plan);
    const hour = String(plan.startHour).padStart(2, "0");
    const startMs = Temporal.Instant.from(`${DAY_OF_FLOCK}T${hour}:00:00Z`).epochMilliseconds;
    await fill(place.url, plan, people, startMs);
    const flight = new Flight({ ...parts, plan, place, server }, people, startMs);
    await flight.storm();
    await flight.calm();
    return await endsOf(server, place, people);
  } finally {
    await server.close();
    await place.remove();
  }
}

class Flight {
  readonly #stand: Stand;
  readonly #people: readonly Person[];
  readonly #killer = new Killer();
  readonly #weather: Weather;
  readonly #processes: Processes;
  #aheadMs: number;
  #moves = 0;

  constructor(stand: Omit<Stand, "aheadMs">, people: readonly Person[], startMs: number) {
    this.#stand = { ...stand, aheadMs: () => this.#aheadMs };
    this.#people = people;
    this.#aheadMs = startMs - Date.now();
    const { plan, counts, server } = stand;
    const jump = (ms: number): void => this.#advance(ms);
    this.#weather = new Weather(plan.number, counts, { jump, moves: () => this.#moves });
    server.platform.world.nowMs = () => this.#nowMs();
    server.platform.faults.decide = (received) => {
      const cut = this.#weather.afterMove(received);
      return cut ?? this.#killer.at(received) ?? this.#weather.over(received);
    };
    const make = plan.stage === "bot" ? botProcesses : sweepProcesses;
    this.#processes = make(this.#stand);
  }

  #nowMs(): number {
    return Date.now() + this.#aheadMs;
  }

  #advance(ms: number): void {
    if (Math.abs(ms) > REQUEST_MAX_MS) this.#moves += 1;
    this.#aheadMs += ms;
    this.#processes.setAhead(this.#aheadMs);
  }

  async storm(): Promise<void> {
    const { plan } = this.#stand;
    this.#shut("at first", true);
    for (const step of plan.steps) await this.#step(step);
    this.#shut("at first", false);
    this.#killer.disarm();
    this.#weather.rate = 0;
  }

  async #step(step: StepPlan): Promise<void> {
    const { counts, place } = this.#stand;
    this.#advance(step.advanceMs);
    if (step.advanceMs < 0) countIn(counts, "clock set back");
    if (step.advanceMs > 3_600_000) countIn(counts, "outage of hours or days");
    this.#weather.rate = step.faultRate;
    this.#killer.arm(step.kill, () => {
      countIn(counts, `kill -9, ${step.kill?.when}`);
      this.#processes.kill();
    });
    const cutting = step.cutsDatabase
      ? new Promise((resolve) => setTimeout(resolve, 60)).then(() => place.cut())
      : Promise.resolve(0);
    await this.#processes.sweep();
    countIn(counts, "connection to the database cut", await cutting);
    this.#killer.disarm();
  }

  /** Closes or opens what is shut for so long. What is shut always is never opened. */
  #shut(forHowLong: Shut, isShut: boolean): void {
    const { platform } = this.#stand.server;
    for (const { plan, run, user, guild } of this.#people) {
      const closes = plan.direct === "always" || (plan.direct === forHowLong && isShut);
      if (closes) platform.closedDirect.add(user.id);
      else platform.closedDirect.delete(user.id);
      const bars = run.channel === "always" || (run.channel === forHowLong && isShut);
      if (bars) platform.barredChannels.set(channelOf(guild), run.seed % 2 === 0 ? 50001 : 50013);
      else platform.barredChannels.delete(channelOf(guild));
    }
  }

  async calm(): Promise<void> {
    for (let sweeps = 0; sweeps < CALM_SWEEPS_MAX; sweeps += 1) {
      const next = await this.#processes.nextDue();
      if (next === null) break;
      // A clock that goes a little ahead or behind must not leave it one moment short.
      this.#advance(Math.max(next - this.#nowMs(), 0) + 40_000);
      await this.#processes.sweep();
    }
    await this.#processes.close();
  }
}

function toEnd(message: Message) {
  return { text: textOf(message), nonce: message.nonce };
}

async function endsOf(
  server: DiscordServer,
  place: Place,
  people: readonly Person[],
): Promise<readonly RunEnd[]> {
  const rows = await place.rows();
  const opened = await openStore(place.url);
  if (!opened.ok) throw new Error(opened.problem.sentence);
  const { stores, close } = opened.value;
  const byRun = new Map<number, Verdict[]>();
  for (const { plan, run, user, guild } of people) {
    const inChannel = server.messagesIn(channelOf(guild));
    const { newest } = await stores.undelivered.ofGroup(
      groupId(guild.id),
      Temporal.Instant.fromEpochMilliseconds(0),
      1_000,
    );
    const end: EndOf = {
      name: `seed ${run.seed}, ${plan.name}`,
      titles: plan.rows.map(({ title }) => title),
      rows: rows.filter(({ member }) => member === plan.name),
      messages: [
        ...server.directMessages(user),
        ...inChannel.filter(({ pinged }) => pinged.includes(user.id)),
      ].map(toEnd),
      shownToCoach: newest.filter(({ memberName }) => memberName === plan.name).length,
    };
    byRun.set(run.seed, [...(byRun.get(run.seed) ?? []), judge(end)]);
  }
  await close();
  return [...byRun].map(([seed, verdicts]) => ({ seed, verdicts }));
}
