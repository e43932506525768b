import { z } from "zod";
import { ALLERGENS, KEEPING_CLASSES } from "../../shared/food/types.ts";

/** The columns of the food table, in their order. */
export const COLUMNS = [
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
  "alcohol g",
  "density g/ml",
  "one",
  "one g",
  "measures",
  "refuse %",
  "allergens",
  "may hide",
  "keeping class",
  "note",
] as const;

const NUMBER = /^\d+(?:\.\d+)?$/u;

/** A figure as written, blank for missing; the cell must be digits, so "1,5" and "n/a" are faults. */
function figure(max: number) {
  return z
    .string()
    .refine((cell) => cell === "" || NUMBER.test(cell), "is not a number (blank means missing)")
    .transform((cell) => (cell === "" ? null : Number(cell)))
    .refine((value) => value === null || value <= max, `is above ${max}`);
}

function present(max: number) {
  return figure(max).pipe(z.number("must not be blank"));
}

/** Of a weight or a density: nothing weighs nothing. */
function positive(max: number) {
  return figure(max).refine((value) => value !== 0, "must be above 0");
}

/** Alcohol alone: blank is none, since every food of the source that has any is known. */
const alcohol = figure(100).transform((value) => value ?? 0);

function listOf(separator: string) {
  return z.string().transform((cell) =>
    cell
      .split(separator)
      .map((part) => part.trim())
      .filter((part) => part !== ""),
  );
}

const allergens = listOf(",").pipe(
  z.array(z.enum(ALLERGENS, "has a word that is no known allergen")),
);

const MEASURE = /^([^=]{2,30})=(\d+(?:\.\d+)?)$/u;

const measures = listOf("|")
  .pipe(
    z
      .array(z.string().regex(MEASURE, "must be written name=grams, split by |"))
      .max(6, "are more than 6"),
  )
  .transform((cells) =>
    cells.map((cell) => {
      const at = cell.lastIndexOf("=");
      return { name: cell.slice(0, at).trim(), grams: Number(cell.slice(at + 1)) };
    }),
  )
  .refine((list) => list.every(({ grams }) => grams > 0), "must weigh more than 0 g");

export const rowSchema = z.object({
  id: z.string().regex(/^[a-z0-9-]{2,60}$/u, "must be 2 to 60 of a-z, 0-9 and -"),
  name: z.string().min(2, "must not be blank").max(80, "is longer than 80 characters"),
  "other names": listOf("|"),
  number: z.string().regex(/^\d{5}$/u, "must be five digits"),
  state: z.enum(["raw", "cooked", "ready"], "must be raw, cooked or ready"),
  kcal: present(902),
  "protein g": figure(100),
  "fat g": figure(100),
  "saturated g": figure(100),
  "carbohydrate g": figure(100),
  "fibre g": figure(100),
  "sugars g": figure(100),
  "sodium mg": figure(40_000),
  "water g": figure(100),
  "alcohol g": alcohol,
  "density g/ml": positive(3),
  one: z.string().max(20, "is longer than 20 characters"),
  "one g": positive(5_000),
  measures,
  "refuse %": present(99),
  allergens,
  "may hide": allergens,
  "keeping class": z.enum(KEEPING_CLASSES, "is no known keeping class"),
  note: z.string(),
});
export type FoodRow = z.output<typeof rowSchema>;
