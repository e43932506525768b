import type { LabelStyle } from "../../shared/label/types.ts";
import type { Nutrition } from "../../shared/nutrition/portion.ts";
import type { NutrientSums } from "../../shared/nutrition/types.ts";
import { macroPicture } from "../../shared/picture/macro-picture.ts";
import type { Picture } from "../../shared/picture/types.ts";
import type { TargetFigures } from "../../shared/target/types.ts";

/** A card's figures to draw. */
export interface PictureCard {
  readonly title: string;
  readonly portionWord: string;
  readonly style: LabelStyle;
  readonly figures: Pick<Nutrition, "perPortion" | "without">;
  /** What a portion has with each optional part that was left out. */
  readonly withAgain?: readonly { readonly name: string; readonly perPortion: NutrientSums }[];
  /** The member's figures for the day; null when they have none. */
  readonly target: TargetFigures | null;
}

const DRAWN = ["energyKcal", "proteinG", "fatG", "carbohydrateG"] as const;

/**
 * A portion with and without its optional parts against the member's target. Null where a picture would
 * say no more than the rows do: nothing optional and no target, or nothing that could be counted.
 */
export function cardPicture(card: PictureCard): Picture | null {
  const { title, portionWord, style, figures, withAgain = [], target } = card;
  const hasTarget = target !== null && DRAWN.some((key) => (target[key] ?? 0) > 0);
  const hasOptional = figures.without.length + withAgain.length > 0;
  const isCounted = DRAWN.some((key) => figures.perPortion[key].amount > 0);
  if (!isCounted || !(hasTarget || hasOptional)) return null;
  return macroPicture({
    title,
    rows: [
      { label: `one ${portionWord}, as on the card`, sums: figures.perPortion },
      ...figures.without.map((part) => ({ label: `without ${part.name}`, sums: part.perPortion })),
      ...withAgain.map((part) => ({ label: `with ${part.name}`, sums: part.perPortion })),
    ],
    target,
    style,
  });
}
