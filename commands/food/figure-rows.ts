import type { Food } from "../../shared/food/types.ts";
import type { LabelStyle } from "../../shared/label/types.ts";
import { isEuLabel } from "../../shared/label-entry/own-food.ts";
import { writeMassG } from "../../shared/nutrition/write.ts";
import { roundTo } from "../../shared/quantity/round.ts";
import type { Row } from "../kit/reply.ts";

const NOT_KNOWN = "not known";
const KJ_PER_KCAL = 4.184;

/** Energy of `grams` of a food: "403 kcal", for an EU group with kJ; "not known" where the source has none. */
export function energyOf(food: Food, grams: number, style: LabelStyle): string {
  const kcal = amountOf(food, "energyKcal", grams);
  if (kcal === null) return NOT_KNOWN;
  const shown = `${Math.round(kcal)} kcal`;
  return style === "eu" ? `${shown} (about ${Math.round(kcal * KJ_PER_KCAL)} kJ)` : shown;
}

/**
 * The figures of `grams` of a food. What the source lacks is "not known", never 0. Carbohydrate stands as
 * the group's style counts it, and the other way beside it.
 */
export function figureRows(food: Food, grams: number, style: LabelStyle): readonly Row[] {
  const mass = (key: MassKey) => writeMass(amountOf(food, key, grams));
  return [
    { label: "energy", figure: energyOf(food, grams, style) },
    { label: "protein", figure: mass("proteinG") },
    { label: "fat", figure: mass("fatG"), note: `saturated ${mass("saturatedFatG")}` },
    carbohydrateRow(food, grams, style),
    { label: "sugars", figure: mass("sugarsG"), note: "part of the carbohydrate" },
    { label: "fibre", figure: mass("fibreG") },
    saltRow(food, grams),
    ...(food.alcoholG > 0
      ? [{ label: "alcohol", figure: writeMassG((food.alcoholG * grams) / 100) }]
      : []),
  ];
}

type MassKey = "proteinG" | "fatG" | "saturatedFatG" | "carbohydrateG" | "fibreG" | "sugarsG";

function amountOf(food: Food, key: keyof Food["per100g"], grams: number): number | null {
  const per100g = food.per100g[key];
  return per100g === null ? null : (per100g * grams) / 100;
}

function writeMass(grams: number | null): string {
  return grams === null ? NOT_KNOWN : writeMassG(grams);
}

/** US tables have the fibre inside carbohydrate, EU labels outside: both are said, so that neither is mistaken. */
function carbohydrateRow(food: Food, grams: number, style: LabelStyle): Row {
  const stored = amountOf(food, "carbohydrateG", grams);
  const fibre = amountOf(food, "fibreG", grams);
  const label = "carbohydrate";
  if (stored === null) return { label, figure: NOT_KNOWN };
  if (fibre === null) {
    return isEuLabel(food)
      ? { label, figure: `${writeMassG(stored)} without fibre`, note: "with fibre: not known" }
      : { label, figure: `${writeMassG(stored)} with fibre`, note: "without fibre: not known" };
  }
  const all = writeMassG(stored);
  const rest = writeMassG(Math.max(0, stored - fibre));
  if (all === rest) return { label, figure: all, note: "with fibre and without" };
  const withFibre = `${all} with fibre`;
  const without = `${rest} without fibre`;
  return style === "eu"
    ? { label, figure: without, note: withFibre }
    : { label, figure: withFibre, note: without };
}

/** Salt is sodium x 2.5 (Regulation (EU) No 1169/2011, Annex I). */
function saltRow(food: Food, grams: number): Row {
  const sodiumMg = amountOf(food, "sodiumMg", grams);
  if (sodiumMg === null) return { label: "salt", figure: NOT_KNOWN, note: "sodium not known" };
  const saltG = (sodiumMg * 2.5) / 1000;
  // To a hundredth below 1 g, as the EU rounds it.
  const shown = saltG < 0.995 ? `${roundTo(saltG, 0.01)} g` : writeMassG(saltG);
  return {
    label: "salt",
    figure: saltG > 0 && saltG < 0.005 ? "below 0.01 g" : shown,
    note: `sodium ${sodiumMg > 0 && sodiumMg < 0.5 ? "below 1" : Math.round(sodiumMg)} mg`,
  };
}

/** What a food is made of and may hide. Not known is never "free of". */
export function allergenRow({ allergens, mayHide }: Food): Row {
  const hides = mayHide.length === 0 ? "" : `may hide ${mayHide.join(", ")}; `;
  if (allergens === null) {
    return {
      label: "allergens",
      figure: NOT_KNOWN,
      note: `nobody can rely on it being free of anything; ${hides}read the pack`,
    };
  }
  return {
    label: "allergens",
    figure: allergens.length === 0 ? "none known" : allergens.join(", "),
    note: `${hides}the pack decides`,
  };
}
