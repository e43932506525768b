import type { FoodBook } from "../food/book.ts";
import type { KeepingClass } from "../food/types.ts";
import type { Component, Recipe, StatedKeeping } from "../recipe/types.ts";
import { FRIDGE_CEILING_DAYS, KEEPING_CHART, LEFTOVER_DAYS } from "./chart.ts";
import { coachsWord, partsThatStay, withLonger } from "./coach-word.ts";
import type { FreezesBadly } from "./freezing.ts";
import { isHeated } from "./heated.ts";
import { partLimit } from "./part-limit.ts";
import {
  apartRemarks,
  ceilingRemark,
  freezingRemarks,
  gainRemark,
  longerThanChart,
  monthsRemark,
  type PartKeeping,
  riceRemark,
} from "./remarks.ts";
import type { KeepingTime, LongerTime } from "./types.ts";

/** By whose time a recipe is judged: the published chart's, or the coach's where that may be longer. */
type Whose = "chart" | "coach";

/**
 * How long a batch of the recipe keeps, with the named components left out. The whole is as short as
 * its shortest part. Where the coach states longer than the published chart, both are said and the
 * shorter counts; once the coach has `confirmed` the longer, both are given (`longer`) and the chart's
 * stands until `countedFor` knows who eats. Freezing is judged by the required parts; an optional part
 * that freezes worse is kept out of the freezer, and a remark says so.
 */
export function resolveKeeping(
  recipe: Recipe,
  foods: FoodBook,
  without: readonly string[],
  confirmed = false,
): KeepingTime {
  const chart = keepingBy("chart", recipe, foods, without);
  if (!confirmed) return chart;
  const { fridgeDays, limitedBy, remarks } = keepingBy("coach", recipe, foods, without);
  return fridgeDays <= chart.fridgeDays
    ? chart
    : withLonger(chart, {
        fridgeDays,
        limitedBy,
        remarks: [coachsWord(fridgeDays, chart), ...remarks],
      });
}

/** What the coach's word would change, with the parts left out that stay at the chart's. */
export interface Confirmable {
  readonly longer: LongerTime;
  /** Optional parts that must be left out for it; empty where it holds for the whole. */
  readonly without: readonly string[];
}

/** What there is to confirm of a recipe; null where the coach's word would change nothing. */
export function confirmable(recipe: Recipe, foods: FoodBook): Confirmable | null {
  for (const without of [[], partsThatStay(recipe, foods)]) {
    const { longer } = resolveKeeping(recipe, foods, without, true);
    if (longer !== null) return { longer, without };
  }
  return null;
}

function keepingBy(
  whose: Whose,
  recipe: Recipe,
  foods: FoodBook,
  without: readonly string[],
): KeepingTime {
  const parts = recipe.components
    .filter((part) => !without.includes(part.name))
    .map((part) => keepingOfPart(part, recipe, foods, whose));
  const whole = recipe.keeping;
  const shortest = parts.reduce<PartKeeping | null>(
    (a, b) => (a !== null && a.days <= b.days ? a : b),
    null,
  );
  const chartDays = shortest?.days ?? LEFTOVER_DAYS;
  const days = Math.min(whole.fridgeDays ?? chartDays, chartDays, FRIDGE_CEILING_DAYS - 1);
  const required = parts.filter((part) => !part.optional);
  const freezing = freezingOf(whole, required.length > 0 ? required : parts);
  const remarks = [
    ...rawRemark(recipe, parts),
    ...riceRemark(parts),
    ...parts.flatMap((part) => (part.remark === null ? [] : [part.remark])),
  ];
  const isAtCeiling = whose === "coach" && chartDays === FRIDGE_CEILING_DAYS - 1;
  if ((whole.fridgeDays ?? 0) > chartDays && shortest !== null && !isAtCeiling) {
    remarks.push(
      longerThanChart("The coach states", whole.fridgeDays ?? 0, chartDays, shortest.name),
    );
  }
  remarks.push(
    ...gainRemark(parts, shortest, whole.fridgeDays, days),
    ...ceilingRemark(whole.fridgeDays ?? chartDays, days),
    ...monthsRemark(recipe, freezing.freezerMonths),
    ...freezingRemarks(parts, freezing.freezes),
    ...apartRemarks(parts, freezing.freezes),
  );
  return {
    fridgeDays: days,
    ...freezing,
    limitedBy: days < chartDays ? "the coach's own limit" : (shortest?.name ?? recipe.title),
    remarks,
    longer: null,
  };
}

function keepingOfPart(
  part: Component,
  recipe: Recipe,
  foods: FoodBook,
  whose: Whose,
): PartKeeping {
  const limit = partLimit(part, recipe, foods);
  const stated = part.keeping.fridgeDays;
  const worst = worstOf([...(limit.isCooked ? [] : badRows(limit.classes)), ...limit.badlyFrozen]);
  const isLonger = whose === "coach" && limit.stays === null;
  const days = isLonger
    ? coachDays(stated ?? recipe.keeping.fridgeDays, limit.days)
    : Math.min(stated ?? limit.days, limit.days);
  return {
    name: part.name,
    optional: part.optional,
    days,
    freezerMonths: freezerMonthsOf(part.keeping, limit.classes),
    freezes: part.keeping.freezes ?? worst?.how ?? recipe.keeping.freezes ?? "well",
    reason: part.keeping.reason || (worst?.reason ?? ""),
    published: worst,
    isGrainAlone: limit.isGrainAlone,
    hasRice: limit.hasRice,
    isRaw: limit.isRaw,
    remark: (stated ?? 0) > days && !isLonger ? partRemark(part.name, stated ?? 0, days) : null,
  };
}

function partRemark(name: string, stated: number, chart: number): string {
  return longerThanChart(`For the ${name} the coach states`, stated, chart, name);
}

/** What the coach states for the part or else for the whole, up to the ceiling. */
function coachDays(stated: number | null, chartDays: number): number {
  return Math.min(stated ?? chartDays, FRIDGE_CEILING_DAYS - 1);
}

const RAW_REMARK =
  "its dates are those of raw food. Raw meat, fish and egg are not for pregnancy, small children, the old or the ill.";

function rawRemark(recipe: Recipe, parts: readonly PartKeeping[]): readonly string[] {
  if (!parts.some((part) => part.isRaw)) return [];
  return [
    isHeated(recipe)
      ? `Part of this stays raw, so ${RAW_REMARK}`
      : `No step says that this is cooked, so ${RAW_REMARK}`,
  ];
}

/** The rows of the chart that do not freeze well by themselves. */
function badRows(classes: ReadonlySet<KeepingClass>): readonly FreezesBadly[] {
  return [...classes].flatMap((one) => {
    const { freezesCold, reason } = KEEPING_CHART[one];
    return freezesCold === "well" ? [] : [{ how: freezesCold, reason }];
  });
}

function worstOf(all: readonly FreezesBadly[]): FreezesBadly | null {
  return all.find(({ how }) => how === "no") ?? all[0] ?? null;
}

/** Best quality of mixed dishes follows the leftover figure; fish and seafood are shorter. */
function freezerMonthsOf(stated: StatedKeeping, classes: ReadonlySet<KeepingClass>): number {
  const chart =
    classes.has("raw-fish") || classes.has("cooked-fish") || classes.has("raw-shellfish") ? 2 : 3;
  return Math.min(stated.freezerMonths ?? chart, chart);
}

function freezingOf(
  whole: StatedKeeping,
  parts: readonly PartKeeping[],
): Pick<KeepingTime, "freezes" | "freezerMonths" | "reason"> {
  const worst =
    parts.find((part) => part.freezes === "no") ?? parts.find((part) => part.freezes === "poorly");
  const freezes = whole.freezes ?? worst?.freezes ?? "well";
  const months = Math.min(
    whole.freezerMonths ?? Number.POSITIVE_INFINITY,
    ...parts.map((part) => part.freezerMonths ?? 3),
  );
  return {
    freezes,
    freezerMonths: freezes === "no" ? null : Number.isFinite(months) ? months : 3,
    reason: freezes === "well" ? "" : whole.reason || (worst?.reason ?? ""),
  };
}
