import fc from "fast-check";
import { memberId, targetId } from "../../../shared/ids.ts";
import type { TargetFigures, TargetRule } from "../../../shared/target/types.ts";
import { date, instant } from "../../kit/stock.ts";

export const START = date("2026-11-23");
export const EVERY_DAY = [1, 2, 3, 4, 5, 6, 7];

/** A decision with valid defaults: a test names only what it is about. */
export function rule(rest: Partial<TargetRule> = {}): TargetRule {
  return {
    id: targetId("target1"),
    memberId: memberId("member1"),
    from: START,
    weekdays: EVERY_DAY,
    figures: { energyKcal: 2100 },
    setBy: memberId("member1"),
    setAt: instant("2026-11-23T08:00:00Z"),
    ...rest,
  };
}

export const anyWeekdays: fc.Arbitrary<readonly number[]> = fc
  .uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 7 })
  .map((days) => days.sort((a, b) => a - b));

const anyFigures: fc.Arbitrary<TargetFigures> = fc.oneof(
  fc.constant({}),
  fc.record(
    {
      energyKcal: fc.integer({ min: 1500, max: 3500 }),
      proteinG: fc.integer({ min: 60, max: 90 }),
      fibreG: fc.integer({ min: 20, max: 40 }),
    },
    { requiredKeys: ["energyKcal"] },
  ),
);

/** Decisions in the order taken; the dates from which they hold lie within three weeks, in any order. */
export const anyRules: fc.Arbitrary<readonly TargetRule[]> = fc
  .array(
    fc.record({
      inDays: fc.integer({ min: 0, max: 20 }),
      weekdays: anyWeekdays,
      figures: anyFigures,
    }),
    { maxLength: 8 },
  )
  .map((list) =>
    list.map(({ inDays, weekdays, figures }, index) =>
      rule({
        id: targetId(`target${index}`),
        from: START.add({ days: inDays }),
        weekdays,
        figures,
      }),
    ),
  );
