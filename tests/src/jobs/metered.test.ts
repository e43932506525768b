import { describe, expect, it } from "vitest";
import type { JobMeter, Messenger } from "../../../src/jobs/ports.ts";
import { memberNamed, rowOf, T0 } from "./fake-deliveries.ts";
import { rig } from "./tick-kit.ts";

/** A meter that keeps what it is told. */
function noting() {
  const became: string[] = [];
  const lags: number[] = [];
  const sweeps: number[] = [];
  const meter: JobMeter = {
    reminders: (what, count) => {
      if (count > 0) became.push(`${count} ${what}`);
    },
    lag: (seconds) => lags.push(seconds),
    swept: (_seconds, errors) => sweeps.push(errors),
  };
  return { meter, became, lags, sweeps };
}

const WAY = { kind: "unknown", reason: "server error 500", retryAfterMs: null } as const;
const SHUT = { kind: "impossible", reason: "closed (50007)", directClosed: true } as const;

describe("a sweep that is measured", () => {
  it("counts reminders rather than messages, and how late each went, never below zero", async () => {
    const { process } = rig([
      rowOf("late", { dueAt: T0.subtract({ seconds: 90 }) }),
      rowOf("along", { dueAt: T0.add({ minutes: 20 }) }),
      rowOf("over", { dueAt: T0.subtract({ hours: 30 }), helpsUntil: T0.subtract({ hours: 1 }) }),
    ]);
    const { meter, became, lags, sweeps } = noting();
    await process({ meter })();
    expect(became).toEqual(["2 sent", "1 expired"]);
    expect(lags.toSorted((a, b) => a - b)).toEqual([0, 90]);
    expect(sweeps).toEqual([0]);
  });

  it("counts a try that came to nothing as tried again, and a final refusal as failed", async () => {
    const { process, platform, clock } = rig([rowOf("a")]);
    const { meter, became, lags } = noting();
    const tick = process({ meter });
    platform.script.push(WAY, SHUT);
    await tick();
    clock.advanceTo(T0.add({ minutes: 5 }));
    await tick();
    expect(became).toEqual(["1 retried", "1 failed"]);
    expect(lags).toEqual([]);
  });

  it("counts what went wrong within it", async () => {
    const { process, deliveries } = rig([rowOf("a")]);
    deliveries.claimNext = async () => Promise.reject(new Error("no database"));
    const { meter, sweeps } = noting();
    await process({ meter })();
    expect(sweeps).toEqual([1]);
  });
});

describe("a sweep that is told to stop", () => {
  it("ends the message under way, begins no other, and leaves the rest unclaimed", async () => {
    const members = ["a", "b", "c"].map((name) => memberNamed(name));
    const rows = members.map(({ id, name }) => rowOf(name, { memberId: id }));
    const { process, deliveries, platform } = rig(rows, members);
    const stopping = new AbortController();
    const messenger: Messenger = {
      send: (message) => {
        stopping.abort();
        return platform.send(message);
      },
    };
    await process({ messenger, stopping: stopping.signal })();
    expect(platform.stored).toHaveLength(1);
    expect(["a", "b", "c"].map((id) => deliveries.state(id))).toEqual([
      "sent",
      "scheduled",
      "scheduled",
    ]);
  });

  it("begins none of those that it had claimed with it either", async () => {
    const members = ["a", "b", "c", "d"].map((name) => memberNamed(name));
    const rows = members.map(({ id, name }) => rowOf(name, { memberId: id }));
    const { process, deliveries, platform } = rig(rows, members);
    const stopping = new AbortController();
    let others: Promise<void> | null = null;
    const messenger: Messenger = {
      send: async (message) => {
        // The first to be sent ends the process; the second is under way by then.
        others ??= new Promise((resolve) => setImmediate(resolve)).then(() => stopping.abort());
        await others;
        return platform.send(message);
      },
    };
    const claimNext = deliveries.claimNext.bind(deliveries);
    deliveries.claimNext = (input) => claimNext({ ...input, limit: 4 });
    await process({ messenger, stopping: stopping.signal, lanes: 2 })();
    expect(platform.stored).toHaveLength(2);
    const states = ["a", "b", "c", "d"].map((id) => deliveries.state(id));
    expect(states).toEqual(["sent", "sent", "claimed", "claimed"]);
  });

  it("derives nobody's reminders anew any more", async () => {
    const { process, deliveries } = rig([]);
    deliveries.replanIds = [memberNamed("ana").id];
    let replanned = 0;
    const replan = async () => {
      replanned += 1;
    };
    await process({ replan, stopping: AbortSignal.abort() })();
    expect(replanned).toBe(0);
  });
});
