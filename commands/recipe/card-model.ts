import { type AllergensFound, allergensIn } from "../../shared/allergen/find.ts";
import type { FoodBook } from "../../shared/food/book.ts";
import type { LabelStyle } from "../../shared/label/types.ts";
import type { Profile } from "../../shared/people/types.ts";
import type { ScaledRecipe } from "../../shared/recipe/scale.ts";
import type { TargetFigures } from "../../shared/target/types.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import type { Button } from "../kit/reply.ts";
import { allergyAlerts, tableAlerts } from "./allergen-parts.ts";
import { type CardRequest, requestPress } from "./card-request.ts";

/** A scaled recipe with what it was asked as. */
export interface Card {
  readonly published: PublishedRecipe;
  readonly request: CardRequest;
  readonly scaled: ScaledRecipe;
  readonly foods: FoodBook;
  readonly reader: CardReader;
}

/** For whom a card is. What they avoid is theirs alone: a card with it is never shown to others. */
export interface CardReader {
  readonly profile: Profile;
  readonly style: LabelStyle;
  /** Today's figures; null when there are none. */
  readonly target: TargetFigures | null;
  readonly zone: string;
  /** What changed since they cooked it, in words; empty when nothing did, or they never have. */
  readonly changes: readonly string[];
}

/** What its reader avoids and the card has, and what is not for who eats with them. */
export function alertsOf({ scaled, foods, published, reader }: Card): {
  readonly alerts: readonly string[];
  readonly allergens: AllergensFound;
} {
  const lines = scaled.components.flatMap((part) => part.lines);
  const allergens = allergensIn(lines, foods);
  const { profile } = reader;
  const table = tableAlerts(profile, { recipe: published.recipe, lines, foods });
  return { alerts: [...allergyAlerts(profile, allergens), ...table], allergens };
}

/** The way back to the card; empty when its request does not fit into a button. */
export function backButton({ published, request }: Card): readonly Button[] {
  const back = requestPress("show", published.id, published.recipe, request);
  return back === null ? [] : [{ id: back, label: "Back to the card", weight: "plain" }];
}
