import { within } from "./within.ts";

/** Where the parts that health depends on are asked. */
export interface Vitals {
  /** Rejects, or does not settle, when the database does not answer. */
  readonly askDatabase: () => Promise<unknown>;
  /** Whether every shard is connected. */
  readonly isGatewayUp: () => boolean;
  /** Since the sweep last did anything, seconds; null while it has done nothing. */
  readonly sweepSilence: () => number | null;
  readonly isStopping: () => boolean;
  /** Age of the process, seconds. */
  readonly upSeconds: () => number;
}

export interface Health {
  readonly status: "well" | "starting" | "unwell" | "stopping";
  readonly database: "answers" | "does not answer";
  readonly gateway: "connected" | "not connected";
  /** Whole seconds since the reminder sweep last did anything; null before its first. */
  readonly lastSweepSeconds: number | null;
  readonly upSeconds: number;
}

export const ASK_WITHIN_MS = 2_000;
/** The sweep comes every minute; one that has been silent for so long hangs. */
const SILENCE_MAX_S = 300;

/**
 * Whether the process is worth keeping. A gateway that is down is none of its faults: the library
 * reconnects by itself, reminders do not need it, and a final close ends the process.
 */
export async function healthOf(vitals: Vitals): Promise<Health> {
  const upSeconds = Math.floor(vitals.upSeconds());
  const isDatabaseUp = await answers(vitals.askDatabase);
  const silence = vitals.sweepSilence();
  const isGatewayUp = vitals.isGatewayUp();
  const isFresh = (silence ?? upSeconds) < SILENCE_MAX_S;
  return {
    status: statusOf(vitals, isDatabaseUp && isFresh, isGatewayUp && silence !== null),
    database: isDatabaseUp ? "answers" : "does not answer",
    gateway: isGatewayUp ? "connected" : "not connected",
    lastSweepSeconds: silence === null ? null : Math.floor(silence),
    upSeconds,
  };
}

function statusOf(vitals: Vitals, isWell: boolean, hasStarted: boolean): Health["status"] {
  if (!isWell) return "unwell";
  if (vitals.isStopping()) return "stopping";
  return hasStarted ? "well" : "starting";
}

async function answers(ask: () => Promise<unknown>): Promise<boolean> {
  try {
    return (await within(ASK_WITHIN_MS, ask())) !== "late";
  } catch {
    return false;
  }
}

/** To be kept running. */
export function isAlive(health: Health): boolean {
  return health.status !== "unwell";
}

/** To be given work: commands are answered and reminders sent. */
export function isReady(health: Health): boolean {
  return health.status === "well" && health.gateway === "connected";
}
