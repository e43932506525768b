import type { FoodBook } from "../food/book.ts";
import { ALLERGENS, type Allergen } from "../food/types.ts";
import type { LineChoice, Recipe } from "../recipe/types.ts";
import { namedIn } from "./named.ts";

type NamedFood = Pick<LineChoice, "foodText" | "foodId">;

/** What is read of a line; a scaled line is one. */
export interface ReadableLine {
  readonly choice: NamedFood;
  /** Swaps that were not taken. */
  readonly others: readonly NamedFood[];
}

export interface AllergenIn {
  readonly allergen: Allergen;
  /** As the coach wrote them, each once. */
  readonly foods: readonly string[];
}

export interface FoundAllergens {
  /** In the order of `ALLERGENS`. */
  readonly contains: readonly AllergenIn[];
  /** What made foods of this kind may hide besides: the pack decides. */
  readonly mayHide: readonly AllergenIn[];
  /** Foods of which nobody knows what is in them: never "free of". */
  readonly unknown: readonly string[];
}

/** Of the foods taken, and apart from them of the swaps that were not. */
export interface AllergensFound extends FoundAllergens {
  readonly inSwaps: FoundAllergens;
}

/**
 * Allergens of the lines, from the food table and from what a food's own name says (a "sesame bagel").
 * Wheat is a cereal containing gluten (Regulation (EU) 1169/2011, Annex II, 1), so it brings gluten in.
 * A food that is not in the book, or whose pack nobody has read, is unknown.
 */
export function allergensIn(lines: readonly ReadableLine[], foods: FoodBook): AllergensFound {
  const taken = lines.map(({ choice }) => choice);
  const others = lines.flatMap((line) => line.others);
  return { ...foundIn(taken, foods), inSwaps: foundIn(others, foods) };
}

/** The same for a recipe as it is written, every optional part in it. */
export function allergensInRecipe(recipe: Recipe, foods: FoodBook): AllergensFound {
  const lines = recipe.components.flatMap((part) => part.lines);
  return allergensIn(
    lines.map(({ main, swaps }) => ({ choice: main, others: swaps })),
    foods,
  );
}

interface OneFood {
  readonly name: string;
  readonly contains: ReadonlySet<Allergen>;
  readonly mayHide: ReadonlySet<Allergen>;
  readonly isKnown: boolean;
}

function foundIn(choices: readonly NamedFood[], foods: FoodBook): FoundAllergens {
  const all = choices.map((choice) => readFood(choice, foods));
  return {
    contains: byAllergen(all, ({ contains }) => contains),
    mayHide: byAllergen(all, ({ mayHide }) => mayHide),
    unknown: [...new Set(all.filter(({ isKnown }) => !isKnown).map(({ name }) => name))],
  };
}

function readFood({ foodText, foodId }: NamedFood, foods: FoodBook): OneFood {
  const food = foodId === null ? null : foods.byId(foodId);
  const known = food?.allergens ?? null;
  const contains = withGluten([...(known ?? []), ...namedIn(foodText)]);
  const mayHide = [...withGluten(food?.mayHide ?? [])].filter((one) => !contains.has(one));
  return { name: foodText, contains, mayHide: new Set(mayHide), isKnown: known !== null };
}

function withGluten(allergens: readonly Allergen[]): ReadonlySet<Allergen> {
  return new Set(allergens.includes("wheat") ? [...allergens, "gluten"] : allergens);
}

function byAllergen(
  all: readonly OneFood[],
  of: (food: OneFood) => ReadonlySet<Allergen>,
): readonly AllergenIn[] {
  return ALLERGENS.flatMap((allergen) => {
    const names = all.filter((food) => of(food).has(allergen)).map(({ name }) => name);
    return names.length === 0 ? [] : [{ allergen, foods: [...new Set(names)] }];
  });
}
