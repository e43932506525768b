import { describe, expect, it } from "vitest";
import { rowOf, T0 } from "./fake-deliveries.ts";
import { dyingAt, rig } from "./tick-kit.ts";

const rows = [
  rowOf("a"),
  rowOf("b", { dueAt: T0.add({ minutes: 10 }) }),
  rowOf("old", { helpsUntil: T0 }),
];

/** Runs one process that dies at `step`, then healthy ones after the leases have run out. */
async function liveThrough(step: number, when: "before" | "after") {
  const { process, deliveries, platform, clock, arrived } = rig(rows);
  const mortal = dyingAt(step, when, deliveries, platform);
  await process(mortal)();
  const healthy = process();
  for (let minute = 0; minute <= 10; minute += 1) {
    clock.advanceTo(T0.add({ minutes: minute }));
    await healthy();
  }
  return { steps: mortal.steps(), arrived: arrived(), deliveries };
}

describe("a process that dies in the middle of a sweep", () => {
  it("touches the outside in the order this file walks through", async () => {
    // abandoned, claimNext, recipients, send, settle (too late), settle, claimNext (nothing), and once more
    // abandoned and claimNext, then toReplan
    expect((await liveThrough(99, "before")).steps).toBe(10);
  });

  it.each(
    Array.from({ length: 10 }, (_, step) => step).flatMap((step) => [
      { step, when: "before" as const },
      { step, when: "after" as const },
    ]),
  )("loses nothing and doubles nothing: step $step, dying $when it", async ({ step, when }) => {
    const { arrived, deliveries } = await liveThrough(step, when);
    const told = arrived.join(" ").match(/\w+/gu) ?? [];
    expect(told.toSorted()).toEqual(["a", "b", "old"]);
    expect(["a", "b", "old"].map((id) => deliveries.state(id))).toEqual([
      "sent",
      "sent",
      "expired",
    ]);
  });

  it("does not touch rows that another process holds", async () => {
    const { process, deliveries, platform, clock } = rig([rowOf("a")]);
    await process(dyingAt(1, "after", deliveries, platform))();
    expect(deliveries.state("a")).toBe("claimed");
    clock.advanceTo(T0.add({ seconds: 119 }));
    await process()();
    expect(platform.attempts).toEqual([]);
    clock.advanceTo(T0.add({ seconds: 120 }));
    await process()();
    expect(platform.attempts).toHaveLength(1);
  });
});
