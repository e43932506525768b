import { describe, expect, it } from "vitest";
import { memberId } from "../../../shared/ids.ts";
import type { Messenger, OutgoingMessage, SendResult } from "../../../src/jobs/ports.ts";
import { FakePlatform, memberNamed, rowOf, T0 } from "./fake-deliveries.ts";
import { rig } from "./tick-kit.ts";

const MEMBERS = 500;
/** Requests a second that the platform allows a bot in all; it answers the rest with 429 and a wait. */
const RATE = 50;

/** Each request takes 20 ms of a clock of its own; above the rate it is told to wait. Counts both. */
class RatedPlatform implements Messenger {
  readonly inner = new FakePlatform();
  readonly perSecond = new Map<number, number>();
  refused = 0;
  underWay = 0;
  most = 0;
  #ms = 0;

  async send(message: OutgoingMessage): Promise<SendResult> {
    this.underWay += 1;
    this.most = Math.max(this.most, this.underWay);
    await new Promise(setImmediate);
    this.#ms += 1_000 / RATE / 8;
    const second = Math.floor(this.#ms / 1_000);
    const count = (this.perSecond.get(second) ?? 0) + 1;
    this.perSecond.set(second, count);
    this.underWay -= 1;
    if (count <= RATE) return this.inner.send(message);
    this.refused += 1;
    return { kind: "unknown", reason: "told to wait", retryAfterMs: 1_000 };
  }
}

const people = Array.from({ length: MEMBERS }, (_, n) => memberNamed(`m${n}`));

/** For each member a thaw and a last day that fell due in turn, and a discard that helps for weeks. */
const due = people.flatMap(({ id, name }) => [
  rowOf(`thaw${name}`, { memberId: id, kind: "thaw tonight", helpsUntil: T0.add({ hours: 6 }) }),
  rowOf(`last${name}`, { memberId: id, kind: "last good day", helpsUntil: T0.add({ hours: 24 }) }),
  rowOf(`out${name}`, { memberId: id, helpsUntil: T0.add({ hours: 24 * 14 }) }),
]);

describe("after an outage with 500 members waiting", () => {
  it.each([
    { outage: "minutes", hours: 0.1, helping: 3, late: 0 },
    // Half past six in the morning is quiet; noon of the next day is not.
    { outage: "hours", hours: 19.5, helping: 2, late: 1 },
    { outage: "days", hours: 67.5, helping: 1, late: 2 },
  ])("of $outage: one message each, what helps and in it what came too late", async (given) => {
    const { clock, deliveries, process } = rig(due, people);
    const platform = new RatedPlatform();
    const tick = process({ messenger: platform, lanes: 8 });
    const start = T0.add({ minutes: given.hours * 60 });
    let sent = 0;
    let expired = 0;
    for (let minute = 0; minute < 30; minute += 1) {
      clock.advanceTo(start.add({ minutes: minute }));
      const report = await tick();
      sent += report.sent;
      expired += report.expired;
      if (minute === 0) expect(platform.refused).toBeGreaterThan(0);
    }
    expect([sent, expired]).toEqual([MEMBERS, MEMBERS * given.late]);
    const stored = platform.inner.stored;
    expect(new Set(stored.map(({ to }) => to.id)).size).toBe(MEMBERS);
    expect(stored).toHaveLength(MEMBERS);
    const [first] = stored.filter(({ to }) => to.id === memberId("m7"));
    expect(first?.reply.heading.split(",").filter((id) => id !== "")).toHaveLength(given.helping);
    const states = people.map(({ name }) =>
      ["thaw", "last", "out"].map((kind) => deliveries.state(`${kind}${name}`)),
    );
    expect(states.flat().filter((state) => state === "claimed" || state === "scheduled")).toEqual(
      [],
    );
    // No more at a time than the sweep has lanes, whatever waits.
    expect(platform.most).toBeLessThanOrEqual(8);
  });
});
