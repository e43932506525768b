import { roundTo } from "../quantity/round.ts";
import type { ReadMakes } from "./read-makes.ts";
import type { Line, MakesMore } from "./types.ts";

/** Grams are kept to this, so that they come back the same from a text. */
const STEP_G = 0.1;

/**
 * What a part makes and what the recipe uses of it, in grams; where only a share is said, of what its
 * ingredients weigh. Null where that cannot be told, or more would be used than made.
 */
export function makesMore(read: ReadMakes, lines: readonly Line[]): MakesMore | null {
  const madeG = roundTo(read.madeG ?? wholeG(lines) ?? 0, STEP_G);
  if (read.used === null || madeG <= 0) return null;
  const { used } = read;
  const usedG = roundTo(used.kind === "grams" ? used.grams : madeG * used.share, STEP_G);
  return usedG > 0 && usedG <= madeG ? { madeG, usedG } : null;
}

/** What the lines weigh together; null where one has an amount that cannot be weighed. */
function wholeG(lines: readonly Line[]): number | null {
  const unweighed = lines.some(({ main }) => main.amount !== null && main.grams === null);
  if (unweighed) return null;
  return lines.reduce((sum, { main }) => sum + (main.grams ?? 0) * main.uptake, 0);
}
