import type { Member } from "../../../commands/kit/ports.ts";
import { reply, text } from "../../../commands/kit/reply.ts";
import type { ReminderRow } from "../../../shared/reminder/types.ts";
import { type MovableClock, manualClock } from "../../../src/clock.ts";
import type { RenderReminder } from "../../../src/jobs/deliver.ts";
import type { Deliveries, Messenger } from "../../../src/jobs/ports.ts";
import { createTick, type Tick, type TickParts } from "../../../src/jobs/reminder-tick.ts";
import { silentLog } from "../../../src/log.ts";
import { FakeDeliveries, FakePlatform, memberNamed, T0 } from "./fake-deliveries.ts";

const ids = (rows: readonly ReminderRow[]): string => rows.map(({ id }) => id).join(",");

/** Names its rows, so that a test can read which rows a message covers. */
export const namingRender: RenderReminder = ({ rows, late }) =>
  reply(ids(rows), { parts: [text(ids(late))] });

/** The same by key, for rows whose ids the store makes. */
export const namingByKey: RenderReminder = ({ rows, late }) =>
  reply([...rows, ...late].map(({ key }) => key).join(" "));

/** Takes every reminder for true, as it stands. */
export const allTrue: TickParts["current"] = async (_member, rows) =>
  rows.map((row) => ({ row, place: null }));

export interface Rig {
  readonly clock: MovableClock;
  readonly deliveries: FakeDeliveries;
  readonly platform: FakePlatform;
  readonly tick: Tick;
  /** Another process on the same rows and platform. */
  process(over?: Partial<TickParts>): Tick;
  /** "rows | too late" of every message that arrived. */
  arrived(): string[];
}

export function rig(
  rows: readonly ReminderRow[],
  members: readonly Member[] = [memberNamed("ana")],
): Rig {
  const clock = manualClock(T0);
  const deliveries = new FakeDeliveries(rows);
  deliveries.people = members;
  const platform = new FakePlatform();
  let processes = 0;
  const process = (over: Partial<TickParts> = {}): Tick => {
    processes += 1;
    return createTick({
      deliveries,
      stores: {
        members: {
          find: async (id) => members.find((member) => member.id === id) ?? null,
        },
      },
      messenger: platform,
      render: namingRender,
      current: allTrue,
      replan: async () => {},
      clock,
      log: silentLog,
      worker: `worker-${processes}`,
      lanes: 1,
      ...over,
    });
  };
  const arrived = (): string[] =>
    platform.stored.map(({ reply: { heading, parts } }) => {
      const [late] = parts;
      return `${heading} | ${late?.kind === "text" ? late.lines.join() : ""}`;
    });
  return { clock, deliveries, platform, tick: process(), process, arrived };
}

class ProcessDied extends Error {}

/**
 * A process that dies at the `step`-th touch of the outside (0, 1, …), just before or just after it
 * took effect; from then on nothing it does takes effect.
 */
export function dyingAt(
  step: number,
  when: "before" | "after",
  deliveries: Deliveries,
  messenger: Messenger,
): { readonly deliveries: Deliveries; readonly messenger: Messenger; steps(): number } {
  let taken = 0;
  const mortal = async <T>(act: () => Promise<T>): Promise<T> => {
    const mine = taken;
    taken += 1;
    if (mine > step || (mine === step && when === "before")) throw new ProcessDied();
    const result = await act();
    if (mine === step) throw new ProcessDied();
    return result;
  };
  return {
    steps: () => taken,
    messenger: { send: (message) => mortal(() => messenger.send(message)) },
    deliveries: {
      claimNext: (input) => mortal(() => deliveries.claimNext(input)),
      abandoned: (...args) => mortal(() => deliveries.abandoned(...args)),
      claimAgain: (input) => mortal(() => deliveries.claimAgain(input)),
      others: (...args) => mortal(() => deliveries.others(...args)),
      recipients: (ids) => mortal(() => deliveries.recipients(ids)),
      settle: (input) => mortal(() => deliveries.settle(input)),
      withdraw: (input) => mortal(() => deliveries.withdraw(input)),
      nextDue: () => mortal(() => deliveries.nextDue()),
      toReplan: (...args) => mortal(() => deliveries.toReplan(...args)),
      setDirectClosed: (...args) => mortal(() => deliveries.setDirectClosed(...args)),
      group: (id) => mortal(() => deliveries.group(id)),
    },
  };
}
