import type { FoodBook } from "../food/book.ts";
import type { KeepingClass } from "../food/types.ts";
import type { Component, Recipe, StatedKeeping } from "../recipe/types.ts";
import { FRIDGE_CEILING_DAYS, KEEPING_CHART, LEFTOVER_DAYS } from "./chart.ts";
import { coachsWord, withLonger } from "./coach-word.ts";
import type { FreezesBadly } from "./freezing.ts";
import { isHeated } from "./heated.ts";
import { partLimit } from "./part-limit.ts";
import type { KeepingTime } from "./types.ts";

interface PartKeeping {
  readonly name: string;
  readonly optional: boolean;
  readonly days: number;
  readonly freezerMonths: number | null;
  readonly freezes: "well" | "poorly" | "no";
  readonly reason: string;
  /** What the published list says against freezing it, whatever the coach states. */
  readonly published: FreezesBadly | null;
  readonly isGrainAlone: boolean;
  readonly remark: string | null;
}

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
    ...rawRemark(recipe, foods),
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

function rawRemark(recipe: Recipe, foods: FoodBook): readonly string[] {
  const isRaw = recipe.components.some((part) => partLimit(part, recipe, foods).isRaw);
  if (!isRaw) return [];
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

/** Where the coach says that it freezes well, and the published list does not; and grain by itself. */
function freezingRemarks(
  parts: readonly PartKeeping[],
  freezes: KeepingTime["freezes"],
): readonly string[] {
  if (freezes !== "well") return [];
  const bad = parts.flatMap(({ optional, published }) =>
    optional || published === null ? [] : [published.reason],
  );
  return [
    ...(bad.length === 0
      ? []
      : [`By published advice it freezes badly: ${[...new Set(bad)].join(", ")}.`]),
    ...parts
      .filter((part) => part.isGrainAlone)
      .map(
        ({ name }) =>
          `The ${name} frozen by itself turns soft and dry: freeze it under its sauce, or cook it a little less.`,
      ),
  ];
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

/** What leaving the shortest part out would buy; nothing where it is all there is, or buys nothing. */
function gainRemark(
  parts: readonly PartKeeping[],
  shortest: PartKeeping | null,
  stated: number | null,
  days: number,
): readonly string[] {
  const others = parts.filter((part) => part !== shortest).map((part) => part.days);
  if (shortest === null || others.length === 0) return [];
  const longer = Math.min(stated ?? Number.POSITIVE_INFINITY, ...others, FRIDGE_CEILING_DAYS - 1);
  return longer > days
    ? [`The ${shortest.name} decides the ${days} days in the fridge: without it ${longer}.`]
    : [];
}

function longerThanChart(who: string, stated: number, chart: number, part: string): string {
  return `${who} ${stated} days in the fridge; the published chart gives ${chart} for what is in the ${part}. Dates here use ${chart}.`;
}

function monthsRemark(recipe: Recipe, months: number | null): readonly string[] {
  const stated = [recipe.keeping, ...recipe.components.map((part) => part.keeping)].flatMap(
    ({ freezerMonths }) => freezerMonths ?? [],
  );
  const longest = Math.max(0, ...stated);
  return months !== null && longest > months
    ? [
        `The coach states ${longest} months in the freezer; published guidance gives ${months} for best quality. Dates here use ${months}.`,
      ]
    : [];
}

function ceilingRemark(wanted: number, days: number): readonly string[] {
  return wanted > days && days === FRIDGE_CEILING_DAYS - 1
    ? ["Never more than seven days at 5 °C, the day of cooking being the first."]
    : [];
}

function apartRemarks(
  parts: readonly PartKeeping[],
  whole: KeepingTime["freezes"],
): readonly string[] {
  if (whole !== "well") return [];
  return parts
    .filter((part) => part.optional && part.freezes !== "well")
    .map(
      (part) => `Freeze without the ${part.name}${part.reason === "" ? "" : `: ${part.reason}`}.`,
    );
}
