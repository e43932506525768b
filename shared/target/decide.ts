import { fail, type Outcome, ok } from "../outcome.ts";
import { isDateBefore, type PlainDate } from "../time.ts";
import {
  dayEnergy,
  FLOOR_MEN_KCAL,
  FLOOR_WOMEN_KCAL,
  type FloorKcal,
  floorFault,
} from "./floors.ts";
import { changesOf, decisionOn, isClearing, targetsByDay } from "./holding.ts";
import { contradiction } from "./plausible.ts";
import type { TargetProblem } from "./problems.ts";
import { TARGET_KEYS, type TargetFigures, type TargetKey, type TargetRule } from "./types.ts";

/** A figure to set, null to take it away; one that is not named stays as the day has it. */
export type TypedFigures = Readonly<Partial<Record<TargetKey, number | null>>>;

export interface TargetRequest {
  readonly from: PlainDate;
  /** 1 Monday to 7 Sunday, ascending; at least one. */
  readonly weekdays: readonly number[];
  readonly typed: TypedFigures;
  /** The floor the member chose; null when they did not say. */
  readonly floorKcal: FloorKcal | null;
}

/** Weekdays that get the same whole set of figures. */
export interface DecidedDays {
  readonly from: PlainDate;
  readonly weekdays: readonly number[];
  readonly figures: TargetFigures;
  /** Figures that stay as these days had them. */
  readonly kept: readonly TargetKey[];
}

export interface Decided {
  readonly days: readonly DecidedDays[];
  /** The floor the figures were held to. */
  readonly floorKcal: FloorKcal;
}

/**
 * What a request comes to: each of its weekdays gets what it had, with the typed figures in their place, and
 * days that come out alike make one decision. Every day is held to the floor. `rules` are in the order taken.
 */
export function decideTargets(
  rules: readonly TargetRule[],
  request: TargetRequest,
): Outcome<Decided, TargetProblem> {
  const floorKcal = request.floorKcal ?? floorChosenBefore(rules, request.from);
  const days = decidedDays(rules, request);
  // What hurts most comes first, on whichever day it is.
  for (const check of [
    (figures: TargetFigures) => floorFault(figures, FLOOR_WOMEN_KCAL),
    (figures: TargetFigures) => floorFault(figures, floorKcal),
    contradiction,
  ]) {
    for (const { weekdays, figures } of days) {
      const problem = check(figures);
      if (problem !== null) return fail({ ...problem, weekdays });
    }
  }
  return ok({ days, floorKcal });
}

/** Who eats by less than the floor of men already has chosen the other one; nobody is asked every time. */
function floorChosenBefore(rules: readonly TargetRule[], asOf: PlainDate): FloorKcal {
  const chosen = targetsByDay(rules, asOf).some(({ held }) => {
    const day = held === null ? null : dayEnergy(held.figures);
    return day !== null && day.kcal < FLOOR_MEN_KCAL;
  });
  return chosen ? FLOOR_WOMEN_KCAL : FLOOR_MEN_KCAL;
}

function decidedDays(
  rules: readonly TargetRule[],
  { from, weekdays, typed }: TargetRequest,
): readonly DecidedDays[] {
  const groups = new Map<string, { weekdays: number[]; figures: TargetFigures }>();
  for (const weekday of weekdays) {
    const had = decisionOn(rules, weekday, from)?.figures ?? {};
    const figures = merged(had, typed);
    const key = TARGET_KEYS.map((name) => figures[name] ?? "").join("|");
    const group = groups.get(key) ?? { weekdays: [], figures };
    group.weekdays.push(weekday);
    groups.set(key, group);
  }
  return [...groups.values()].map((group) => ({
    from,
    ...group,
    kept: TARGET_KEYS.filter((key) => key in group.figures && typed[key] === undefined),
  }));
}

function merged(had: TargetFigures, typed: TypedFigures): TargetFigures {
  const figures: Partial<Record<TargetKey, number>> = {};
  for (const key of TARGET_KEYS) {
    const value = typed[key] === undefined ? had[key] : typed[key];
    if (value !== undefined && value !== null) figures[key] = value;
  }
  return figures;
}

/**
 * What ends the targets of some weekdays from today on: those that hold now, and those that were to hold
 * later. Empty when there is nothing to end.
 */
export function decideClear(
  rules: readonly TargetRule[],
  weekdays: readonly number[],
  today: PlainDate,
): readonly DecidedDays[] {
  const now = targetsByDay(rules, today)
    .filter(({ weekday, held }) => held !== null && weekdays.includes(weekday))
    .map(({ weekday }) => weekday);
  const later = changesOf(rules)
    .filter(({ from, rule }) => isDateBefore(today, from) && !isClearing(rule.figures))
    .map((change) => ({
      from: change.from,
      weekdays: change.weekdays.filter((weekday) => weekdays.includes(weekday)),
    }));
  return [{ from: today, weekdays: now }, ...later]
    .filter((ended) => ended.weekdays.length > 0)
    .map((ended) => ({ ...ended, figures: {}, kept: [] }));
}
