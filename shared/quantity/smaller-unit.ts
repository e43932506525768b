import { numberAtStart } from "../words/read-number.ts";
import type { Amount, Unit } from "./types.ts";
import { unitAtStart } from "./unit-words.ts";

const SMALLER: Readonly<Partial<Record<Unit, { readonly unit: Unit; readonly perLarge: number }>>> =
  {
    lb: { unit: "oz", perLarge: 16 },
    kg: { unit: "g", perLarge: 1000 },
    l: { unit: "ml", perLarge: 1000 },
    tbsp: { unit: "tsp", perLarge: 3 },
    // Of US and label cups; of a metric cup it would be 16 2/3, which moves a spoonful by a millilitre.
    cup: { unit: "tbsp", perLarge: 16 },
  };

/** "1 lb 8 oz" is 1.5 lb, "2 tbsp 2 tsp" and "2 tbsp plus 2 tsp" are 2 2/3 tbsp. */
export function withSmallerUnit(
  amount: Amount,
  rest: string,
): { readonly amount: Amount; readonly rest: string } {
  const smaller = SMALLER[amount.unit];
  if (smaller === undefined || amount.to !== null) return { amount, rest };
  const number = numberAtStart(rest.replace(/^ ?(?:,|and |plus |&|\+)/u, ""));
  if (!number.ok || number.value.to !== null) return { amount, rest };
  const unit = unitAtStart(number.value.rest);
  if (unit?.unit !== smaller.unit || number.value.value >= smaller.perLarge)
    return { amount, rest };
  const value = amount.value + number.value.value / smaller.perLarge;
  return { amount: { ...amount, value }, rest: unit.rest };
}
