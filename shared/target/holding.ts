import { Temporal } from "temporal-polyfill";
import { isDateBefore, type PlainDate } from "../time.ts";
import type { TargetFigures, TargetRule } from "./types.ts";

/** The targets of a day, with the date from which they hold on that weekday. */
export interface HeldTarget {
  readonly figures: TargetFigures;
  readonly since: PlainDate;
  readonly rule: TargetRule;
}

/** Whether a decision ends targets rather than sets them. */
export function isClearing(figures: TargetFigures): boolean {
  return Object.keys(figures).length === 0;
}

/**
 * The decision that governs a weekday as things stand on a date: the one with the latest date from which it
 * holds, and of several of one date the one taken last. It may be one that ended the targets. `rules`
 * are in the order taken.
 */
export function decisionOn(
  rules: readonly TargetRule[],
  weekday: number,
  asOf: PlainDate,
): TargetRule | null {
  let found: TargetRule | null = null;
  for (const rule of rules) {
    if (!rule.weekdays.includes(weekday) || isDateBefore(asOf, rule.from)) continue;
    if (found === null || !isDateBefore(rule.from, found.from)) found = rule;
  }
  return found;
}

/** The targets of a date, in the member's zone; null when there are none. `rules` are in the order taken. */
export function figuresOn(rules: readonly TargetRule[], date: PlainDate): HeldTarget | null {
  return heldOn(rules, date.dayOfWeek, date);
}

function heldOn(rules: readonly TargetRule[], weekday: number, asOf: PlainDate): HeldTarget | null {
  const rule = decisionOn(rules, weekday, asOf);
  return rule === null || isClearing(rule.figures)
    ? null
    : { figures: rule.figures, since: rule.from, rule };
}

export interface DayTarget {
  /** 1 Monday to 7 Sunday. */
  readonly weekday: number;
  readonly held: HeldTarget | null;
}

/** What holds on each weekday as things stand on a date: Monday to Sunday, decisions to come left out. */
export function targetsByDay(rules: readonly TargetRule[], asOf: PlainDate): readonly DayTarget[] {
  return [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ weekday, held: heldOn(rules, weekday, asOf) }));
}

/** A decision with the weekdays on which it took effect. */
export interface TargetChange {
  readonly from: PlainDate;
  readonly weekdays: readonly number[];
  readonly rule: TargetRule;
}

/**
 * The history, by the date from which each decision holds: for every weekday of every date the decision taken
 * last. What was decided anew before it could hold for a day is left out.
 */
export function changesOf(rules: readonly TargetRule[]): readonly TargetChange[] {
  const kept: TargetChange[] = [];
  const taken = new Map<string, Set<number>>();
  for (const rule of rules.toReversed()) {
    const from = rule.from.toString();
    const seen = taken.get(from) ?? new Set<number>();
    const weekdays = rule.weekdays.filter((weekday) => !seen.has(weekday));
    for (const weekday of weekdays) seen.add(weekday);
    taken.set(from, seen);
    if (weekdays.length > 0) kept.push({ from: rule.from, weekdays, rule });
  }
  return kept.reverse().sort((a, b) => Temporal.PlainDate.compare(a.from, b.from));
}
