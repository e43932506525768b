import type { Recipe } from "../recipe/types.ts";
import { FRIDGE_CEILING_DAYS } from "./chart.ts";
import type { FreezesBadly } from "./freezing.ts";
import type { KeepingTime } from "./types.ts";

/** How long one part keeps, and how it freezes. */
export interface PartKeeping {
  readonly name: string;
  readonly optional: boolean;
  readonly days: number;
  readonly freezerMonths: number | null;
  readonly freezes: "well" | "poorly" | "no";
  readonly reason: string;
  /** What the published list says against freezing it, whatever the coach states. */
  readonly published: FreezesBadly | null;
  readonly isGrainAlone: boolean;
  readonly hasRice: boolean;
  readonly isRaw: boolean;
  readonly remark: string | null;
}

/** What leaving the shortest part out would buy; nothing where it is all there is, or buys nothing. */
export function gainRemark(
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

export function longerThanChart(who: string, stated: number, chart: number, part: string): string {
  return `${who} ${stated} days in the fridge; the published chart gives ${chart} for what is in the ${part}. Dates here use ${chart}.`;
}

export function monthsRemark(recipe: Recipe, months: number | null): readonly string[] {
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

export function ceilingRemark(wanted: number, days: number): readonly string[] {
  return wanted > days && days === FRIDGE_CEILING_DAYS - 1
    ? ["Never more than seven days at 5 °C, the day of cooking being the first."]
    : [];
}

export function apartRemarks(
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

/** Where the coach says that it freezes well, and the published list does not; and grain by itself. */
export function freezingRemarks(
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

/**
 * UK Food Standards Agency, home food fact checker on rice: cooled within an hour, reheated once, steaming
 * hot (from memory). It asks for a day in the fridge, the US leftover rule that the dates follow for 3 to 4.
 */
export function riceRemark(parts: readonly PartKeeping[]): readonly string[] {
  return parts.some((part) => part.hasRice)
    ? [
        "Rice: cool it within an hour and heat it once only, until it steams. Its germs survive cooking; stricter advice keeps it one day in the fridge.",
      ]
    : [];
}
