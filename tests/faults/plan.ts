import { REMINDER_KINDS, type ReminderKind } from "../../shared/reminder/types.ts";
import { type Dice, dice } from "./random.ts";

/** What runs the reminders: the sweep on a file, several sweeps on one server, or the whole bot. */
export type Stage = "file" | "server" | "bot";

/** For how long something is shut: direct messages, or the group's channel. */
export type Shut = "never" | "at first" | "always";

export interface RowPlan {
  /** A name that no other reminder of any run has. */
  readonly title: string;
  readonly kind: ReminderKind;
  readonly dueAfterMinutes: number;
  readonly helpsForMinutes: number;
}

export interface PersonPlan {
  readonly name: string;
  readonly direct: Shut;
  readonly deliverTo: "direct message" | "channel";
  readonly rows: readonly RowPlan[];
}

/** One run: a group, its members and what they are to be told. Follows from its seed alone. */
export interface RunPlan {
  readonly seed: number;
  readonly hasChannel: boolean;
  readonly channel: Shut;
  readonly people: readonly PersonPlan[];
}

export type KillPoint =
  /** At the n-th message of a sweep that reaches the platform. */
  | {
      readonly when: "before it is stored" | "after it is stored" | "after it is answered";
      readonly atPost: number;
      readonly afterMs: number;
    }
  | { readonly when: "at a time"; readonly afterMs: number };

/** Time goes on, and a sweep is made. */
export interface StepPlan {
  readonly advanceMs: number;
  readonly kill: KillPoint | null;
  /** The part of requests that meet a fault. */
  readonly faultRate: number;
  /** Connections to the database are cut during the sweep (on a server). */
  readonly cutsDatabase: boolean;
}

/** Runs that share a process, a database, a platform and what befalls those. */
export interface FlockPlan {
  readonly number: number;
  readonly stage: Stage;
  readonly workers: number;
  /** Hour of the day (UTC) at which it begins: some begin before quiet hours. */
  readonly startHour: number;
  readonly runs: readonly RunPlan[];
  readonly steps: readonly StepPlan[];
}

export const FLOCK = 10;

const SECOND = 1_000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;

function planRun(seed: number): RunPlan {
  const die = dice("run", seed);
  const shut = (): Shut => die.pick(["never", "never", "never", "at first", "always"]);
  const people = Array.from({ length: die.int(2, 5) }, (_, person) => ({
    name: `m${seed}x${person}`,
    direct: shut(),
    deliverTo: die.pick(["direct message", "direct message", "direct message", "channel"]),
    rows: Array.from({ length: die.int(1, 4) }, (__, row) => ({
      title: `Pot${seed}x${person}x${row}z`,
      kind: die.pick(REMINDER_KINDS),
      dueAfterMinutes: die.pick([0, 0, 0, 0, 5, 20, 45, 90]),
      helpsForMinutes: die.pick([4, 30, 360, 1_440, 2_880]),
    })),
  }));
  return { seed, hasChannel: die.chance(0.7), channel: shut(), people };
}

/** Mostly minutes, so that what is repeated falls inside and outside the platform's memory of nonces. */
function advance(die: Dice): number {
  const part = die.next();
  if (part < 0.25) return die.int(0, 60) * SECOND;
  if (part < 0.65) return die.int(100, 240) * SECOND;
  if (part < 0.85) return die.int(5, 40) * MINUTE;
  if (part < 0.91) return die.int(1, 10) * HOUR;
  if (part < 0.93) return die.int(1, 3) * 24 * HOUR;
  // A clock that was set back.
  return -die.int(5, 300) * SECOND;
}

/** Later sweeps send less, so the process is killed sooner. */
function killPoint(die: Dice, step: number): KillPoint {
  const when = die.pick([
    "before it is stored",
    "after it is stored",
    "after it is answered",
    "at a time",
  ]);
  const afterMs = die.int(0, when === "at a time" ? 300 : 25);
  return when === "at a time"
    ? { when, afterMs }
    : { when, afterMs, atPost: die.int(1, step < 2 ? 8 : 2) };
}

function planSteps(die: Dice, stage: Stage): readonly StepPlan[] {
  const count = stage === "bot" ? 4 : die.int(6, 9);
  return Array.from({ length: count }, (_, step) => ({
    advanceMs: step === 0 ? 0 : advance(die),
    kill: die.chance(step < 2 ? 0.8 : 0.5) ? killPoint(die, step) : null,
    faultRate: die.pick([0.15, 0.4, 0.7]),
    cutsDatabase: die.chance(0.25),
  }));
}

function stageOf(flock: number): Stage {
  if (flock % 16 === 15) return "bot";
  return flock % 10 >= 7 ? "server" : "file";
}

/** The runs with the seeds from ten times the flock's number on; ten of them unless told otherwise. */
export function planFlock(flock: number, runs = FLOCK): FlockPlan {
  const stage = stageOf(flock);
  const die = dice("flock", flock);
  return {
    number: flock,
    stage,
    workers: stage === "server" ? die.int(2, 4) : 1,
    startHour: die.pick([7, 8, 9, 12, 15, 20]),
    runs: Array.from({ length: runs }, (_, n) => planRun(flock * FLOCK + n)),
    steps: planSteps(die, stage),
  };
}
