import type { FoodBook } from "../food/book.ts";
import { findFood } from "../food/find.ts";
import type { Food } from "../food/types.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { type ReadAmount, readAmount } from "../quantity/read-amount.ts";
import type { Amount, SpoonSet } from "../quantity/types.ts";
import { massUnitG } from "../quantity/unit.ts";
import { foldWords } from "../words/fold.ts";
import { excerpt } from "../words/problems.ts";
import { cookedPerDryG } from "./dry-or-cooked.ts";
import { saidState, withoutState } from "./line-words.ts";
import type { ScaleProblem } from "./problems.ts";
import { amountLast } from "./read-ingredient.ts";
import { hasWords } from "./resolve-part.ts";
import type { LineChoice, Recipe } from "./types.ts";
import { gramsOf } from "./weigh-choice.ts";

/** All lines of a recipe that take one food, and how much they take together. */
export interface LineInHand {
  /** What `foodKeyOf` gives for every one of them. */
  readonly key: string;
  readonly food: string;
  readonly foodId: LineChoice["foodId"];
  /** Edible grams the recipe takes as written; null when one of its lines cannot be weighed. */
  readonly neededG: number | null;
}

/**
 * Finds the food of a recipe that a member has in hand ("thigh" is the chicken thigh): by its words
 * first, else by what the food table takes the words for. Lines of the same food count together.
 */
export function findLineInHand(
  choices: readonly LineChoice[],
  foods: FoodBook,
  text: string,
): Outcome<LineInHand, ScaleProblem> {
  const groups = groupByFood(choices);
  const exact = groups.filter(({ food }) => foldWords(food) === foldWords(text));
  const byWords = exact.length > 0 ? exact : groups.filter(({ food }) => hasWords(food, text));
  const matching = byWords.length > 0 ? byWords : byTable(groups, foods, text);
  const [only, ...others] = matching;
  if (only === undefined) {
    const names = groups.map(({ food }) => food);
    return fail({ code: "food not in recipe", text: excerpt(text), foods: names });
  }
  if (others.length === 0) return ok(only);
  const names = matching.map(({ food }) => food);
  return fail({ code: "several foods match", text: excerpt(text), foods: names });
}

/** The best entry of the table that the recipe has. */
function byTable(
  groups: readonly LineInHand[],
  foods: FoodBook,
  text: string,
): readonly LineInHand[] {
  for (const { food } of findFood(foods, text, 12)) {
    const group = groups.find(({ foodId }) => foodId === food.id);
    if (group !== undefined) return [group];
  }
  return [];
}

/** The same for all choices of one food: by its entry of the table, else by its name. */
export function foodKeyOf({ foodId, foodText }: LineChoice): string {
  return foodId ?? foldWords(foodText);
}

function groupByFood(choices: readonly LineChoice[]): readonly LineInHand[] {
  const groups = new Map<string, LineInHand>();
  for (const choice of choices) {
    const key = foodKeyOf(choice);
    const before = groups.get(key);
    const isWeighed = choice.grams !== null && (before === undefined || before.neededG !== null);
    groups.set(key, {
      key,
      food: before?.food ?? choice.foodText,
      foodId: choice.foodId,
      neededG: isWeighed ? (before?.neededG ?? 0) + (choice.grams ?? 0) : null,
    });
  }
  return [...groups.values()];
}

/** What a member has in hand, in grams. */
export interface InHand {
  readonly grams: number;
  readonly foodText: string;
}

/**
 * Reads "850 g of thigh", "2 lb chicken thighs", "thigh 850 g" or "3 eggs" for a recipe. A count or a
 * volume is weighed by the recipe's own food of that name.
 */
export function readInHand(
  text: string,
  recipe: Recipe,
  foods: FoodBook,
  spoons: SpoonSet = "us",
): Outcome<InHand, ScaleProblem> {
  const notUnderstood = fail({ code: "in hand not understood" as const, text: excerpt(text) });
  const read = amountAndFood(text.slice(0, 200));
  if (read === null) return notUnderstood;
  const foodText = read.rest.replace(/^of (?:the )?/iu, "").trim();
  if (foodText === "") return notUnderstood;
  const measure = read.stated ?? read.amount;
  const massG = massUnitG(measure.unit);
  const choices = recipe.components.flatMap(({ lines }) => lines.map(({ main }) => main));
  if (massG !== null) {
    const grams = massG * ((measure.value + (measure.to ?? measure.value)) / 2);
    return inLineState({ grams, foodText }, recipe, foods);
  }
  const line = findLineInHand(choices, foods, foodText);
  if (!line.ok) return line;
  const food = line.value.foodId === null ? null : foods.byId(line.value.foodId);
  const grams =
    byWrittenPieces(choices, line.value, measure) ??
    gramsOf({ ...read, foodText, preparation: "" }, food, spoons);
  return grams === null
    ? fail({ code: "food cannot be weighed", food: line.value.food })
    : ok({ grams, foodText });
}

/**
 * Cooked food in hand for a recipe that takes it dry, or the other way round, in grams of what the recipe
 * takes, by the published factor. Where none is published it is another food: not in the recipe.
 */
function inLineState(
  { grams, foodText }: InHand,
  recipe: Recipe,
  foods: FoodBook,
): Outcome<InHand, ScaleProblem> {
  const said = saidState(foodText);
  if (said === null) return ok({ grams, foodText });
  const choices = recipe.components.flatMap(({ lines }) =>
    lines.flatMap(({ main, swaps }) => [main, ...swaps]),
  );
  const asSaid = findLineInHand(choices, foods, foodText);
  const line = asSaid.ok ? asSaid : findLineInHand(choices, foods, withoutState(foodText));
  if (!line.ok) return ok({ grams, foodText });
  const { food, foodId } = line.value;
  const entry = foodId === null ? null : foods.byId(foodId);
  const taken = saidState(food) ?? stateOf(entry);
  if (taken === said || (taken === null && asSaid.ok)) return ok({ grams, foodText: food });
  // Without a state of its own and without the words in hand it may be anything: canned, say.
  const factor = entry === null || taken === null ? null : cookedPerDryG(entry);
  if (factor === null) {
    const names = [...new Set(choices.map((choice) => choice.foodText))];
    return fail({ code: "food not in recipe", text: excerpt(foodText), foods: names });
  }
  return ok({ grams: said === "cooked" ? grams / factor : grams * factor, foodText: food });
}

/** What a food of the table is, where it is one that is sold dry. */
function stateOf(food: Food | null): "cooked" | "dry" | null {
  if (food === null) return null;
  if (food.state === "raw") return "dry";
  return food.state === "cooked" ? "cooked" : null;
}

/** "3 tortillas", where the recipe itself says what one of its tortillas weighs. */
function byWrittenPieces(
  choices: readonly LineChoice[],
  line: LineInHand,
  measure: Amount,
): number | null {
  const written = choices.find(
    ({ amount, grams, foodId, foodText }) =>
      amount?.unit === "piece" &&
      grams !== null &&
      (foodId === null ? foodText === line.food : foodId === line.foodId),
  );
  if (measure.unit !== "piece" || !written?.amount || written.grams === null) return null;
  const { value, to } = written.amount;
  const count = (measure.value + (measure.to ?? measure.value)) / 2;
  return (count * written.grams) / ((value + (to ?? value)) / 2);
}

function amountAndFood(text: string): ReadAmount | null {
  const first = readAmount(text);
  if (first.ok) return first.value;
  const last = amountLast(text.trim());
  return last?.ok ? last.value : null;
}
