import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { KEEPING_CHART } from "../../shared/keeping/chart.ts";
import {
  bestBefore,
  daysLeftAfterThaw,
  discardBy,
  fridgeCalendarDays,
  usedDaysOn,
} from "../../shared/keeping/dates.ts";
import { thawLeadHours } from "../../shared/keeping/thaw.ts";
import { date, keeping, lot } from "../kit/stock.ts";

describe("FDA Food Code 2017, 3-501.17 date marking: seven days, the day of preparation is day one", () => {
  // Southern Nevada Health District, date marking FAQ: prepared or opened 1 April, use or discard by 7 April.
  it("prepared on 1 April is good until 7 April", () => {
    const made = lot({ since: date("2026-04-01") });
    expect(discardBy(made, keeping({ fridgeDays: 7 }))?.toString()).toBe("2026-04-07");
  });
  // Minnesota Department of Health poster on date marking (after Minn. R. 4626.0400): freezing stops the
  // clock; days left after thawing are seven less the days held before freezing.
  it("held three days, then frozen, leaves four days from the day of thawing", () => {
    const made = lot({ since: date("2026-04-01") });
    const used = usedDaysOn(made, date("2026-04-03"));
    expect(daysLeftAfterThaw(used, keeping({ fridgeDays: 7 }))).toBe(4);
    const thawed = lot({ place: "thawing", since: date("2026-05-10"), usedDays: used });
    expect(discardBy(thawed, keeping({ fridgeDays: 7 }))?.toString()).toBe("2026-05-13");
  });
  it("never allows more than seven calendar days, whatever is stated", () => {
    expect(fridgeCalendarDays(keeping({ fridgeDays: 30 }))).toBe(7);
  });
});

describe("USDA FSIS, Leftovers and Food Safety: 3 to 4 days", () => {
  it("uses the shorter end for cooked meat, poultry, fish, rice and beans", () => {
    const classes = [
      "cooked-meat-or-poultry",
      "raw-poultry",
      "raw-fish",
      "cooked-grain",
      "cooked-pulses",
    ] as const;
    expect(classes.map((one) => KEEPING_CHART[one].fridgeDays)).toEqual([3, 3, 3, 3, 3]);
  });
  it("cooked on Sunday with three days is never kept past the fourth day after", () => {
    const last = discardBy(lot({ since: date("2026-10-11") }), keeping({ fridgeDays: 3 }));
    expect(last?.toString()).toBe("2026-10-14");
  });
});

describe("FoodSafety.gov, Cold Food Storage Chart", () => {
  it("keeps hard-cooked eggs one week and does not freeze them", () => {
    expect(KEEPING_CHART["egg-cooked"]).toMatchObject({ fridgeDays: 7, freezesCold: "no" });
  });
  it("keeps mixed salads three days and does not freeze them", () => {
    expect(KEEPING_CHART["salad-leaf"]).toMatchObject({ fridgeDays: 3, freezesCold: "no" });
  });
});

describe("USDA FSIS, The Big Thaw: 24 hours for each 4 to 5 pounds, a full day even for small items", () => {
  it.each([
    [300, 24],
    [450, 24],
    [1814.36948, 24],
    [3628.73896, 48],
  ])("%d g need at least %d hours", (grams, hours) => {
    expect(thawLeadHours(grams)).toBeCloseTo(hours, 6);
  });
  it("is never shorter than the slower published rate", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20_000 }), (grams) => {
        // 24 h per 4 lb is 13.2 h/kg, rounded down to 13.2.
        expect(thawLeadHours(grams)).toBeGreaterThanOrEqual((grams / 1000) * 13.2);
      }),
    );
  });
});

describe("trade practice: common practice, no published source", () => {
  it("a filled wrap keeps three days chilled and three months frozen", () => {
    const made = lot({ since: date("2026-10-11") });
    expect(discardBy(made, keeping({ fridgeDays: 3 }))?.toString()).toBe("2026-10-14");
    const frozen = lot({ place: "freezer", since: date("2026-10-11"), usedDays: 1 });
    expect(bestBefore(frozen, keeping({ freezerMonths: 3 }))?.toString()).toBe("2027-01-11");
  });
});
