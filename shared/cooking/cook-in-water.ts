import type { RawLine } from "./cook-line.ts";
import { isWater, waterShare } from "./liquids.ts";
import type { CookedLine } from "./types.ts";

/** What the dry foods of a part and its cooking water come to. */
export interface CookedInWater {
  /** By line key: the dry foods, and the liquids they took from. */
  readonly cooked: ReadonlyMap<string, CookedLine>;
  readonly tapG: number;
  readonly goneG: number;
}

interface Liquid {
  readonly line: RawLine;
  readonly isPlain: boolean;
  leftG: number;
  /** Water that can still be taken out of it, grams. */
  waterG: number;
}

/**
 * Lets the dry foods of a part take up water: first the part's plain water, then that of the stock, milk
 * or tomatoes they are cooked with. The rest comes from the tap, unless the recipe gives them a liquid of
 * at least their own weight: then they have that and no more. Water that is poured off, or that the steps
 * let boil away, is gone.
 */
export function cookInWater(lines: readonly RawLine[]): CookedInWater {
  const liquids = lines.flatMap(asLiquid);
  const cooked = new Map<string, CookedLine>();
  let tapG = 0;
  let goneG = 0;
  for (const line of lines.filter(takesUp)) {
    if (line.dry === null) continue;
    const { basis } = line.dry;
    const neededG = line.grams * (basis.factor - 1);
    const at = reachable(line, liquids);
    const isFromTap = isInWater(line) && !hasItsLiquid(line, at);
    const fromRecipeG = takeFrom(at, neededG);
    const fromTapG = isFromTap ? neededG - fromRecipeG : 0;
    // Oats that are baked, sheets of pasta in a dry tray: as any other line.
    if (fromRecipeG + fromTapG === 0) continue;
    tapG += fromTapG;
    cooked.set(line.key, {
      food: line.foodText,
      rawG: line.grams,
      cookedG: line.grams + fromRecipeG + fromTapG,
      code: "water taken up",
      basis,
    });
  }
  if (lines.some(({ how }) => how.drained || how.untilAbsorbed)) goneG = pourOff(liquids);
  for (const { line, leftG } of liquids) {
    if (leftG === line.grams) continue;
    const rest = { food: line.foodText, rawG: line.grams, cookedG: leftG };
    cooked.set(line.key, { ...rest, code: "water given" });
  }
  return { cooked, tapG, goneG };
}

/** Oats in a cake or a bowl stay as they are; rice that no step names is still not eaten dry. */
function takesUp({ dry, how }: RawLine): boolean {
  if (dry === null) return false;
  return how.method !== null || how.wet || (dry.kind !== "oats" && how.otherwise !== null);
}

function isInWater({ dry, how }: RawLine): boolean {
  return how.wet || (how.method === null && dry?.kind !== "oats");
}

/** Porridge and covered rice: the recipe says how much liquid, and nobody adds to it. */
function hasItsLiquid(line: RawLine, liquids: readonly Liquid[]): boolean {
  if (line.how.drained) return false;
  const liquidG = liquids.reduce((sum, { leftG }) => sum + leftG, 0);
  return line.dry?.kind === "oats" || liquidG >= line.grams;
}

function asLiquid(line: RawLine): readonly Liquid[] {
  const share = line.food === null ? 0 : waterShare(line.food);
  if (line.food === null || share === 0) return [];
  const isPlain = isWater(line.food);
  return [{ line, isPlain, leftG: line.grams, waterG: line.grams * share }];
}

/** Plain water of the part, and what is in the pot with it; pasta that is drained had a pot of its own. */
function reachable(line: RawLine, liquids: readonly Liquid[]): readonly Liquid[] {
  const plain = liquids.filter(({ isPlain }) => isPlain);
  if (line.how.drained) return plain;
  return [
    ...plain,
    ...liquids.filter(({ isPlain, line: other }) => !isPlain && line.how.pot.has(other.key)),
  ];
}

function takeFrom(liquids: readonly Liquid[], neededG: number): number {
  let takenG = 0;
  for (const liquid of liquids) {
    const g = Math.min(liquid.waterG, neededG - takenG);
    liquid.leftG -= g;
    liquid.waterG -= g;
    takenG += g;
  }
  return takenG;
}

/** All plain water that is left, but what the steps heat elsewhere. */
function pourOff(liquids: readonly Liquid[]): number {
  let goneG = 0;
  for (const liquid of liquids) {
    const { how } = liquid.line;
    if (!liquid.isPlain || !(how.method === null || how.drained || how.untilAbsorbed)) continue;
    goneG += liquid.leftG;
    liquid.leftG = 0;
    liquid.waterG = 0;
  }
  return goneG;
}
