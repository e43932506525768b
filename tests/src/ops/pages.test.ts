import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { manualClock } from "../../../src/clock.ts";
import type { Backlog } from "../../../src/jobs/ports.ts";
import type { Vitals } from "../../../src/ops/health.ts";
import { createMetrics, type Metrics } from "../../../src/ops/metrics.ts";
import { opsPages } from "../../../src/ops/pages.ts";
import { type OpsServer, startOpsServer } from "../../../src/ops/server.ts";
import { T0 } from "../jobs/fake-deliveries.ts";
import { get, samples } from "./get.ts";

const never = () => new Promise<never>(() => undefined);

interface State {
  askDatabase: () => Promise<unknown>;
  isGatewayUp: boolean;
  silence: number | null;
  isStopping: boolean;
  upSeconds: number;
  backlog: () => Promise<Backlog>;
}

let state: State;
let metrics: Metrics;
let server: OpsServer;
beforeEach(async () => {
  state = {
    askDatabase: async () => null,
    isGatewayUp: true,
    silence: 12.9,
    isStopping: false,
    upSeconds: 1_000.5,
    backlog: async () => ({ due: 3, oldestDueAt: T0.subtract({ minutes: 2 }) }),
  };
  metrics = createMetrics(["stock", "recipe card"]);
  const vitals: Vitals = {
    askDatabase: () => state.askDatabase(),
    isGatewayUp: () => state.isGatewayUp,
    sweepSilence: () => state.silence,
    isStopping: () => state.isStopping,
    upSeconds: () => state.upSeconds,
  };
  const upkeep = { backlog: () => state.backlog() };
  const pages = opsPages({ vitals, metrics, upkeep, clock: manualClock(T0) });
  const started = await startOpsServer({ host: "127.0.0.1", port: 0, pages });
  if (!started.ok) throw new Error(started.problem);
  server = started.value;
});
afterEach(() => server.close());

const ask = (path: string) => get(server.address.port, path);
const codes = async () => [(await ask("/healthz")).status, (await ask("/readyz")).status];
const scraped = async () => samples((await ask("/metrics")).body);

describe("health", () => {
  it("says what it looked at, and for how long the sweep has been silent", async () => {
    const { status, body } = await ask("/healthz");
    expect(status).toBe(200);
    expect(JSON.parse(body)).toEqual({
      status: "well",
      database: "answers",
      gateway: "connected",
      lastSweepSeconds: 12,
      upSeconds: 1_000,
    });
  });

  // [alive, ready]
  it.each<[string, Partial<State>, readonly [number, number]]>([
    ["when all is well", {}, [200, 200]],
    ["while the gateway is away", { isGatewayUp: false }, [200, 503]],
    ["while it starts", { silence: null, isGatewayUp: false, upSeconds: 3 }, [200, 503]],
    ["before the first sweep", { silence: null, upSeconds: 3 }, [200, 503]],
    ["while it stops", { isStopping: true }, [200, 503]],
    [
      "when the database refuses",
      { askDatabase: async () => Promise.reject(new Error()) },
      [503, 503],
    ],
    ["when the sweep hangs", { silence: 301 }, [503, 503]],
    ["when the sweep never begins", { silence: null, upSeconds: 301 }, [503, 503]],
  ])("is told as alive and as ready %s", async (_when, change, expected) => {
    Object.assign(state, change);
    expect(await codes()).toEqual(expected);
  });

  it("does not wait for good for a database that gives no answer", async () => {
    state.askDatabase = never;
    expect(JSON.parse((await ask("/healthz")).body)).toMatchObject({
      status: "unwell",
      database: "does not answer",
    });
  });
});

describe("the metrics", () => {
  it("are in the Prometheus text format, each with its kind and what it means", async () => {
    const { headers, body } = await ask("/metrics");
    expect(headers["content-type"]).toMatch(/^text\/plain; version=0\.0\.4/u);
    const own = [...body.matchAll(/^# TYPE (batch_clerk_\w+) (\w+)$/gmu)].map(([, name]) => name);
    expect(own.toSorted()).toEqual([
      "batch_clerk_command_failures_total",
      "batch_clerk_command_seconds",
      "batch_clerk_database_up",
      "batch_clerk_gateway_up",
      "batch_clerk_reminder_lag_seconds",
      "batch_clerk_reminders_due",
      "batch_clerk_reminders_oldest_due_seconds",
      "batch_clerk_reminders_total",
      "batch_clerk_sweep_errors_total",
      "batch_clerk_sweep_seconds",
    ]);
    for (const name of own) expect(body).toMatch(new RegExp(`^# HELP ${name} \\S.*$`, "mu"));
  });

  it("tell what waits, and since when", async () => {
    const found = await scraped();
    expect(found.get("batch_clerk_reminders_due")).toBe(3);
    expect(found.get("batch_clerk_reminders_oldest_due_seconds")).toBe(120);
    state.backlog = async () => ({ due: 0, oldestDueAt: null });
    expect((await scraped()).get("batch_clerk_reminders_oldest_due_seconds")).toBe(0);
  });

  it("count reminders by what became of them, and how late they went", async () => {
    metrics.jobs.reminders("sent", 2);
    metrics.jobs.reminders("failed", 1);
    metrics.jobs.reminders("sent", 1);
    metrics.jobs.lag(0);
    metrics.jobs.lag(90);
    metrics.jobs.swept(0.01, 2);
    const found = await scraped();
    const became = (word: string) => found.get(`batch_clerk_reminders_total{became="${word}"}`);
    expect(["sent", "failed", "expired", "retried"].map(became)).toEqual([3, 1, 0, 0]);
    expect(found.get('batch_clerk_reminder_lag_seconds_bucket{le="60"}')).toBe(1);
    expect(found.get('batch_clerk_reminder_lag_seconds_bucket{le="120"}')).toBe(2);
    expect(found.get("batch_clerk_sweep_errors_total")).toBe(2);
    expect(metrics.sweepSilence()).toBeLessThan(60);
  });

  it("tell known commands apart and nothing else: what a client makes up is one label", async () => {
    metrics.answered("stock", "command", 0.02);
    metrics.answered("recipe card", "completion", 0.002);
    for (let n = 0; n < 500; n += 1) {
      metrics.answered(`anna is allergic ${n}`, "button", 1);
      metrics.failed(`~~${n}"} 1\nforged 1`);
    }
    metrics.failed("recipe card");
    metrics.failed("stock.undo");
    const { body } = await ask("/metrics");
    expect(body).not.toMatch(/anna|forged/u);
    const found = samples(body);
    const count = (labels: string) => found.get(`batch_clerk_command_seconds_count{${labels}}`);
    expect(count('command="stock",part="command"')).toBe(1);
    expect(count('command="other",part="button"')).toBe(500);
    const failures = [...found].filter(([name]) => name.startsWith("batch_clerk_command_failures"));
    expect(failures).toEqual([
      ['batch_clerk_command_failures_total{command="other"}', 500],
      ['batch_clerk_command_failures_total{command="recipe card"}', 1],
      ['batch_clerk_command_failures_total{command="stock"}', 1],
    ]);
  });

  it("say that the database is down and go on with the rest", async () => {
    state.backlog = async () => Promise.reject(new Error("hunter2"));
    state.isGatewayUp = false;
    const { status, body } = await ask("/metrics");
    const found = samples(body);
    expect(status).toBe(200);
    expect(body).not.toContain("hunter2");
    expect(found.get("batch_clerk_database_up")).toBe(0);
    expect(found.get("batch_clerk_gateway_up")).toBe(0);
    expect(found.get("batch_clerk_reminders_due")).toBeNaN();
    expect(found.get("process_resident_memory_bytes")).toBeGreaterThan(0);
  });
});
