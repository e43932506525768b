import { fold } from "../../shared/words/fold.ts";
import type { FoodRow } from "./row.ts";

/** Protein, fat, carbohydrate, water and alcohol of 100 g: the source rounds each, so they may pass 100 by this. */
const ROUNDING_G = 0.6;

/** One rounding step of the coarser of two figures that must not pass each other, grams. */
const STEP_G = 0.05;

/** Measures that are a size of the whole food: they only mean something beside the weight of one. */
const SIZES: readonly string[] = ["large", "medium", "small"];

/** What no single cell shows. Notes the row's id and names in `seen`. */
export function faultsOf(row: FoodRow, seen: Map<string, number>, number: number): string[] {
  return [
    ...massFaults(row),
    ...measureFaults(row),
    ...allergenFaults(row),
    ...nameFaults(row, seen, number),
  ];
}

function massFaults(row: FoodRow): string[] {
  const faults: string[] = [];
  const parts = [
    row["protein g"],
    row["fat g"],
    row["carbohydrate g"],
    row["water g"],
    row["alcohol g"],
  ];
  const sumG = parts.reduce((sum: number, part) => sum + (part ?? 0), 0);
  if (sumG > 100 + ROUNDING_G) {
    faults.push(
      `protein, fat, carbohydrate, water and alcohol add up to ${sumG.toFixed(1)} g in 100 g`,
    );
  }
  if (isAbove(row["saturated g"], row["fat g"])) faults.push("saturated g is above fat g");
  // Not sugars: they are analysed and carbohydrate is not, so the source has milk with more sugars.
  if (isAbove(row["fibre g"], row["carbohydrate g"])) {
    faults.push("fibre g is above carbohydrate g");
  }
  return faults;
}

function isAbove(part: number | null, whole: number | null): boolean {
  return part !== null && whole !== null && part > whole + STEP_G;
}

function measureFaults(row: FoodRow): string[] {
  const faults: string[] = [];
  if ((row.one === "") !== (row["one g"] === null)) {
    faults.push("one and one g belong together: fill in both or neither");
  }
  const names = row.measures.map((one) => one.name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined) faults.push(`measures have "${twice}" twice`);
  const sizes = SIZES.flatMap((size) => row.measures.find((one) => one.name === size) ?? []);
  if (sizes.some((size, index) => size.grams >= (sizes[index - 1]?.grams ?? Infinity))) {
    faults.push("large, medium and small do not go down");
  }
  return faults;
}

function allergenFaults(row: FoodRow): string[] {
  const faults: string[] = [];
  for (const list of [row.allergens, row["may hide"]]) {
    if (new Set(list).size !== list.length) faults.push("an allergen is named twice");
  }
  const both = row["may hide"].find((one) => row.allergens.includes(one));
  if (both !== undefined) faults.push(`${both} is in allergens, so it cannot hide as well`);
  if (row.allergens.includes("wheat") && !row.allergens.includes("gluten")) {
    faults.push("wheat is a cereal with gluten: name both");
  }
  return faults;
}

function nameFaults(row: FoodRow, seen: Map<string, number>, number: number): string[] {
  const faults: string[] = [];
  for (const key of [`id ${row.id}`, ...[row.name, ...row["other names"]].map(nameOnly)]) {
    const earlier = seen.get(key);
    if (earlier !== undefined) faults.push(`"${key}" stands already on line ${earlier}`);
    else seen.set(key, number);
  }
  return faults;
}

function nameOnly(name: string): string {
  return fold(name)
    .replace(/[^a-z0-9%]+/gu, " ")
    .trim();
}
