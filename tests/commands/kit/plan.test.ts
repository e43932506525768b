import { describe, expect, it } from "vitest";
import { planFor } from "../../../commands/kit/plan.ts";
import type { MealRule, MealWishes } from "../../../shared/allocation/types.ts";
import { lotId, slotRuleId } from "../../../shared/ids.ts";
import { batch, choice, instant, lot, stockOf, time } from "../../kit/stock.ts";

const wishes = (rules: readonly MealRule[]): MealWishes => ({ rules, exceptions: [] });
const NOW = instant("2026-10-11T20:00:00Z");
const lunch: MealRule = {
  id: slotRuleId("lunch"),
  name: "lunch",
  weekdays: [2],
  time: time("12:30"),
  portions: 1,
};

describe("planning", () => {
  it("calls nothing surplus while no meals are set, since nobody knows what is eaten when", () => {
    expect(
      planFor(stockOf([batch()], [lot()]), wishes([]), choice(), NOW).allocation.surplus,
    ).toEqual([]);
  });

  it("sets a thaw planned for a morning in quiet hours to their end, on the same day", () => {
    // Two of four days used: thawed on Monday it is good to Tuesday, thawed on Sunday it would not be.
    const frozen = lot({ place: "freezer", portions: 1, usedDays: 2 });
    const early = choice({ morning: time("06:30"), evening: time("23:00") });
    const { allocation, reminders } = planFor(
      stockOf([batch()], [frozen]),
      wishes([lunch]),
      early,
      NOW,
    );
    // 07:00 in Lisbon, summer time.
    expect(allocation.servings.map((one) => one.thawAt?.toString())).toEqual([
      "2026-10-12T06:00:00Z",
    ]);
    const thaw = reminders.find((one) => one.kind === "thaw tonight");
    expect(thaw?.dueAt.toString()).toBe("2026-10-12T06:00:00Z");
  });

  it("looks again two hours after the next meal, when what was not eaten is known", () => {
    const monday: MealRule = { ...lunch, weekdays: [1] };
    const { replanAt } = planFor(
      stockOf([batch()], [lot()]),
      wishes([monday]),
      choice(),
      instant("2026-10-12T08:00:00Z"),
    );
    expect(replanAt?.toString()).toBe("2026-10-12T13:30:00Z");
  });

  it("accounts for every portion of forty large batches at twelve large meals a day", () => {
    const rules = Array.from({ length: 12 }, (_, i) => ({
      ...lunch,
      id: slotRuleId(`rule${i}`),
      weekdays: [1, 2, 3, 4, 5, 6, 7],
      portions: 20,
    }));
    const lots = Array.from({ length: 40 }, (_, i) => lot({ id: lotId(`lot${i}`), portions: 200 }));
    const { allocation } = planFor(stockOf([batch()], lots), wishes(rules), choice(), NOW);
    const kept = allocation.servings.filter((one) => one.from === "fridge").length;
    const frozen = allocation.surplus.reduce((sum, one) => sum + one.portions, 0);
    expect(kept + frozen).toBe(40 * 200);
  });
});
