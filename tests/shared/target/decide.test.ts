import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type DecidedDays,
  decideClear,
  decideTargets,
  type TargetRequest,
} from "../../../shared/target/decide.ts";
import { figuresOn } from "../../../shared/target/holding.ts";
import type { TargetFigures, TargetRule } from "../../../shared/target/types.ts";
import { date } from "../../kit/stock.ts";
import { anyRules, anyWeekdays, EVERY_DAY, rule, START } from "./kit.ts";

const days = Array.from({ length: 35 }, (_, step) => START.add({ days: step }));

function decide(rules: readonly TargetRule[], rest: Partial<TargetRequest>) {
  return decideTargets(rules, {
    from: START,
    weekdays: EVERY_DAY,
    typed: {},
    floorKcal: null,
    ...rest,
  });
}

function written(rules: readonly TargetRule[], decided: readonly DecidedDays[]) {
  return [...rules, ...decided.map((one) => rule(one))];
}

/** The problem's code, or "taken". */
function verdict(figures: TargetFigures, floorKcal: TargetRequest["floorKcal"] = null): string {
  const decided = decide([], { typed: figures, floorKcal });
  return decided.ok ? "taken" : decided.problem.code;
}

describe("the floors", () => {
  it.each([
    [1199, "below every floor", "below every floor"],
    [1199.9, "below every floor", "below every floor"],
    [1200, "below the floor of men", "taken"],
    [1499, "below the floor of men", "taken"],
    [1499.9, "below the floor of men", "taken"],
    [1500, "taken", "taken"],
  ])("%d kcal: %s unless the floor of women is chosen, then %s", (energyKcal, men, women) => {
    expect(verdict({ energyKcal })).toBe(men);
    expect(verdict({ energyKcal }, 1500)).toBe(men);
    expect(verdict({ energyKcal }, 1200)).toBe(women);
  });

  // By hand, 4/4/9: 75 g protein 300 + 40 g fat 360 + carbohydrate.
  it.each([
    [134, "below every floor"], // 536: 1,196
    [135, "below the floor of men"], // 540: 1,200
    [209, "below the floor of men"], // 836: 1,496
    [210, "taken"], // 840: 1,500
  ])("without an energy the three macronutrients count: carbohydrate %d g is %s", (g, code) => {
    expect(verdict({ proteinG: 75, fatG: 40, carbohydrateG: g })).toBe(code);
  });

  it("one or two macronutrients say nothing about the day's energy", () => {
    expect(verdict({ proteinG: 75, fatG: 40 })).toBe("taken");
  });

  it("three macronutrients cannot lie far under the energy beside them", () => {
    const macros = { proteinG: 75, fatG: 40, carbohydrateG: 135 };
    expect(verdict({ energyKcal: 2000, ...macros })).toBe("macronutrients below energy");
  });

  it("hold for every day that the figures kept from before make", () => {
    const weekend = rule({ weekdays: [6, 7], figures: { proteinG: 75, fatG: 40 } });
    const decided = decide([weekend], { typed: { carbohydrateG: 130 } });
    expect(decided).toMatchObject({
      ok: false,
      problem: { code: "below every floor", energyKcal: 1180, weekdays: [6, 7] },
    });
  });

  it("a floor chosen once goes on, until it is chosen anew or the targets end", () => {
    const low = rule({ weekdays: [1, 2], figures: { energyKcal: 1300 } });
    const ended = rule({ weekdays: [1, 2], figures: {} });
    const ask = { typed: { energyKcal: 1350 } } as const;
    expect(decide([low], ask)).toMatchObject({ ok: true, value: { floorKcal: 1200 } });
    expect(decide([low], { ...ask, floorKcal: 1500 }).ok).toBe(false);
    expect(decide([low, ended], ask).ok).toBe(false);
  });

  it("no run of requests ends in a day under 1,200 kcal", () => {
    const figure = fc.option(fc.integer({ min: 0, max: 2500 }), { nil: undefined });
    const grams = fc.option(fc.integer({ min: 20, max: 400 }), { nil: null });
    const request = fc.record({
      weekdays: anyWeekdays,
      floorKcal: fc.constantFrom(1200 as const, 1500 as const, null),
      energyKcal: fc.oneof(figure, fc.constant(null)),
      proteinG: grams,
      fatG: grams,
      carbohydrateG: grams,
    });
    fc.assert(
      fc.property(fc.array(request, { maxLength: 6 }), (requests) => {
        let rules: readonly TargetRule[] = [];
        for (const { weekdays, floorKcal, energyKcal, ...macros } of requests) {
          const typed = energyKcal === undefined ? macros : { energyKcal, ...macros };
          const decided = decide(rules, { weekdays, floorKcal, typed });
          if (decided.ok) rules = written(rules, decided.value.days);
        }
        for (const day of days.slice(0, 7)) {
          const { energyKcal, proteinG, fatG, carbohydrateG } =
            figuresOn(rules, day)?.figures ?? {};
          const macros = 4 * (proteinG ?? NaN) + 9 * (fatG ?? NaN) + 4 * (carbohydrateG ?? NaN);
          const kcal = energyKcal ?? macros;
          expect(Number.isNaN(kcal) || kcal >= 1200, `${kcal}`).toBe(true);
        }
      }),
    );
  });
});

describe("figures that contradict each other", () => {
  it.each([
    // 4 x 200 + 9 x 100 + 4 x 150 = 2,300; 10 % above 2,100 is 2,310, above 2,090 is 2,299.
    [{ energyKcal: 2100, proteinG: 200, fatG: 100, carbohydrateG: 150 }, "taken"],
    [
      { energyKcal: 2090, proteinG: 200, fatG: 100, carbohydrateG: 150 },
      "macronutrients above energy",
    ],
    [{ energyKcal: 2000, proteinG: 150, fatG: 190 }, "macronutrients above energy"],
    [{ carbohydrateG: 30, fibreG: 31 }, "fibre above carbohydrate"],
    [{ carbohydrateG: 30, fibreG: 30 }, "taken"],
    [{ proteinG: 400, fatG: 400, carbohydrateG: 300 }, "energy too high"],
  ])("%o is %s", (figures, code) => {
    expect(verdict(figures)).toBe(code);
  });
});

describe("setting some figures", () => {
  it("keeps the others of each day, and makes one decision of days that come out alike", () => {
    const rules = [
      rule({ figures: { energyKcal: 2100, fibreG: 30 } }),
      rule({ weekdays: [6, 7], figures: { energyKcal: 2400 } }),
    ];
    const decided = decide(rules, { typed: { proteinG: 120 } });
    expect(decided.ok ? decided.value.days : decided.problem).toEqual([
      {
        from: START,
        weekdays: [1, 2, 3, 4, 5],
        figures: { energyKcal: 2100, proteinG: 120, fibreG: 30 },
        kept: ["energyKcal", "fibreG"],
      },
      {
        from: START,
        weekdays: [6, 7],
        figures: { energyKcal: 2400, proteinG: 120 },
        kept: ["energyKcal"],
      },
    ]);
  });

  it("keeps what holds on the day it begins, not what is planned after it", () => {
    const rules = [
      rule({ figures: { energyKcal: 2100 } }),
      rule({ from: date("2026-12-07"), figures: { energyKcal: 1900 } }),
    ];
    const kcal = (from: string) => {
      const decided = decide(rules, { from: date(from), typed: { proteinG: 120 } });
      return decided.ok ? decided.value.days[0]?.figures.energyKcal : decided.problem;
    };
    expect([kcal("2026-12-06"), kcal("2026-12-07")]).toEqual([2100, 1900]);
  });

  it("takes a figure away by none, and the target with its last one", () => {
    const decided = decide([rule()], { typed: { energyKcal: null } });
    const days = decided.ok ? decided.value.days : [];
    expect(figuresOn(written([rule()], days), START)).toBeNull();
  });

  it("changes its own weekdays only, and the same request again comes to the same", () => {
    fc.assert(
      fc.property(anyRules, anyWeekdays, (rules, weekdays) => {
        const from = START.add({ days: 21 });
        const request = { from, weekdays, typed: { proteinG: 100 } } as const;
        const decided = decide(rules, request);
        if (!decided.ok) throw new Error(decided.problem.code);
        const after = written(rules, decided.value.days);
        const own = decided.value.days.flatMap((one) => one.weekdays);
        expect([...own].sort()).toEqual(weekdays);
        for (const day of days) {
          const now = figuresOn(after, day)?.figures;
          const before = figuresOn(rules, day)?.figures;
          const isOwn = weekdays.includes(day.dayOfWeek) && day.since(from).sign >= 0;
          expect(now).toEqual(isOwn ? { ...before, proteinG: 100 } : before);
        }
        const again = decide(after, request);
        const shapes = (list: readonly DecidedDays[]) =>
          list.map(({ weekdays: on, figures }) => ({ on, figures }));
        expect(again.ok && shapes(again.value.days)).toEqual(shapes(decided.value.days));
      }),
    );
  });
});

describe("clearing", () => {
  it("ends what holds and what was to come on its weekdays, and nothing else", () => {
    fc.assert(
      fc.property(anyRules, anyWeekdays, fc.nat(20), (rules, weekdays, inDays) => {
        const today = START.add({ days: inDays });
        const after = written(rules, decideClear(rules, weekdays, today));
        for (const day of days) {
          const isEnded = weekdays.includes(day.dayOfWeek) && day.since(today).sign >= 0;
          expect(figuresOn(after, day)?.figures).toEqual(
            isEnded ? undefined : figuresOn(rules, day)?.figures,
          );
        }
        expect(decideClear(after, weekdays, today)).toEqual([]);
      }),
    );
  });
});
