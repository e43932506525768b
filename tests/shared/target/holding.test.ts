import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { targetId } from "../../../shared/ids.ts";
import { changesOf, figuresOn, targetsByDay } from "../../../shared/target/holding.ts";
import type { TargetFigures, TargetRule } from "../../../shared/target/types.ts";
import { isDateBefore } from "../../../shared/time.ts";
import { date } from "../../kit/stock.ts";
import { anyRules, anyWeekdays, EVERY_DAY, rule, START } from "./kit.ts";

const days = Array.from({ length: 35 }, (_, step) => START.add({ days: step }));
const sheet = (rules: readonly TargetRule[]) =>
  days.map((day) => figuresOn(rules, day)?.figures ?? null);

/** The rule as people would apply it: a sheet with a box for each weekday, written over day after day. */
function byWalking(rules: readonly TargetRule[]): readonly (TargetFigures | null)[] {
  const boxes = new Map<number, TargetFigures | null>();
  return days.map((day) => {
    for (const one of rules.filter(({ from }) => from.equals(day))) {
      const empty = Object.keys(one.figures).length === 0;
      for (const weekday of one.weekdays) boxes.set(weekday, empty ? null : one.figures);
    }
    return boxes.get(day.dayOfWeek) ?? null;
  });
}

describe("which targets hold on a date", () => {
  it("equals a sheet of weekdays written over day after day", () => {
    fc.assert(
      fc.property(anyRules, (rules) => {
        expect(sheet(rules)).toEqual(byWalking(rules));
      }),
    );
  });

  it("a later decision for other weekdays never changes these", () => {
    fc.assert(
      fc.property(anyRules, anyWeekdays, fc.nat(20), (rules, weekdays, inDays) => {
        const more = [...rules, rule({ weekdays, from: START.add({ days: inDays }) })];
        for (const day of days) {
          if (weekdays.includes(day.dayOfWeek)) continue;
          expect(figuresOn(more, day)).toEqual(figuresOn(rules, day));
        }
      }),
    );
  });

  it("a decision never changes a day before the one it holds from", () => {
    fc.assert(
      fc.property(anyRules, fc.nat(20), (rules, inDays) => {
        const from = START.add({ days: inDays });
        const more = [...rules, rule({ from })];
        for (const day of days.filter((one) => isDateBefore(one, from))) {
          expect(figuresOn(more, day)).toEqual(figuresOn(rules, day));
        }
      }),
    );
  });

  it("of two decisions from one date the one taken last holds", () => {
    const first = rule({ figures: { energyKcal: 2000 } });
    const second = rule({ figures: { energyKcal: 1800 } });
    expect(figuresOn([first, second], START)?.figures).toEqual({ energyKcal: 1800 });
    expect(figuresOn([second, first], START)?.figures).toEqual({ energyKcal: 2000 });
  });

  it("what was planned for later holds then, though something else was decided since", () => {
    const planned = rule({ from: date("2026-12-01"), figures: { energyKcal: 1800 } });
    const since = rule({ from: START, figures: { energyKcal: 2200 } });
    const held = (text: string) => figuresOn([planned, since], date(text))?.figures.energyKcal;
    expect([held("2026-11-30"), held("2026-12-01"), held("2026-12-02")]).toEqual([
      2200, 1800, 1800,
    ]);
  });

  it("cleared is none, and says so from that date only", () => {
    const rules = [rule(), rule({ from: date("2026-11-26"), weekdays: [4, 5], figures: {} })];
    expect(figuresOn(rules, date("2026-11-25"))?.since.toString()).toBe("2026-11-23");
    expect(figuresOn(rules, date("2026-11-26"))).toBeNull();
    expect(figuresOn(rules, date("2026-11-28"))).not.toBeNull();
  });

  it("the week as it stands leaves out what is only planned", () => {
    const rules = [rule(), rule({ from: date("2026-11-28"), weekdays: [6, 7], figures: {} })];
    const held = (asOf: string) =>
      targetsByDay(rules, date(asOf)).filter((day) => day.held !== null).length;
    expect([held("2026-11-27"), held("2026-11-28"), held("2026-11-22")]).toEqual([7, 5, 0]);
  });
});

describe("the history of targets", () => {
  it("stands by the date from which each holds, and names a weekday of a date once", () => {
    fc.assert(
      fc.property(anyRules, (rules) => {
        const changes = changesOf(rules);
        const froms = changes.map(({ from }) => from.toString());
        expect(froms).toEqual([...froms].sort());
        const boxes = changes.flatMap(({ from, weekdays }) => weekdays.map((d) => `${from} ${d}`));
        expect(new Set(boxes).size).toBe(boxes.length);
        // Replaying the history alone gives the same days.
        const replayed = changes.map((change) => ({ ...change.rule, weekdays: change.weekdays }));
        expect(sheet(replayed)).toEqual(sheet(rules));
      }),
    );
  });

  it("leaves out what was decided anew before it held for a day", () => {
    const rules = [
      rule({ id: targetId("slip"), figures: { energyKcal: 5000 } }),
      rule({ id: targetId("meant"), weekdays: EVERY_DAY }),
    ];
    expect(changesOf(rules).map((change) => change.rule.id)).toEqual(["meant"]);
  });
});
