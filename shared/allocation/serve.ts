import type { Lot } from "../stock/types.ts";
import { shareOf } from "./halves.ts";
import type { Way } from "./kitchen.ts";
import type { MealSlot, Serving, ServingWhy } from "./types.ts";

/** The servings of one portion at a meal: one, or a half from each of two lots. */
export function servingsOf(
  slot: MealSlot,
  way: Way,
  why: ServingWhy = reasonOf(way),
): readonly Serving[] {
  const thawAt = way.kind === "as it stands" ? null : way.thawAt;
  return way.of.lots.map((lot) => ({
    slot,
    lotId: lot.id,
    portions: shareOf(way.of),
    from: way.kind === "as it stands" ? standsIn(lot) : "freezer",
    thawAt,
    why,
  }));
}

function standsIn(lot: Lot): "fridge" | "thawing" {
  return lot.place === "thawing" ? "thawing" : "fridge";
}

function reasonOf(way: Way): ServingWhy {
  if (way.kind !== "as it stands") return "oldest frozen";
  return way.of.batch.keeping.freezes === "well" ? "first expired" : "freezes badly";
}
