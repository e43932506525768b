import type { Food } from "../food/types.ts";
import { weigh } from "../food/weigh.ts";
import type { SpoonSet } from "../quantity/types.ts";
import { readUptake } from "./read-uptake.ts";
import type { Line, LineChoice } from "./types.ts";

/**
 * Oil taken up in deep frying, as a share of the mass of the other foods. Common practice: published
 * figures run from about 5 % (plain vegetables, fish) to 15 % and more (battered or crumbed food, thin
 * chips), from memory; no single published source.
 */
const DEEP_FRYING_TAKES_UP = 0.1;
const WATER = /\b(?:water|ice)$/iu;

/**
 * Share of a line that is eaten, 0 to 1, from what the coach writes after the food ("about 40 ml taken up",
 * "30 % taken up", "half of it is poured off"). Without a figure all of it: an upper bound.
 */
export function shareEaten(
  preparation: string,
  grams: number | null,
  food: Food | null,
  spoons: SpoonSet,
): number {
  const read = readUptake(preparation);
  if (read?.kind === "share") return read.share;
  if (read?.kind !== "amount" || grams === null || grams <= 0) return 1;
  const amountG = weigh(read.amount, food, spoons);
  if (amountG === null) return 1;
  const share = Math.min(1, amountG / grams);
  return read.eaten ? share : 1 - share;
}

/** Whether some of a choice is not eaten and nothing says how much: it is then counted in full. */
export function isCountedInFull({ preparation, uptake }: LineChoice): boolean {
  const read = readUptake(preparation);
  return uptake === 1 && (read?.kind === "no figure" || read?.kind === "deep frying");
}

/** Whether a choice is a deep-frying oil whose uptake the coach has not stated. */
export function isDeepFryingOil({ preparation }: LineChoice): boolean {
  return readUptake(preparation)?.kind === "deep frying";
}

/** The lines of a component with the uptake of their frying oil, worked out from the foods fried in it. */
export function withFryingOil(lines: readonly Line[]): readonly Line[] {
  const oils = lines.filter(({ main }) => isDeepFryingOil(main));
  if (oils.length === 0) return lines;
  const friedG = lines
    .filter((line) => !oils.includes(line) && !WATER.test(line.main.foodText))
    .reduce((sum, { main }) => sum + (main.grams ?? 0) * main.uptake, 0);
  const oilG = oils.reduce((sum, { main }) => sum + (main.grams ?? 0), 0);
  const mostG = DEEP_FRYING_TAKES_UP * friedG;
  const take = (choice: LineChoice, allG: number): LineChoice =>
    !isDeepFryingOil(choice) || allG <= 0 || mostG <= 0
      ? choice
      : { ...choice, uptake: Math.min(1, mostG / allG) };
  return lines.map((line) => ({
    ...line,
    main: take(line.main, oilG),
    swaps: line.swaps.map((swap) => take(swap, swap.grams ?? 0)),
  }));
}

/** A whole part poured off ("Marinade, 30 % taken up"): its share goes to the lines without a figure of their own. */
export function withUptakeOfPart(lines: readonly Line[], partName: string): readonly Line[] {
  const read = readUptake(partName);
  if (read?.kind !== "share") return lines;
  const take = (choice: LineChoice): LineChoice =>
    hasFigure(choice) ? choice : { ...choice, uptake: read.share };
  return lines.map((line) => ({ ...line, main: take(line.main), swaps: line.swaps.map(take) }));
}

function hasFigure({ preparation }: LineChoice): boolean {
  const kind = readUptake(preparation)?.kind;
  return kind === "share" || kind === "amount";
}
