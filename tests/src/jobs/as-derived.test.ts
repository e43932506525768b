import { describe, expect, it } from "vitest";
import { memberId } from "../../../shared/ids.ts";
import type { ReminderRow } from "../../../shared/reminder/types.ts";
import type { Instant } from "../../../shared/time.ts";
import { memberNamed, rowOf, T0 } from "./fake-deliveries.ts";
import { allTrue, rig } from "./tick-kit.ts";

const { choice } = memberNamed("ana");

/** Sends one reminder, and tells how often the stock was looked at for it before. */
async function looks(given: {
  readonly row?: Partial<ReminderRow>;
  readonly replanAt?: Instant | null;
  readonly plannedAt?: number;
  readonly pausedUntil?: Instant;
  readonly failsFirst?: boolean;
  readonly minutesLate?: number;
}) {
  const { replanAt = T0.add({ hours: 6 }), plannedAt = 4, pausedUntil = null } = given;
  const ana = memberNamed("ana", { planVersion: 4, choice: { ...choice, pausedUntil } });
  const { process, deliveries, platform, clock, arrived } = rig([rowOf("a", given.row)], [ana]);
  const claimNext = deliveries.claimNext.bind(deliveries);
  deliveries.claimNext = async (input) => ({
    ...(await claimNext(input)),
    planVersions: new Map([[memberId("ana"), plannedAt]]),
  });
  const recipients = deliveries.recipients.bind(deliveries);
  deliveries.recipients = async (ids) => {
    const found = await recipients(ids);
    return new Map(
      [...found].map(([id, one]) => [id, one === "unreadable" ? one : { ...one, replanAt }]),
    );
  };
  let count = 0;
  const tick = process({
    current: (...args) => {
      count += 1;
      return allTrue(...args);
    },
  });
  clock.advanceTo(T0.add({ minutes: given.minutesLate ?? 0 }));
  if (given.failsFirst === true) {
    platform.script.push("lost request");
    await tick();
    count = 0;
    clock.advanceTo(T0.add({ seconds: 30 }));
  }
  await tick();
  expect(arrived()).toHaveLength(1);
  return count;
}

describe("the look at the stock right before sending", () => {
  it("is spared for what is on time and follows from the plan as it stands", async () => {
    expect(await looks({})).toBe(0);
    expect(await looks({ minutesLate: 9 })).toBe(0);
    expect(await looks({ row: { kind: "thaw tonight" } })).toBe(0);
  });

  it.each([
    ["stock, meals or times changed since the claim", { plannedAt: 3 }],
    ["the reminders are to be derived anew by now", { replanAt: T0 }],
    ["somebody may be deriving them at this moment", { replanAt: T0.add({ minutes: 2 }) }],
    [
      "it is news, which the member may not want any more",
      { row: { kind: "recipe changed" as const } },
    ],
    ["nobody knows when they are", { replanAt: null }],
    ["it is late", { minutesLate: 10 }],
    ["it was tried before", { failsFirst: true }],
    ["it was put off", { row: { key: "again/x/discard/l" } }],
    ["the member is or was away", { pausedUntil: T0.subtract({ hours: 1 }) }],
    [
      "it follows from the meals, one of which may be being eaten",
      { row: { kind: "freeze the surplus" as const }, replanAt: T0.add({ minutes: 119 }) },
    ],
  ])("is taken where %s", async (_why, given) => {
    expect(await looks(given)).toBe(1);
  });
});
