import { Temporal } from "temporal-polyfill";
import type { MealException, MealRule } from "../../shared/allocation/types.ts";
import { batchId, slotRuleId } from "../../shared/ids.ts";
import { fromText, mealExceptionWord, weekdaysDocument } from "./documents.ts";
import type { Prisma } from "./generated/client.ts";

export function toMealException(row: Prisma.MealExceptionGetPayload<object>): MealException {
  const about = { mealId: slotRuleId(row.mealId), date: Temporal.PlainDate.from(row.date) };
  const kind = mealExceptionWord.parse(row.kind);
  if (kind !== "pin") return { ...about, kind };
  if (row.batchId === null) throw new Error(`a pin without its batch: ${row.id}`);
  return { ...about, kind, batchId: batchId(row.batchId) };
}

export function toMealRule(row: Prisma.MealRuleGetPayload<object>): MealRule {
  return {
    id: slotRuleId(row.id),
    name: row.name,
    weekdays: fromText(weekdaysDocument, row.weekdays),
    time: Temporal.PlainTime.from(row.time),
    portions: row.portions,
  };
}
