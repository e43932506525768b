import { z } from "zod";
import { ALLERGENS, type Food, KEEPING_CLASSES } from "../../shared/food/types.ts";
import { foodId } from "../../shared/ids.ts";
import { fold } from "../../shared/words/fold.ts";

const COLUMNS = [
  "id",
  "name",
  "other names",
  "number",
  "state",
  "kcal",
  "protein g",
  "fat g",
  "saturated g",
  "carbohydrate g",
  "fibre g",
  "sugars g",
  "sodium mg",
  "water g",
  "density g/ml",
  "one",
  "one g",
  "refuse %",
  "allergens",
  "keeping class",
  "note",
] as const;
type Column = (typeof COLUMNS)[number];

/** Protein, fat, carbohydrate and water of 100 g: the source rounds each, so they may pass 100 by this. */
const ROUNDING_G = 0.6;

const SOURCE_TABLE = "USDA SR28";

/** A figure as written, blank for missing; the cell must be digits, so "1,5" and "n/a" are faults. */
function figure(max: number) {
  return z
    .string()
    .regex(/^(?:\d+(?:\.\d+)?)?$/u, "is not a number (blank means missing)")
    .transform((cell) => (cell === "" ? null : Number(cell)))
    .refine((value) => value === null || value <= max, `is above ${max}`);
}

function present(max: number) {
  return figure(max).pipe(z.number("must not be blank"));
}

function listOf(separator: string) {
  return z.string().transform((cell) =>
    cell
      .split(separator)
      .map((part) => part.trim())
      .filter((part) => part !== ""),
  );
}

const rowSchema = z.object({
  id: z.string().regex(/^[a-z0-9-]{2,60}$/u, "must be 2 to 60 of a-z, 0-9 and -"),
  name: z.string().min(2, "must not be blank").max(80, "is longer than 80 characters"),
  "other names": listOf("|"),
  number: z.string().regex(/^\d{5}$/u, "must be five digits"),
  state: z.enum(["raw", "cooked", "ready"], "must be raw, cooked or ready"),
  kcal: figure(902),
  "protein g": figure(100),
  "fat g": figure(100),
  "saturated g": figure(100),
  "carbohydrate g": figure(100),
  "fibre g": figure(100),
  "sugars g": figure(100),
  "sodium mg": figure(40_000),
  "water g": figure(100),
  "density g/ml": figure(3),
  one: z.string().max(20, "is longer than 20 characters"),
  "one g": figure(5_000),
  "refuse %": present(99),
  allergens: listOf(",").pipe(z.array(z.enum(ALLERGENS, "has a word that is no known allergen"))),
  "keeping class": z.enum(KEEPING_CLASSES, "is no known keeping class"),
  note: z.string(),
});
type FoodRow = z.output<typeof rowSchema>;

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
    const parsed = rowSchema.safeParse(namedCells(line));
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

function namedCells(line: string): Readonly<Partial<Record<Column, string>>> {
  const cells = cellsOf(line);
  // A row may leave out trailing blanks, but a cell too many is a slip: give zod something to refuse.
  if (cells.length > COLUMNS.length) return {};
  return Object.fromEntries(COLUMNS.map((column, index) => [column, cells[index] ?? ""]));
}

/** What no single cell shows. Notes the row's id and names in `seen`. */
function faultsOf(row: FoodRow, seen: Map<string, number>, number: number): readonly string[] {
  const faults: string[] = [];
  const sumG = [row["protein g"], row["fat g"], row["carbohydrate g"], row["water g"]].reduce(
    (sum: number, part) => sum + (part ?? 0),
    0,
  );
  if (sumG > 100 + ROUNDING_G) {
    faults.push(`protein, fat, carbohydrate and water add up to ${sumG.toFixed(1)} g in 100 g`);
  }
  if ((row.one === "") !== (row["one g"] === null)) {
    faults.push(`one and one g belong together: fill in both or neither`);
  }
  const keys = [`id ${row.id}`, ...[row.name, ...row["other names"]].map(nameOnly)];
  for (const key of keys) {
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
    alcoholG: 0,
    densityGPerMl: row["density g/ml"],
    one: row["one g"] === null ? null : { word: row.one, grams: row["one g"] },
    measures: [],
    refusePct: row["refuse %"],
    allergens: row.allergens,
    mayHide: [],
    keepingClass: row["keeping class"],
  };
}
