import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Member } from "../../../commands/kit/ports.ts";
import { groupId } from "../../../shared/ids.ts";
import { manualClock } from "../../../src/clock.ts";
import type { Deliveries, Messenger } from "../../../src/jobs/ports.ts";
import { createTick, type Tick } from "../../../src/jobs/reminder-tick.ts";
import { silentLog } from "../../../src/log.ts";
import { openStore, type Store } from "../../../src/store/open.ts";
import { FakePlatform, rowOf, T0 } from "./fake-deliveries.ts";
import { allTrue, dyingAt, namingByKey } from "./tick-kit.ts";

let store: Store;
let worker = 0;

beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), "clerk-crash-"));
  const opened = await openStore(`file:${join(folder, "x.db")}`);
  if (!opened.ok) throw new Error(opened.problem.sentence);
  store = opened.value;
});
afterAll(() => store.close());

/** A member of their own for each case, with two reminders due and one too late. */
async function memberWithRows(name: string): Promise<Member> {
  const group = await store.stores.groups.open(groupId("g1"), "Group");
  const member = await store.stores.members.open(group.id, `user ${name}`, name);
  const soon = { dueAt: T0.add({ minutes: 10 }) };
  const reminders = [rowOf("a"), rowOf("b", soon), rowOf("old", { helpsUntil: T0 })];
  await store.stores.reminders.replan({
    memberId: member.id,
    version: 0,
    now: T0,
    reminders,
    replanAt: null,
  });
  return member;
}

async function liveThrough(step: number, when: "before" | "after") {
  await memberWithRows(`${step} ${when}`);
  const clock = manualClock(T0);
  const platform = new FakePlatform();
  const process = (outside: { deliveries: Deliveries; messenger: Messenger }): Tick => {
    worker += 1;
    return createTick({
      ...outside,
      stores: store.stores,
      render: namingByKey,
      current: allTrue,
      replan: async () => {},
      clock,
      log: silentLog,
      worker: `worker-${worker}`,
      lanes: 1,
    });
  };
  const mortal = dyingAt(step, when, store.deliveries, platform);
  await process(mortal)();
  const healthy = process({ deliveries: store.deliveries, messenger: platform });
  for (let minute = 0; minute <= 10; minute += 1) {
    clock.advanceTo(T0.add({ minutes: minute }));
    await healthy();
  }
  return { steps: mortal.steps(), platform };
}

describe("a process that dies in the middle of a sweep over the real store", () => {
  it("touches the outside in as many steps as this file walks through", async () => {
    expect((await liveThrough(99, "before")).steps).toBe(10);
  });

  it.each(
    Array.from({ length: 10 }, (_, step) => step).flatMap((step) => [
      { step, when: "before" as const },
      { step, when: "after" as const },
    ]),
  )("loses nothing and doubles nothing: step $step, dying $when it", async ({ step, when }) => {
    const { platform } = await liveThrough(step, when);
    const told = platform.stored.flatMap(({ reply }) => reply.heading.split(" "));
    expect(told.toSorted()).toEqual(["a", "b", "old"]);
    expect(await store.deliveries.nextDue()).toBeNull();
  });
});
