import { setTimeout as pause } from "node:timers/promises";
import { type HttpAnswer, refusal } from "../discord-server/answer.ts";
import type { Act } from "../discord-server/faults.ts";
import { obj, str } from "../discord-server/json.ts";
import type { Received } from "../discord-server/request.ts";
import { type Dice, dice } from "./random.ts";

/** Every fault that is made, by name and count. */
export type FaultCounts = Map<string, number>;

export function countIn(counts: FaultCounts, name: string, n = 1): void {
  counts.set(name, (counts.get(name) ?? 0) + n);
}

function tooMany(retryAfterS: number, isGlobal: boolean): HttpAnswer {
  return {
    status: 429,
    body: { message: "You are being rate limited.", retry_after: retryAfterS, global: isGlobal },
    headers: {
      "retry-after": String(retryAfterS),
      "x-ratelimit-scope": isGlobal ? "global" : "user",
      ...(isGlobal ? { "x-ratelimit-global": "true" } : {}),
    },
  };
}

const BAD_GATEWAY: HttpAnswer = {
  status: 502,
  bytes: new TextEncoder().encode("<html><body><h1>502 Bad Gateway</h1></body></html>"),
};

interface Kind {
  readonly name: string;
  /** Against the other kinds. */
  readonly weight: number;
  /** Only for requests that write a message. */
  readonly isOfMessages?: boolean;
  readonly act: (die: Dice, sky: Sky) => Act;
}

/** What a fault may do besides answering. */
export interface Sky {
  /** Moves the clock of all processes while the request is under way. */
  readonly jump: (ms: number) => void;
  /** How often the clock has moved by more than a request may take. */
  readonly moves: () => number;
}

/**
 * A clock that is moved shortens the flock's time, not the network's: a request that was under way then
 * would be one that takes minutes, which the bot has given up and the platform has let go of. One that
 * comes in so soon after was begun before.
 */
const BEGUN_BEFORE_MS = 50;

const undone = (says: Act["says"]): Act => ({ kind: "act", isDone: false, says });
const done = (says: Act["says"]): Act => ({ kind: "act", isDone: true, says });

const KINDS: readonly [Kind, ...Kind[]] = [
  {
    name: "429 for a moment",
    weight: 4,
    act: (die) => undone(tooMany(die.int(5, 40) / 100, false)),
  },
  {
    name: "429 for longer than is sat out",
    weight: 3,
    act: (die) => undone(tooMany(die.int(3, 90), false)),
  },
  {
    name: "429 for all routes, for a moment",
    weight: 2,
    act: (die) => undone(tooMany(die.int(5, 30) / 100, true)),
  },
  {
    name: "429 for all routes, for long",
    weight: 0.5,
    act: (die) => undone(tooMany(die.int(3, 60), true)),
  },
  { name: "500 before it was done", weight: 4, act: () => undone(refusal(500, 0, "500")) },
  { name: "503 before it was done", weight: 2, act: () => undone(refusal(503, 0, "503")) },
  { name: "502 with a page of HTML", weight: 2, act: () => undone(BAD_GATEWAY) },
  { name: "500 after it was done", weight: 5, act: () => done(refusal(500, 0, "500")) },
  { name: "502 after it was done", weight: 2, act: () => done(BAD_GATEWAY) },
  { name: "connection dropped before it was done", weight: 4, act: () => undone("reset") },
  { name: "connection dropped after it was done", weight: 6, act: () => done("reset") },
  { name: "answer cut off in the middle", weight: 3, act: () => done("cut") },
  {
    name: "slow before it was done",
    weight: 3,
    act: (die, { moves }) => {
      const movesBefore = moves();
      return {
        kind: "act",
        before: () => pause(die.int(20, 250)),
        isDone: () => moves() === movesBefore,
        says: "the truth",
      };
    },
  },
  {
    name: "slow after it was done",
    weight: 3,
    act: (die) => ({ ...done("the truth"), after: () => pause(die.int(20, 250)) }),
  },
  {
    name: "clock moved while it was under way",
    weight: 2,
    act: (die, { jump }) => ({
      ...done("the truth"),
      after: async () => {
        jump(die.pick([150_000, 400_000, -60_000]));
        await pause(30);
      },
    }),
  },
  {
    name: "clock moved, then the connection dropped",
    weight: 1,
    act: (die, { jump }) => ({
      ...done("reset"),
      after: async () => {
        jump(die.pick([150_000, 400_000, -60_000]));
        await pause(30);
      },
    }),
  },
  {
    name: "refused: direct messages closed just now",
    weight: 2,
    isOfMessages: true,
    act: () => undone(refusal(403, 50007, "Cannot send messages to this user")),
  },
  {
    name: "refused: bad form",
    weight: 0.5,
    isOfMessages: true,
    act: () => undone(refusal(400, 50035, "Invalid Form Body")),
  },
];

const MESSAGES = /^\/channels\/(?<channel>\d+)\/messages$/u;

export function isMessagePost({ method, path }: Received): boolean {
  return method === "POST" && MESSAGES.test(path);
}

function isOfReminders({ path }: Received): boolean {
  return /^\/(channels|users)\//u.test(path);
}

/** What a request is about, whichever order requests come in. */
function subject(received: Received): string {
  const body = obj(received.body);
  const about = body["nonce"] ?? body["recipient_id"] ?? received.path;
  return `${received.method} ${str(about)}`;
}

/** Faults for the requests of one flock: each the same whenever its seed is played. */
export class Weather {
  readonly #seed: number;
  readonly #counts: FaultCounts;
  readonly #sky: Sky;
  readonly #seen = new Map<string, number>();
  #jumpedMs = Number.NEGATIVE_INFINITY;
  rate = 0;

  constructor(seed: number, counts: FaultCounts, sky: Sky) {
    this.#seed = seed;
    this.#counts = counts;
    const jump = (ms: number): void => {
      this.#jumpedMs = performance.now();
      sky.jump(ms);
    };
    this.#sky = { ...sky, jump };
  }

  /** What becomes of a request that was under way when the clock moved; null for every other one. */
  afterMove(received: Received): Act | null {
    if (!isOfReminders(received)) return null;
    if (performance.now() - this.#jumpedMs >= BEGUN_BEFORE_MS) return null;
    countIn(this.#counts, "connection dropped as the clock moved");
    return undone("reset");
  }

  over(received: Received): Act | null {
    if (this.rate === 0 || !isOfReminders(received)) return null;
    const about = subject(received);
    const nth = (this.#seen.get(about) ?? 0) + 1;
    this.#seen.set(about, nth);
    const die = dice("weather", this.#seed, about, nth);
    if (!die.chance(this.rate)) return null;
    const kind = pickKind(die, isMessagePost(received));
    countIn(this.#counts, kind.name);
    return kind.act(die, this.#sky);
  }
}

function pickKind(die: Dice, isOfMessages: boolean): Kind {
  const kinds = KINDS.filter((kind) => isOfMessages || kind.isOfMessages !== true);
  let left = die.next() * kinds.reduce((sum, { weight }) => sum + weight, 0);
  for (const kind of kinds) {
    left -= kind.weight;
    if (left < 0) return kind;
  }
  return KINDS[0];
}
