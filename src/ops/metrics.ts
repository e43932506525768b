import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from "prom-client";
import type { JobMeter } from "../jobs/ports.ts";

/** What the bot is asked for; a completion is the list that is offered while somebody types. */
export type Part = "command" | "button" | "form" | "completion";

/** What is looked up when the metrics are asked for; null where it could not be found out in time. */
export interface Standing {
  readonly due: number | null;
  readonly oldestDueSeconds: number | null;
  readonly isDatabaseUp: boolean;
  /** Null without a gateway. */
  readonly isGatewayUp: boolean | null;
}

export interface Metrics {
  readonly jobs: JobMeter;
  /** A request has been answered, well or not. `command` is a name as typed: only known ones are told apart. */
  answered(command: string, part: Part, seconds: number): void;
  /** A request met a fault of the bot's own. `what` is a command, or one and its button: "stock.undo". */
  failed(what: string): void;
  /** Since the sweep last did anything, seconds; null while it has done nothing. */
  sweepSilence(): number | null;
  /** All of it in the Prometheus text format. */
  text(standing: Standing): Promise<string>;
  readonly contentType: string;
}

/** The platform wants the first answer within 3 s. */
const COMMAND_SECONDS = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2, 3, 10];
/** The sweep comes every minute; past an hour a reminder is late by anybody's clock. */
const LAG_SECONDS = [1, 5, 15, 30, 60, 120, 300, 900, 3_600, 21_600, 86_400];
const SWEEP_SECONDS = [0.005, 0.02, 0.1, 0.5, 2, 10, 60, 300, 1_800];
const OTHER = "other";

/**
 * Counts and times of what the bot does. A label has one of a few values known beforehand: the name of
 * a command, what became of a reminder. No member, group or food is in any of them.
 */
export function createMetrics(commands: readonly string[]): Metrics {
  const registry = new Registry();
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  const known = new Set(commands);
  const labelOf = (command: string): string => (known.has(command) ? command : OTHER);
  const requests = requestFigures(registers);
  const sweep = sweepFigures(registers);
  const now = standingFigures(registers);
  return {
    jobs: sweep.meter,
    answered: (command, part, seconds) => {
      requests.seconds.observe({ command: labelOf(command), part }, seconds);
    },
    failed: (what) => {
      const command = labelOf(what) === OTHER ? what.replace(/\.[^.]*$/u, "") : what;
      requests.failures.inc({ command: labelOf(command) });
    },
    sweepSilence: sweep.silence,
    text: (standing) => {
      now(standing);
      return registry.metrics();
    },
    contentType: registry.contentType,
  };
}

function requestFigures(registers: Registry[]) {
  return {
    seconds: new Histogram({
      name: "batch_clerk_command_seconds",
      help: "From a request to the bot's answer being ready, by command and what was used of it",
      labelNames: ["command", "part"],
      buckets: COMMAND_SECONDS,
      registers,
    }),
    failures: new Counter({
      name: "batch_clerk_command_failures_total",
      help: "Requests that met a fault of the bot's own, by command",
      labelNames: ["command"],
      registers,
    }),
  };
}

function sweepFigures(registers: Registry[]) {
  const reminders = new Counter({
    name: "batch_clerk_reminders_total",
    help: "Reminders by what became of them; each ends as sent, failed or expired",
    labelNames: ["became"],
    registers,
  });
  for (const became of ["sent", "failed", "expired", "retried"]) reminders.inc({ became }, 0);
  const lag = new Histogram({
    name: "batch_clerk_reminder_lag_seconds",
    help: "From the due time of a reminder to its sending",
    buckets: LAG_SECONDS,
    registers,
  });
  const seconds = new Histogram({
    name: "batch_clerk_sweep_seconds",
    help: "How long a sweep over the reminders took",
    buckets: SWEEP_SECONDS,
    registers,
  });
  const errors = new Counter({
    name: "batch_clerk_sweep_errors_total",
    help: "Things that went wrong within sweeps; each is tried again",
    registers,
  });
  let lastMs: number | null = null;
  const meter: JobMeter = {
    reminders: (became, count) => {
      lastMs = performance.now();
      reminders.inc({ became }, count);
    },
    lag: (value) => lag.observe(value),
    swept: (value, wrong) => {
      lastMs = performance.now();
      seconds.observe(value);
      errors.inc(wrong);
    },
  };
  const silence = () => (lastMs === null ? null : (performance.now() - lastMs) / 1_000);
  return { meter, silence };
}

function standingFigures(registers: Registry[]): (standing: Standing) => void {
  const gauge = (name: string, help: string) =>
    new Gauge({ name: `batch_clerk_${name}`, help, registers });
  const due = gauge("reminders_due", "Reminders that are due and not being sent");
  const oldest = gauge("reminders_oldest_due_seconds", "How long the oldest of those has been due");
  const database = gauge("database_up", "1 when the database answers");
  const gateway = gauge("gateway_up", "1 when every shard is connected");
  return ({ due: count, oldestDueSeconds, isDatabaseUp, isGatewayUp }) => {
    due.set(count ?? Number.NaN);
    oldest.set(oldestDueSeconds ?? Number.NaN);
    database.set(isDatabaseUp ? 1 : 0);
    gateway.set(isGatewayUp === null ? Number.NaN : Number(isGatewayUp));
  };
}
