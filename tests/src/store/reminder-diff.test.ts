import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { REMINDER_STATES } from "../../../shared/reminder/types.ts";
import { columnsOf, diffReminders } from "../../../src/store/reminder-diff.ts";
import { later, NOW, reminder } from "./kit.ts";

/** Nothing of what is made up here is due. */
const EARLIER = later(-1);
const key = fc.constantFrom(..."abcdef");
const desired = fc
  .uniqueArray(fc.record({ key, due: fc.nat(3) }), { selector: (one) => one.key })
  .map((list) => list.map((one) => reminder(one.key, { dueAt: later(one.due) })));
const known = fc
  .uniqueArray(fc.record({ key, due: fc.nat(3), state: fc.constantFrom(...REMINDER_STATES) }), {
    selector: (one) => one.key,
  })
  .map((list) =>
    list.map((one) => ({
      id: `id ${one.key}`,
      key: one.key,
      state: one.state,
      ...columnsOf(reminder(one.key, { dueAt: later(one.due) })),
    })),
  );

describe("the difference between kept and derived reminders", () => {
  test("touches only scheduled rows, and inserts no key that is kept in any state", () => {
    fc.assert(
      fc.property(known, desired, (rows, wanted) => {
        const { insert, update, remove } = diffReminders({
          known: rows,
          reminders: wanted,
          now: EARLIER,
        });
        const touched = [...update.map(({ id }) => id), ...remove];
        const states = rows.filter(({ id }) => touched.includes(id)).map(({ state }) => state);
        expect(states).toEqual(touched.map(() => "scheduled"));
        const kept = rows.map((row) => row.key);
        expect(insert.filter((one) => kept.includes(one.key))).toEqual([]);
      }),
    );
  });

  test("applied once, leaves nothing more to do", () => {
    fc.assert(
      fc.property(known, desired, (rows, wanted) => {
        const { insert, update, remove } = diffReminders({
          known: rows,
          reminders: wanted,
          now: EARLIER,
        });
        const after = [
          ...rows
            .filter(({ id }) => !remove.includes(id))
            .map((row) => ({ ...row, ...update.find(({ id }) => id === row.id)?.columns })),
          ...insert.map((one) => ({
            id: `new ${one.key}`,
            key: one.key,
            state: "scheduled",
            ...columnsOf(one),
          })),
        ];
        expect(diffReminders({ known: after, reminders: wanted, now: EARLIER })).toEqual({
          insert: [],
          update: [],
          remove: [],
          leavesDue: false,
        });
        for (const one of wanted) {
          const row = after.find((each) => each.key === one.key);
          expect(row?.state === "scheduled" ? row.dueAt : null).toEqual(
            row?.state === "scheduled" ? columnsOf(one).dueAt : null,
          );
        }
      }),
    );
  });

  test("of two reminders with one key the earlier is kept", () => {
    const two = [reminder("a", { dueAt: later(9) }), reminder("a", { dueAt: later(4) })];
    expect(
      diffReminders({ known: [], reminders: two, now: NOW }).insert.map(({ dueAt }) =>
        String(dueAt),
      ),
    ).toEqual([String(later(4))]);
  });

  test.each([
    ["is due", 0, true],
    ["is days overdue", -4_000, true],
    ["is not due yet", 1, false],
  ])("a row that %s: left to the sweep, neither put off nor removed: %s", (_, minutes, isLeft) => {
    const columns = columnsOf(reminder("a", { dueAt: later(minutes) }));
    const known = [{ id: "1", key: "a", state: "scheduled", ...columns }];
    const gone = diffReminders({ known, reminders: [], now: NOW });
    expect([gone.remove, gone.leavesDue]).toEqual([isLeft ? [] : ["1"], isLeft]);
    const moved = diffReminders({ known, reminders: [reminder("a")], now: NOW });
    expect([moved.update.length, moved.leavesDue]).toEqual([isLeft ? 0 : 1, isLeft]);
    expect(moved.insert).toEqual([]);
  });

  test("a row whose time cannot be read is mended, or goes", () => {
    const columns = { ...columnsOf(reminder("a")), dueAt: new Date(Number.NaN) };
    const known = [{ id: "1", key: "a", state: "scheduled", ...columns }];
    expect(diffReminders({ known, reminders: [reminder("a")], now: NOW }).update).toHaveLength(1);
    expect(diffReminders({ known, reminders: [], now: NOW }).remove).toEqual(["1"]);
  });

  test("an unchanged row is not written", () => {
    const row = { id: "1", key: "a", state: "scheduled", ...columnsOf(reminder("a")) };
    expect(diffReminders({ known: [row], reminders: [reminder("a")], now: NOW }).update).toEqual(
      [],
    );
    const about = { ...reminder("a").about, portions: 1 };
    expect(
      diffReminders({ known: [row], reminders: [reminder("a", { about })], now: NOW }).update,
    ).toHaveLength(1);
  });
});
