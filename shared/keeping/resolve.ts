import type { FoodBook } from "../food/book.ts";
import type { KeepingClass } from "../food/types.ts";
import type { Component, Recipe, StatedKeeping } from "../recipe/types.ts";
import { FRIDGE_CEILING_DAYS, KEEPING_CHART, LEFTOVER_DAYS, RAW_FRIDGE_DAYS } from "./chart.ts";
import type { KeepingTime } from "./types.ts";

/** Classes that only stand in a recipe to be cooked: a component that has one is a cooked dish. */
const COOKED_BY_ITS_FOODS: ReadonlySet<KeepingClass> = new Set([
  "raw-poultry",
  "raw-meat",
  "raw-minced-meat",
  "raw-fish",
  "raw-shellfish",
  "cooked-meat-or-poultry",
  "cooked-fish",
  "cooked-grain",
  "cooked-pulses",
  "egg-raw",
]);

/** Words by which a step says that food is heated through. */
const HEAT =
  /\b(?:bak|boil|brais|broil|brown|cook|fry|fri|griddl|grill|heat|microwav|oven|poach|roast|saut|scald|sear|simmer|steam|stew|toast)/iu;

/** Whether the steps heat anything: a temperature of at least 60 °C, or a word for it. */
export function isHeated(recipe: Recipe): boolean {
  return recipe.steps.some(heats);
}

/** Whether a step heats: it names a temperature of at least 60 °C, or has a word for it. */
export function heats({ text, temperaturesC }: Recipe["steps"][number]): boolean {
  return temperaturesC.some((c) => c >= 60) || HEAT.test(text);
}

interface PartKeeping {
  readonly name: string;
  readonly optional: boolean;
  readonly days: number;
  readonly freezerMonths: number | null;
  readonly freezes: "well" | "poorly" | "no";
  readonly reason: string;
  readonly remark: string | null;
}

/**
 * How long a batch of the recipe keeps, with the named components left out. The whole is as short as
 * its shortest part. Where the coach states longer than the published chart, both are said and the
 * shorter counts. Freezing is judged by the required parts; an optional part that freezes worse is
 * kept out of the freezer, and a remark says so.
 */
export function resolveKeeping(
  recipe: Recipe,
  foods: FoodBook,
  without: readonly string[],
): KeepingTime {
  const parts = recipe.components
    .filter((part) => !without.includes(part.name))
    .map((part) => keepingOfPart(part, recipe, foods));
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
  if (whole.fridgeDays !== null && whole.fridgeDays > chartDays && shortest !== null) {
    remarks.push(longerThanChart("The coach states", whole.fridgeDays, chartDays, shortest.name));
  }
  remarks.push(
    ...gainRemark(parts, shortest, whole.fridgeDays, days),
    ...ceilingRemark(whole.fridgeDays ?? chartDays, days),
    ...monthsRemark(recipe, freezing.freezerMonths),
    ...apartRemarks(parts, freezing.freezes),
  );
  return {
    fridgeDays: days,
    ...freezing,
    limitedBy: days < chartDays ? "the coach's own limit" : (shortest?.name ?? recipe.title),
    remarks,
  };
}

function keepingOfPart(part: Component, recipe: Recipe, foods: FoodBook): PartKeeping {
  const classes = classesOf(part, foods);
  const heated = isHeated(recipe);
  const cooked = heated && [...classes].some((one) => COOKED_BY_ITS_FOODS.has(one));
  const limits = [...classes].flatMap(
    (one) => (heated ? null : RAW_FRIDGE_DAYS[one]) ?? KEEPING_CHART[one].fridgeDays ?? [],
  );
  const chart = limits.length === 0 ? FRIDGE_CEILING_DAYS - 1 : Math.min(...limits);
  const stated = part.keeping.fridgeDays;
  const worst = cooked ? null : worstFreezing(classes);
  return {
    name: part.name,
    optional: part.optional,
    days: Math.min(stated ?? chart, chart),
    freezerMonths: freezerMonthsOf(part.keeping, classes),
    freezes:
      part.keeping.freezes ??
      (recipe.keeping.freezes === null
        ? (worst?.how ?? "well")
        : (worst?.how ?? recipe.keeping.freezes)),
    reason: part.keeping.reason || (worst?.reason ?? ""),
    remark:
      stated !== null && stated > chart
        ? longerThanChart(`For the ${part.name} the coach states`, stated, chart, part.name)
        : null,
  };
}

function rawRemark(recipe: Recipe, foods: FoodBook): readonly string[] {
  const raw = recipe.components
    .flatMap((part) => [...classesOf(part, foods)])
    .some((one) => RAW_FRIDGE_DAYS[one] !== undefined);
  return raw && !isHeated(recipe)
    ? [
        "No step says that this is cooked, so its dates are those of raw food. Raw meat, fish and egg are not for pregnancy, small children, the old or the ill.",
      ]
    : [];
}

function classesOf(part: Component, foods: FoodBook): ReadonlySet<KeepingClass> {
  const known = part.lines.flatMap((line) => {
    return [line.main, ...line.swaps].flatMap(({ foodId }) => {
      const food = foodId === null ? null : foods.byId(foodId);
      return food === null ? [] : [food.keepingClass];
    });
  });
  return new Set(known);
}

function worstFreezing(
  classes: ReadonlySet<KeepingClass>,
): { readonly how: "poorly" | "no"; readonly reason: string } | null {
  const bad = [...classes]
    .map((one) => KEEPING_CHART[one])
    .filter((one) => one.freezesCold !== "well");
  const worst = bad.find((one) => one.freezesCold === "no") ?? bad[0];
  if (worst === undefined) return null;
  return { how: worst.freezesCold === "no" ? "no" : "poorly", reason: worst.reason };
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
