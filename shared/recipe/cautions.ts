import { isSeasoning } from "./seasoning.ts";
import type { LineChoice, Recipe } from "./types.ts";

/** What a cook should know about a scaled recipe; wording in `commands/kit`. */
export type ScaleCaution =
  /** Of these start at three quarters of what is written, then taste. */
  | { readonly code: "hold seasoning back"; readonly foods: readonly string[] }
  /** Trays and loads grow with the factor; oven and resting times do not. */
  | { readonly code: "times do not scale" };

/** Beyond four times the recipe. Common practice, no published source: USDA and Army recipes scale salt linearly. */
const HOLD_BACK_BEYOND = 4;

/** The cautions of a factor for the choices taken. */
export function scaleCautions(
  recipe: Recipe,
  choices: readonly LineChoice[],
  factor: number,
): readonly ScaleCaution[] {
  const cautions: ScaleCaution[] = [];
  if (factor > HOLD_BACK_BEYOND) {
    const totalG = choices.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
    const foods = choices
      .filter(({ foodText, grams }) => isSeasoning(foodText, share(grams, totalG)))
      .map(({ foodText }) => foodText);
    if (foods.length > 0)
      cautions.push({ code: "hold seasoning back", foods: [...new Set(foods)] });
  }
  const isTimed = recipe.steps.some(({ minutes }) => minutes.length > 0);
  if (factor !== 1 && isTimed) cautions.push({ code: "times do not scale" });
  return cautions;
}

function share(grams: number | null, totalG: number): number | null {
  return grams === null || totalG === 0 ? null : grams / totalG;
}
