import type { Food } from "../../shared/food/types.ts";
import { foodId } from "../../shared/ids.ts";
import { faultsOf } from "./faults.ts";
import { COLUMNS, type FoodRow, rowSchema } from "./row.ts";

const SOURCE_TABLE = "USDA SR28";

/** Every fault of a food table, as one sentence each with its line number. */
export class FoodTableFaults extends Error {
  readonly faults: readonly string[];
  constructor(faults: readonly string[]) {
    super(`The food table has ${faults.length} faults:\n${faults.join("\n")}`);
    this.name = "FoodTableFaults";
    this.faults = faults;
  }
}

/**
 * Reads a food table in the format that `prisma/seed/foods.txt` describes in its first lines. Throws
 * `FoodTableFaults` with all faults at once.
 */
export function parseFoodTable(text: string): readonly Food[] {
  const faults: string[] = [];
  const foods: Food[] = [];
  const seen = new Map<string, number>();
  const lines = text.split(/\r?\n/u).map((line, index) => ({ line, number: index + 1 }));
  const [header, ...rows] = lines.filter(({ line }) => line.trim() !== "" && !line.startsWith("#"));
  if (header === undefined || cellsOf(header.line).join() !== COLUMNS.join()) {
    throw new FoodTableFaults([`The first line must name the columns: ${COLUMNS.join("; ")}.`]);
  }
  for (const { line, number } of rows) {
    const cells = cellsOf(line);
    if (cells.length > COLUMNS.length) {
      faults.push(
        `Line ${number}: has ${cells.length} cells, and there are ${COLUMNS.length} columns.`,
      );
      continue;
    }
    const parsed = rowSchema.safeParse(namedCells(cells));
    if (!parsed.success) {
      for (const issue of parsed.error.issues) {
        faults.push(`Line ${number}: ${String(issue.path[0] ?? "line")} ${issue.message}.`);
      }
      continue;
    }
    faults.push(...faultsOf(parsed.data, seen, number).map((fault) => `Line ${number}: ${fault}.`));
    foods.push(toFood(parsed.data));
  }
  if (faults.length > 0) throw new FoodTableFaults(faults);
  return foods;
}

function cellsOf(line: string): readonly string[] {
  return line.split(";").map((cell) => cell.trim());
}

/** A row may leave out trailing blanks. */
function namedCells(cells: readonly string[]): Readonly<Record<string, string>> {
  return Object.fromEntries(COLUMNS.map((column, index) => [column, cells[index] ?? ""]));
}

function toFood(row: FoodRow): Food {
  return {
    id: foodId(row.id),
    name: row.name,
    otherNames: row["other names"],
    source: { table: SOURCE_TABLE, number: row.number },
    state: row.state,
    per100g: {
      energyKcal: row.kcal,
      proteinG: row["protein g"],
      fatG: row["fat g"],
      saturatedFatG: row["saturated g"],
      carbohydrateG: row["carbohydrate g"],
      fibreG: row["fibre g"],
      sugarsG: row["sugars g"],
      sodiumMg: row["sodium mg"],
    },
    waterG: row["water g"],
    alcoholG: row["alcohol g"],
    densityGPerMl: row["density g/ml"],
    one: row["one g"] === null ? null : { word: row.one, grams: row["one g"] },
    measures: row.measures,
    refusePct: row["refuse %"],
    allergens: row.allergens,
    mayHide: row["may hide"],
    keepingClass: row["keeping class"],
  };
}
