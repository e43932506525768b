import { ALLERGENS, type Allergen, type Food, PACK_LABEL } from "../food/types.ts";
import type { FoodId } from "../ids.ts";
import type { Nutrients } from "../nutrition/types.ts";
import { roundTo } from "../quantity/round.ts";
import { SALT_PER_SODIUM, saltOf } from "./figures.ts";
import type { Label, PackFigure } from "./types.ts";

/** 1 kcal is 4.184 kJ (thermochemical, by definition). */
const KJ_PER_KCAL = 4.184;

/**
 * The food that a checked label describes. Figures are turned to 100 g and carbohydrate to the US
 * convention of the food table (with fibre); an EU label without fibre keeps its carbohydrate as it is,
 * and fibre missing. Raw or cooked, and how it keeps, come from the table food it is like.
 */
export function ownFood(id: FoodId, name: string, label: Label, like: Food): Food {
  return {
    id,
    name,
    otherNames: [],
    source: { table: PACK_LABEL, number: basisInWords(label) },
    state: like.state,
    per100g: per100gOf(label),
    waterG: null,
    alcoholG: roundTo((label.alcoholG * 100) / label.basisG, 0.01),
    densityGPerMl: label.densityGPerMl,
    one: label.one,
    measures: label.basis.isServing ? [{ name: "serving", grams: label.basisG }] : [],
    refusePct: 0,
    allergens: label.allergens,
    mayHide: mayHideOf(label, like),
    keepingClass: like.keepingClass,
  };
}

/** "EU style, per 100 g": kept as the number of the source, and read by `isEuLabel`. */
function basisInWords({ style, basis }: Label): string {
  const per = `${roundTo(basis.amount, 0.01)} ${basis.unit}`;
  return `${style.toUpperCase()} style, per ${basis.isServing ? `serving of ${per}` : per}`;
}

/** Whether an own food was typed from an EU label: where its fibre is missing, its carbohydrate has none in it. */
export function isEuLabel({ source }: Food): boolean {
  return source.table === PACK_LABEL && source.number.startsWith("EU ");
}

function per100gOf(label: Label): Nutrients {
  const { energyKcal, energyKj, style, fibreG, carbohydrateG, sodiumMg } = label;
  const grams = (figure: PackFigure | null, more = 0) =>
    // Two rounded figures may say 101 g in 100 g.
    figure === null ? null : Math.min(100, per100(figure.value + more, label));
  const kcal = energyKcal?.value ?? (energyKj === null ? null : energyKj.value / KJ_PER_KCAL);
  const saltG = saltOf(label);
  const sodium =
    sodiumMg?.value ?? (saltG === null ? null : (saltG.value / SALT_PER_SODIUM) * 1000);
  return {
    energyKcal: kcal === null ? null : per100(kcal, label),
    proteinG: grams(label.proteinG),
    fatG: grams(label.fatG),
    saturatedFatG: grams(label.saturatesG),
    carbohydrateG: grams(carbohydrateG, style === "eu" ? (fibreG?.value ?? 0) : 0),
    fibreG: grams(fibreG),
    sugarsG: grams(label.sugarsG),
    sodiumMg: sodium === null ? null : per100(sodium, label),
  };
}

function per100(value: number, { basisG }: Label): number {
  return roundTo((value * 100) / basisG, 0.01);
}

/**
 * What it may hide: as typed; where nobody has looked, what its like may hide, and, where nobody has
 * read its allergens either, what its like is made of.
 */
function mayHideOf({ mayHide, allergens }: Label, like: Food): readonly Allergen[] {
  const guessed = allergens === null ? [...(like.allergens ?? []), ...like.mayHide] : like.mayHide;
  const all = new Set(mayHide ?? guessed);
  return ALLERGENS.filter((one) => all.has(one) && allergens?.includes(one) !== true);
}

/**
 * How far a figure per 100 g may be off because the pack rounds a small serving, in grams: half a gram in
 * a serving of 10 g is 5 g in 100 g.
 */
export function roundingPer100g({ proteinG, fatG, carbohydrateG, basisG, basis }: Label): number {
  if (!basis.isServing) return 0;
  const widest = Math.max(
    ...[proteinG, fatG, carbohydrateG].map(({ value, low, high }) =>
      Math.max(value - low, high - value),
    ),
  );
  return (widest * 100) / basisG;
}
