import { Temporal } from "temporal-polyfill";
import {
  changesOf,
  decisionOn,
  isClearing,
  type TargetChange,
  targetsByDay,
} from "../../shared/target/holding.ts";
import type { TargetFigures, TargetRule } from "../../shared/target/types.ts";
import { writeTarget } from "../../shared/target/write.ts";
import { isDateBefore, type PlainDate } from "../../shared/time.ts";
import { writeDate, writeWeekday } from "../../shared/words/write-when.ts";
import { type Part, type Row, rows } from "../kit/reply.ts";

const LATER_SHOWN = 6;
const BEFORE_SHOWN = 5;

/** Says who took a decision: "set by you". */
export type SayBy = (rule: TargetRule) => string;

/** "Mon-Fri", "Sat, Sun", "every day". `weekdays` ascend. */
export function writeWeekdays(weekdays: readonly number[]): string {
  const first = weekdays[0] ?? 1;
  const last = weekdays.at(-1) ?? first;
  if (weekdays.length === 7) return "every day";
  const inARow = last - first === weekdays.length - 1;
  return inARow && weekdays.length > 2
    ? `${writeWeekday(first)}-${writeWeekday(last)}`
    : weekdays.map(writeWeekday).join(", ");
}

/** "today", or the date, with its year where it is not this one. */
export function writeFrom(date: PlainDate, today: PlainDate): string {
  if (date.equals(today)) return "today";
  return date.year === today.year ? writeDate(date) : `${writeDate(date)} ${date.year}`;
}

interface Held {
  readonly weekdays: number[];
  readonly figures: TargetFigures;
  readonly rule: TargetRule | null;
}

/** Weekdays with the same figures under the same decision, or without any, together. */
function weekOf(rules: readonly TargetRule[], asOf: PlainDate): readonly Held[] {
  const groups = new Map<string, Held>();
  for (const { weekday, held } of targetsByDay(rules, asOf)) {
    const figures = held?.figures ?? {};
    const key =
      held === null ? "" : `${writeTarget(figures)} ${held.since} ${held.rule.setBy ?? ""}`;
    const group = groups.get(key) ?? { weekdays: [], figures, rule: held?.rule ?? null };
    group.weekdays.push(weekday);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** The week as things stand on a date, where its days differ; nothing where they do not. */
export function weekPart(
  rules: readonly TargetRule[],
  asOf: PlainDate,
  today: PlainDate,
  sayBy: SayBy,
): readonly Part[] {
  const week = weekOf(rules, asOf);
  if (week.length < 2) return [];
  const list = week.map(({ weekdays, figures, rule }): Row => {
    const label = writeWeekdays(weekdays);
    if (rule === null) return { label, figure: writeTarget(figures) };
    const note = `since ${writeFrom(rule.from, today)}, ${sayBy(rule)}`;
    return {
      label,
      figure: writeTarget(figures),
      note: isDateBefore(today, rule.from) ? sayBy(rule) : note,
    };
  });
  const title = asOf.equals(today) ? "By day" : `By day from ${writeFrom(asOf, today)}`;
  return [rows(title, list)];
}

/** What is to hold after a date, soonest first. */
export function laterPart(
  rules: readonly TargetRule[],
  after: PlainDate,
  today: PlainDate,
  sayBy: SayBy,
): readonly Part[] {
  const later = changesOf(rules)
    .filter(({ from }) => isDateBefore(after, from))
    .map((change) => ({ ...change, weekdays: weekdaysThatChange(rules, change) }))
    .filter(({ weekdays }) => weekdays.length > 0)
    .slice(0, LATER_SHOWN);
  return later.length === 0
    ? []
    : [
        rows(
          "Later",
          later.map((change) => changeRow(change, today, sayBy)),
        ),
      ];
}

/** A plan that was ended before it came leaves an end of nothing behind: not worth a row. */
function weekdaysThatChange(
  rules: readonly TargetRule[],
  { from, weekdays, rule }: TargetChange,
): readonly number[] {
  const dayBefore = from.subtract({ days: 1 });
  return weekdays.filter((weekday) => {
    const had = decisionOn(rules, weekday, dayBefore)?.figures ?? {};
    return writeTarget(had) !== writeTarget(rule.figures);
  });
}

/** What held before and no longer does, newest first. */
export function beforePart(
  rules: readonly TargetRule[],
  today: PlainDate,
  sayBy: SayBy,
): readonly Part[] {
  const now = new Set(targetsByDay(rules, today).flatMap(({ held }) => held?.rule.id ?? []));
  const before = changesOf(rules)
    .filter(({ rule }) => Temporal.PlainDate.compare(rule.from, today) <= 0 && !now.has(rule.id))
    .slice(-BEFORE_SHOWN)
    .reverse();
  return before.length === 0
    ? []
    : [
        rows(
          "Decided before",
          before.map((change) => changeRow(change, today, sayBy)),
        ),
      ];
}

function changeRow(change: TargetChange, today: PlainDate, sayBy: SayBy): Row {
  const { from, weekdays, rule } = change;
  const label = `${writeWeekdays(weekdays)} from ${writeFrom(from, today)}`;
  const verb = isClearing(rule.figures) ? sayBy(rule).replace(/^set /u, "cleared ") : sayBy(rule);
  return { label, figure: writeTarget(rule.figures), note: verb };
}
