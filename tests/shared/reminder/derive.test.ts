import { describe, expect, it } from "vitest";
import { allocate } from "../../../shared/allocation/allocate.ts";
import { mealSlots } from "../../../shared/allocation/slots.ts";
import type { MealRule } from "../../../shared/allocation/types.ts";
import { lotId, memberId, reminderId, slotRuleId } from "../../../shared/ids.ts";
import { deriveReminders, nextReplan } from "../../../shared/reminder/derive.ts";
import { messagesOf } from "../../../shared/reminder/group.ts";
import { isQuiet, outsideQuiet } from "../../../shared/reminder/quiet.ts";
import type { ReminderChoice, ReminderRow } from "../../../shared/reminder/types.ts";
import type { Lot } from "../../../shared/stock/types.ts";
import { batch, choice, date, instant, lot, stockOf, time } from "../../kit/stock.ts";

const lunches: MealRule = {
  id: slotRuleId("lunch"),
  name: "lunch",
  weekdays: [1, 2, 3, 4, 5],
  time: time("12:30"),
  portions: 1,
};

function derived(
  lots: readonly Lot[],
  now: string,
  own: ReminderChoice = choice(),
  rules = [lunches],
) {
  const stock = stockOf([batch()], lots);
  const at = instant(now);
  return deriveReminders(stock, allocate(stock, mealSlots(rules, at, own.zone), at, own), own, at);
}
const brief = (list: ReturnType<typeof derived>) =>
  list.map((one) => [one.kind, one.dueAt.toString()]);

describe("reminders of a lot in the fridge", () => {
  it("tell the last good day and the discard on the mornings of those days", () => {
    expect(brief(derived([lot({ portions: 4 })], "2026-10-12T10:00:00Z"))).toEqual([
      ["freeze the surplus", "2026-10-12T18:00:00Z"],
      ["last good day", "2026-10-14T07:00:00Z"],
      ["discard today", "2026-10-15T07:00:00Z"],
    ]);
  });

  it("follow the wall clock across the end of summer time (IANA Europe/Lisbon, 25 October 2026)", () => {
    const made = lot({
      portions: 1,
      since: date("2026-10-23"),
      sinceAt: instant("2026-10-23T17:00:00Z"),
    });
    const list = derived([made], "2026-10-23T20:00:00Z", choice(), []);
    expect(brief(list).filter(([kind]) => kind !== "freeze the surplus")).toEqual([
      ["last good day", "2026-10-26T08:00:00Z"],
      ["discard today", "2026-10-27T08:00:00Z"],
    ]);
  });

  it("still tells to discard when the morning has passed unsent, but not the passed last good day", () => {
    const kinds = derived([lot({ portions: 1 })], "2026-10-16T10:00:00Z", choice(), []).map(
      (one) => one.kind,
    );
    expect(kinds).toEqual(["discard today"]);
  });
});

describe("reminders of frozen portions", () => {
  const frozen = lot({ id: lotId("f"), place: "freezer", portions: 2, usedDays: 1 });

  it("tell to thaw on the latest evening that leaves a full day", () => {
    const thaw = derived([frozen], "2026-10-11T20:00:00Z").filter(
      (one) => one.kind === "thaw tonight",
    );
    expect(thaw.map((one) => [one.dueAt.toString(), one.about.mealAt])).toEqual([
      ["2026-10-12T07:00:00Z", "2026-10-13T11:30:00Z"],
      ["2026-10-12T18:00:00Z", "2026-10-14T11:30:00Z"],
    ]);
  });

  it("are silent on thawing while paused, and come back for what is later", () => {
    const paused = choice({ pausedUntil: instant("2026-10-31T00:00:00Z") });
    expect(
      derived([frozen], "2026-10-11T20:00:00Z", paused).filter(
        (one) => one.kind === "thaw tonight",
      ),
    ).toEqual([]);
  });
});

describe("what is to be frozen", () => {
  const spare = [lot({ portions: 6 })];
  const due = (now: string) =>
    derived(spare, now)
      .find((one) => one.kind === "freeze the surplus")
      ?.dueAt.toString();

  it("is told at the next morning or evening hour, and deriving it again does not put it off", () => {
    // Logged on Sunday at 21:00 in Lisbon; derived again in the night at 03:00.
    expect(due("2026-10-11T20:00:00Z")).toBe("2026-10-12T07:00:00Z");
    expect(due("2026-10-12T02:00:00Z")).toBe("2026-10-12T07:00:00Z");
  });

  it("is told at once where the next hour would be too late", () => {
    const last = derived(spare, "2026-10-14T20:00:00Z").find(
      (one) => one.kind === "freeze the surplus",
    );
    expect(last?.dueAt.toString()).toBe("2026-10-14T20:00:00Z");
  });
});

describe("a pause", () => {
  it("keeps safety reminders", () => {
    const paused = choice({ pausedUntil: instant("2026-10-31T00:00:00Z") });
    const kinds = derived([lot()], "2026-10-12T10:00:00Z", paused).map((one) => one.kind);
    expect(kinds).toEqual(["freeze the surplus", "discard today"]);
  });
});

describe("a pot just cooked", () => {
  it("is to be in the fridge within two hours (USDA FSIS), told a quarter of an hour before", () => {
    expect(brief(derived([lot({ portions: 1 })], "2026-10-11T17:10:00Z"))[0]).toEqual([
      "into the fridge",
      "2026-10-11T18:45:00Z",
    ]);
  });
});

describe("quiet hours", () => {
  it("pass midnight, and equal ends mean none", () => {
    expect(isQuiet(instant("2026-10-12T02:00:00Z"), choice())).toBe(true);
    expect(isQuiet(instant("2026-10-12T12:00:00Z"), choice())).toBe(false);
    expect(
      isQuiet(
        instant("2026-10-12T02:00:00Z"),
        choice({ quietFrom: time("00:00"), quietUntil: time("00:00") }),
      ),
    ).toBe(false);
  });
  it("move a safety reminder before them and any other to their end", () => {
    const at = instant("2026-10-12T02:00:00Z");
    expect(outsideQuiet(at, choice(), "earlier").toString()).toBe("2026-10-11T20:59:00Z");
    expect(outsideQuiet(at, choice(), "later").toString()).toBe("2026-10-12T06:00:00Z");
  });
  it("move a discard set inside them to the evening before", () => {
    const early = choice({ morning: time("06:00") });
    const discard = derived([lot({ portions: 1 })], "2026-10-12T10:00:00Z", early).find(
      (one) => one.kind === "discard today",
    );
    expect(discard?.dueAt.toString()).toBe("2026-10-14T20:59:00Z");
  });
});

describe("deriving again", () => {
  it("happens the next night at three, and never with an empty stock", () => {
    expect(
      nextReplan(
        stockOf([batch()], [lot()]),
        choice(),
        instant("2026-10-11T20:00:00Z"),
      )?.toString(),
    ).toBe("2026-10-12T02:00:00Z");
    expect(nextReplan(stockOf([], []), choice(), instant("2026-10-11T20:00:00Z"))).toBeNull();
  });
});

describe("grouping what is due", () => {
  const row = (id: string, rest: Partial<ReminderRow> = {}): ReminderRow => ({
    id: reminderId(id),
    memberId: memberId("m1"),
    kind: "thaw tonight",
    key: id,
    dueAt: instant("2026-10-12T18:00:00Z"),
    helpsUntil: instant("2026-10-13T00:00:00Z"),
    about: { lotId: lotId("l"), title: "Pot", portions: 1, date: null, meal: null, mealAt: null },
    state: "scheduled",
    attempts: 0,
    nonce: null,
    reason: null,
    ...rest,
  });

  it("makes one message of all rows that were claimed together, the earliest first", () => {
    const late = { dueAt: instant("2026-10-12T18:00:00Z") };
    const deliveries = messagesOf([
      row("b", { ...late, nonce: "n1" }),
      row("a", { nonce: "n1" }),
      row("c", { memberId: memberId("m2"), nonce: "n2" }),
      row("d", { nonce: "n3" }),
    ]);
    expect(deliveries.map((one) => [one.memberId, one.nonce, one.rows.map((r) => r.id)])).toEqual([
      ["m1", "n1", ["a", "b"]],
      ["m2", "n2", ["c"]],
      ["m1", "n3", ["d"]],
    ]);
  });
  it("makes none of what nobody has claimed", () => {
    expect(messagesOf([row("a")])).toEqual([]);
  });
});
