import { describe, expect, it } from "vitest";
import { allocate } from "../../../shared/allocation/allocate.ts";
import { mealSlots } from "../../../shared/allocation/slots.ts";
import type { MealRule, MealSlot } from "../../../shared/allocation/types.ts";
import { batchId, lotId, slotRuleId } from "../../../shared/ids.ts";
import { batch, choice, instant, keeping, lot, stockOf, time, ZONE } from "../../kit/stock.ts";

const SUNDAY_EVENING = instant("2026-10-11T18:00:00Z");
const lunches: MealRule = {
  id: slotRuleId("lunch"),
  name: "lunch",
  weekdays: [1, 2, 3, 4, 5],
  time: time("12:30"),
  portions: 1,
};
const slots = (rules: readonly MealRule[], days = 7): readonly MealSlot[] =>
  mealSlots(rules, SUNDAY_EVENING, ZONE, days);

describe("a batch of eight on Sunday, lunches on weekdays", () => {
  const found = allocate(
    stockOf([batch({ portionsCooked: 8 })], [lot({ portions: 8 })]),
    slots([lunches]),
    SUNDAY_EVENING,
    choice(),
  );

  it("keeps three in the fridge, for Monday to Wednesday", () => {
    const fridge = found.servings.filter((one) => one.from === "fridge");
    expect(fridge.map((one) => one.slot.date.toString())).toEqual([
      "2026-10-12",
      "2026-10-13",
      "2026-10-14",
    ]);
  });
  it("freezes the five that no meal takes before their date", () => {
    expect(found.surplus).toEqual([
      { lotId: "lot1", portions: 5, advice: "freeze", why: "no meal before its date" },
    ]);
  });
  it("serves Thursday and Friday from the freezer, each thawing a full day and inside its life", () => {
    const frozen = found.servings.filter((one) => one.from === "freezer");
    expect(frozen.map((one) => [one.slot.date.toString(), one.thawAt?.toString()])).toEqual([
      ["2026-10-15", "2026-10-13T18:00:00Z"],
      ["2026-10-16", "2026-10-14T18:00:00Z"],
    ]);
  });
});

describe("one lunch left, a freezable lot due Monday and a salad due Tuesday", () => {
  it("gives the salad the lunch and freezes the other", () => {
    const pot = batch({ id: batchId("pot"), keeping: keeping({ fridgeDays: 1 }) });
    const salad = batch({
      id: batchId("salad"),
      keeping: keeping({ fridgeDays: 2, freezes: "no" }),
    });
    const lots = [
      lot({ id: lotId("p"), batchId: pot.id, portions: 1 }),
      lot({ id: lotId("s"), batchId: salad.id, portions: 1 }),
    ];
    const monday = slots([{ ...lunches, weekdays: [1] }], 2);
    const found = allocate(stockOf([pot, salad], lots), monday, SUNDAY_EVENING, choice());
    expect(found.servings.map((one) => one.lotId)).toEqual(["s"]);
    expect(found.surplus).toMatchObject([{ lotId: "p", advice: "freeze" }]);
  });
});

describe("a heavy portion set to thaw", () => {
  it("is given to a meal once half its lead is over, whatever its mass comes to in minutes", () => {
    const roast = batch({ portionG: 2000 });
    const thawing = lot({ place: "thawing", portions: 1 });
    const found = allocate(stockOf([roast], [thawing]), slots([lunches]), SUNDAY_EVENING, choice());
    expect(found.servings).toMatchObject([{ from: "thawing", slot: { name: "lunch" } }]);
  });
});
