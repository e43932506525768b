import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import type { KeepingWord } from "../../commands/kit/keeping-words.ts";
import { ALLERGENS, type Food, KEEPING_CLASSES } from "../../shared/food/types.ts";
import { foodId } from "../../shared/ids.ts";
import type { KeepingTime } from "../../shared/keeping/types.ts";
import type { NutrientSums } from "../../shared/nutrition/types.ts";
import { VULNERABLE } from "../../shared/people/types.ts";
import { UNITS } from "../../shared/quantity/types.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { REMINDER_KINDS, REMINDER_STATES } from "../../shared/reminder/types.ts";
import { MOVEMENT_KINDS, WASTE_REASONS } from "../../shared/stock/types.ts";
import type { TargetFigures } from "../../shared/target/types.ts";

// What a column of text may hold. The file can be edited and can be older than the code, so it is an
// outside border: everything is parsed here on the way out. The same schemas run on the way in, because
// a document that cannot be read back would lock its owner out. That they say neither more nor less
// than the types of `shared/` is checked by tests/src/store/documents.test.ts.

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

const amount = z
  .object({ value: z.number(), to: z.number().nullable(), unit: z.enum(UNITS) })
  .readonly();

const lineChoice = z
  .object({
    amount: amount.nullable(),
    foodText: z.string(),
    foodId: z.string().transform(foodId).nullable(),
    preparation: z.string(),
    grams: z.number().nullable(),
    // Recipes published before these were kept have all of every line eaten, and nothing converted.
    uptake: z.number().min(0).max(1).default(1),
    tableGPerG: z.number().positive().default(1),
  })
  .readonly();

const line = z
  .object({
    key: z.string(),
    text: z.string(),
    main: lineChoice,
    swaps: list(lineChoice),
    optional: z.boolean(),
  })
  .readonly();

const statedKeeping = z
  .object({
    fridgeDays: z.number().nullable(),
    freezerMonths: z.number().nullable(),
    freezes: z.enum(["well", "poorly", "no"]).nullable(),
    reason: z.string(),
  })
  .readonly();

const component = z
  .object({
    name: z.string(),
    optional: z.boolean(),
    lines: list(line),
    keeping: statedKeeping,
    // Not there in recipes published before it was kept: all of a component is used.
    makes: z
      .object({ madeG: z.number().positive(), usedG: z.number().positive() })
      .readonly()
      .nullable()
      .optional(),
  })
  .readonly();

const step = z
  .object({ text: z.string(), temperaturesC: list(z.number()), minutes: list(z.number()) })
  .readonly();

export const recipeDocument = z
  .object({
    title: z.string(),
    portions: z.number(),
    portionWord: z.string(),
    yieldG: z.number().nullable(),
    tags: list(z.string()),
    components: list(component),
    steps: list(step),
    keeping: statedKeeping,
    reheating: list(z.string()),
    notes: list(z.string()),
  })
  .readonly() satisfies z.ZodType<Recipe>;

const fridgeTime = z
  .object({ fridgeDays: z.number(), limitedBy: z.string(), remarks: list(z.string()) })
  .readonly();

export const keepingDocument = z
  .object({
    fridgeDays: z.number(),
    freezerMonths: z.number().nullable(),
    freezes: z.enum(["well", "poorly", "no"]),
    reason: z.string(),
    limitedBy: z.string(),
    remarks: list(z.string()),
    // Not there in batches logged before a coach could confirm a longer time.
    longer: z.object({ chart: fridgeTime, coach: fridgeTime }).readonly().nullable().default(null),
  })
  .readonly() satisfies z.ZodType<KeepingTime>;

export const confirmedDocument = list(
  z
    .object({
      part: z.string(),
      coachDays: z.number(),
      chartDays: z.number(),
      source: z.string(),
    })
    .readonly(),
) satisfies z.ZodType<KeepingWord["parts"]>;

export const keepingWordKind = z.enum(["given", "taken back"]);

const nutrientSum = z.object({ amount: z.number(), atLeast: z.boolean() }).readonly();

export const sumsDocument = z
  .object({
    energyKcal: nutrientSum,
    proteinG: nutrientSum,
    fatG: nutrientSum,
    saturatedFatG: nutrientSum,
    carbohydrateG: nutrientSum,
    fibreG: nutrientSum,
    sugarsG: nutrientSum,
    sodiumMg: nutrientSum,
  })
  .readonly() satisfies z.ZodType<NutrientSums>;

const nutrient = z.number().nullable();

export const foodDocument = z
  .object({
    id: z.string().transform(foodId),
    name: z.string(),
    otherNames: list(z.string()),
    source: z.object({ table: z.string(), number: z.string() }).readonly(),
    state: z.enum(["raw", "cooked", "ready"]),
    per100g: z
      .object({
        energyKcal: nutrient,
        proteinG: nutrient,
        fatG: nutrient,
        saturatedFatG: nutrient,
        carbohydrateG: nutrient,
        fibreG: nutrient,
        sugarsG: nutrient,
        sodiumMg: nutrient,
      })
      .readonly(),
    waterG: nutrient,
    alcoholG: z.number(),
    densityGPerMl: nutrient,
    one: z.object({ word: z.string(), grams: z.number() }).readonly().nullable(),
    measures: list(z.object({ name: z.string(), grams: z.number() }).readonly()),
    refusePct: z.number(),
    allergens: list(z.enum(ALLERGENS)).nullable(),
    mayHide: list(z.enum(ALLERGENS)),
    keepingClass: z.enum(KEEPING_CLASSES),
  })
  .readonly() satisfies z.ZodType<Food>;

export const figuresDocument = z
  .object({
    energyKcal: z.number().optional(),
    proteinG: z.number().optional(),
    fatG: z.number().optional(),
    carbohydrateG: z.number().optional(),
    fibreG: z.number().optional(),
  })
  // Without this an optional key may hold undefined, which the figures of a target may not.
  .transform(
    (figures): TargetFigures =>
      Object.fromEntries(Object.entries(figures).filter(([, value]) => value !== undefined)),
  )
  .readonly();

export const takenForDocument = z.record(z.string(), z.string().transform(foodId)).readonly();

export const allergensDocument = list(z.enum(ALLERGENS));
export const vulnerableDocument = list(z.enum(VULNERABLE));
export const labelStyleWord = z.enum(["us", "eu"]);

export const tagsDocument = list(z.string());
export const weekdaysDocument = list(z.int().min(1).max(7));

export const placeWord = z.enum(["fridge", "freezer", "thawing"]);
export const movementWord = z.enum(MOVEMENT_KINDS);
export const wasteReasonWord = z.enum(WASTE_REASONS);
export const undoneWord = movementWord.exclude(["undone"]);
export const mealExceptionWord = z.enum(["skip", "out", "pin"]);
export const deliverToWord = z.enum(["direct message", "channel"]);
export const reminderKindWord = z.enum(REMINDER_KINDS);
export const reminderStateWord = z.enum(REMINDER_STATES);

/** Parses a text column that holds JSON; throws when it is not what the schema says. */
export function fromText<T>(schema: z.ZodType<T>, column: string): T {
  return schema.parse(JSON.parse(column));
}

/** The text of a document; throws when it could not be read back (a NaN, say). */
export function toText<T>(schema: z.ZodType<T>, value: T): string {
  return JSON.stringify(schema.parse(value));
}

/** An instant as a column holds it: whole milliseconds. */
export function toColumn(instant: Temporal.Instant): Date {
  return new Date(instant.epochMilliseconds);
}

export function toColumnOrNull(instant: Temporal.Instant | null): Date | null {
  return instant === null ? null : toColumn(instant);
}

export function toInstant(column: Date): Temporal.Instant {
  return Temporal.Instant.fromEpochMilliseconds(column.getTime());
}

export function toInstantOrNull(column: Date | null): Temporal.Instant | null {
  return column === null ? null : toInstant(column);
}

/** "HH:MM": times of day are kept to the minute. */
export function timeText(time: Temporal.PlainTime): string {
  return time.toString({ smallestUnit: "minute" });
}
