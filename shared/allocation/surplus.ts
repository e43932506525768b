import type { Lot } from "../stock/types.ts";
import type { Fresh } from "./fresh.ts";
import { shareOf } from "./halves.ts";
import type { Surplus, SurplusWhy } from "./types.ts";

/** What is to be done with portions that no meal takes before their date. */
export function surplusOf(one: Fresh, portions: number): readonly Surplus[] {
  if (portions <= 0) return [];
  if (!one.mustEat) return toFreeze(one, portions, "no meal before its date");
  const why =
    one.batch.keeping.freezes === "well"
      ? "no meal before its date"
      : "freezes badly and no meal before its date";
  return each(one, portions, "spare", why);
}

/** Portions to be frozen now, with the reason. */
export function toFreeze(one: Fresh, portions: number, why: SurplusWhy): readonly Surplus[] {
  return portions <= 0 ? [] : each(one, portions, "freeze", why);
}

/** A half that no other half makes whole: eaten beside something else, or given. */
export function halfOf(lot: Lot): Surplus {
  return { lotId: lot.id, portions: 0.5, advice: "spare", why: "half a portion" };
}

function each(
  one: Fresh,
  portions: number,
  advice: Surplus["advice"],
  why: SurplusWhy,
): readonly Surplus[] {
  return one.lots.map((lot) => ({ lotId: lot.id, portions: portions * shareOf(one), advice, why }));
}

/** One entry for each lot and advice, with the reason of the first: one task, told once. */
export function merged(list: readonly Surplus[]): readonly Surplus[] {
  const found = new Map<string, Surplus>();
  for (const one of list) {
    const key = `${one.advice}/${one.lotId}`;
    const before = found.get(key);
    found.set(key, { ...one, ...before, portions: one.portions + (before?.portions ?? 0) });
  }
  return [...found.values()];
}
