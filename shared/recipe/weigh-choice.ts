import type { FoodBook } from "../food/book.ts";
import { findFood, isWholeName } from "../food/find.ts";
import type { Food } from "../food/types.ts";
import { edibleG, sizedG, weigh } from "../food/weigh.ts";
import type { SpoonSet } from "../quantity/types.ts";
import { massUnitG } from "../quantity/unit.ts";
import { isContainer, isCounted } from "../quantity/unit-words.ts";
import { fold, foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";
import { tableGPerG } from "./dry-or-cooked.ts";
import { isAsBought, saidState, sizeIn, withoutState } from "./line-words.ts";
import type { ReadChoice } from "./read-ingredient.ts";
import type { LineChoice, TakenFoods } from "./types.ts";
import { shareEaten } from "./uptake.ts";

/** What lines are weighed with. */
export interface WeighMeans {
  readonly foods: FoodBook;
  readonly spoons: SpoonSet;
  /** It goes before the finder for exactly that name. */
  readonly takenFor: TakenFoods;
}

/**
 * Takes a choice for an entry of the food table and weighs it: a measure stated in the line first,
 * else the table's density or weight of one. Weights as bought lose the food's inedible share. Food
 * written cooked where the table has it dry (or the other way round) is taken for that entry, with the
 * published factor; without a factor it counts as not found. What cannot be weighed has null grams.
 */
export function weighChoice(choice: ReadChoice, means: WeighMeans): LineChoice {
  const { spoons } = means;
  const { found, foodText, preparation } = lookUp(choice, means);
  const food = found?.food ?? null;
  const grams = gramsOf(choice, food, spoons);
  return {
    amount: choice.amount,
    foodText,
    foodId: food?.id ?? null,
    preparation,
    grams,
    uptake: shareEaten(preparation, grams, food, spoons),
    tableGPerG: found?.tableGPerG ?? 1,
  };
}

/** An entry of the table, and how many grams of it one gram of the line stands for. */
interface Found {
  readonly food: Food;
  readonly tableGPerG: number;
}

interface LookUp {
  readonly found: Found | null;
  readonly foodText: string;
  readonly preparation: string;
}

/** What stands after the comma and decides which entry of the table is meant: its fat, its skin. */
const WHICH_FOOD =
  /^(?:about |max\.? )?(?:\d{1,2}(?:[.,]\d)? ?(?:%|per ?cent) ?(?:fat|lean)|(?:extra )?lean|(?:low|reduced|full|half)[- ]fat|fat[- ]free|skin(?:less|[- ]on)|with skin|(?:skin[- ]on|bone[- ]in)(?: and (?:skin[- ]on|bone[- ]in))?|unsalted|no added salt)$/iu;
/** A state that makes another food of it: "1 tsp rosemary, dried". */
const WHICH_STATE = /^(?:dried|fresh|frozen|canned|tinned)$/iu;
/** Where the table has none that was, the plain one is no stand-in. */
const ANOTHER_FOOD = /^(?:dried|canned|tinned)$/iu;

function lookUp(choice: ReadChoice, means: WeighMeans): LookUp {
  const { foods } = means;
  const { foodText, preparation } = choice;
  const chosen = chosenFor(foodText, means);
  if (chosen !== null) return { found: chosen, foodText, preparation };
  // "beef mince, 5 % fat": which food it is stands after the comma.
  const which = preparation
    .split(", ")
    .filter((piece, at) => WHICH_FOOD.test(piece) || (at === 0 && WHICH_STATE.test(piece)));
  const told = which.length === 0 ? null : best(foods, [foodText, ...which].join(" "));
  const isOther = told === null && which.some((piece) => ANOTHER_FOOD.test(piece));
  const found = isOther ? null : (told ?? bestOrBarer(foods, foodText));
  const cooked = asCooked(foods, choice, found);
  if (cooked !== null) return { found: cooked, foodText, preparation };
  if (found !== null || preparation === "") return { found, foodText, preparation };
  // "boneless, skinless chicken thighs": the first comma did not end the food.
  const [next, ...rest] = preparation.split(", ");
  const longer = `${foodText}, ${next ?? ""}`;
  const foundLonger = chosenFor(longer, means) ?? best(foods, longer.replace(",", ""));
  return foundLonger === null
    ? { found, foodText, preparation }
    : { found: foundLonger, foodText: longer, preparation: rest.join(", ") };
}

/** What the coach said that a name means; null when nothing, or a food that cannot stand for its state. */
function chosenFor(name: string, { foods, takenFor }: WeighMeans): Found | null {
  const key = fold(name);
  const id = Object.hasOwn(takenFor, key) ? takenFor[key] : undefined;
  const food = id === undefined ? null : foods.byId(id);
  return food === null ? null : inState(food, saidState(name));
}

/** What is done to it first: "cooked", "cooked and shredded". */
const SAID_COOKED = /^(?:(?:pre|ready)?[- ]?cooked|leftover)(?: and \p{L}{1,20})?$/iu;

/**
 * "300 g beetroot, cooked" is weighed cooked where the table has it so. Of rice and the like it is not
 * certain: they count as dry, and a remark says so.
 */
function asCooked(foods: FoodBook, choice: ReadChoice, found: Found | null): Found | null {
  const [first = ""] = choice.preparation.split(", ");
  if (!SAID_COOKED.test(first) || found === null) return null;
  if (found.food.state !== "raw" || /\b(?:dry|dried)\b/u.test(found.food.name)) return null;
  const cooked = best(foods, `cooked ${choice.foodText}`);
  return cooked?.food.state === "cooked" ? cooked : null;
}

/** Words of heat and shape that the finder may take for part of the name. A stock cube is no stock. */
const NOT_THE_FOOD =
  /^(?:hot|boiling|cold|iced|warm|tepid|lukewarm|simmering|good|best|quality|balls?|blocks?|heads?|bunch(?:es)?|packs?|packets?|tubs?|jars?|bags?|punnets?|pieces?)$/iu;

/** The food by its whole name, else without words that tell how warm it is or what it is counted in. */
function bestOrBarer(foods: FoodBook, text: string): Found | null {
  const found = best(foods, text);
  if (found !== null) return found;
  const words = text.split(" ");
  const barer = words.filter((word) => !NOT_THE_FOOD.test(word));
  return barer.length === 0 || barer.length === words.length ? null : best(foods, barer.join(" "));
}

function best(foods: FoodBook, text: string): Found | null {
  const name = withoutCountWord(foods, text);
  const said = saidState(name);
  let found: Found | null = null;
  for (const tried of said === null ? [name] : [name, ...namesInState(name, said)]) {
    const one = inState(findFood(foods, tried, 1)[0]?.food, said);
    if (said === null || one?.tableGPerG === 1) return one;
    // Of two states of a food the one that is written goes first; by a factor otherwise, never as it is.
    found ??= one;
  }
  return found;
}

/** Other ways to say it: "microwave rice" is cooked rice, and "cooked red lentils" are dry ones cooked. */
function namesInState(name: string, said: "cooked" | "dry"): readonly string[] {
  const plain = withoutState(name);
  return said === "cooked" ? [`cooked ${plain}`, plain] : [`cooked ${plain}`];
}

/** "Cloves of garlic" is garlic, but "ears of corn" are no sweetcorn, and a cube of stock is no stock. */
function withoutCountWord(foods: FoodBook, text: string): string {
  const [first = "", ...words] = text.split(" ");
  if (words.length === 0 || !isCountOrBox(first) || isWholeName(foods, text)) return text;
  const rest = words.join(" ").replace(/^of /iu, "");
  const isStockCube = /^cubes?$/iu.test(first) && /\b(?:stock|broth|bouillon)$/iu.test(rest);
  return isStockCube ? `${rest} cube` : rest;
}

function inState(food: Food | undefined, said: "cooked" | "dry" | null): Found | null {
  const each = food === undefined ? null : tableGPerG(food, said);
  return food === undefined || each === null ? null : { food, tableGPerG: each };
}

/** A can tells which food it is, so it stays. */
function isCountOrBox(word: string): boolean {
  const one = singular(foldWords(word));
  return isCounted(one) || (isContainer(one) && one !== "can" && one !== "tin");
}

/** Edible grams of a choice of a food: exact, a measure stated in the line first; null when unknown. */
export function gramsOf(choice: ReadChoice, food: Food | null, spoons: SpoonSet): number | null {
  const measure = choice.stated ?? choice.amount;
  if (measure === null) return null;
  if (measure.unit === "piece" && !countsWhole(choice.foodText, food)) return null;
  const grams = weigh(measure, food, spoons, sizeIn(choice.foodText));
  // Published weights of one and of a cup are edible already.
  const isBought =
    massUnitG(measure.unit) !== null && isAsBought(`${choice.foodText}, ${choice.preparation}`);
  return grams === null || food === null || !isBought ? grams : edibleG(food, grams);
}

/**
 * Whether the thing counted is the one that the table has the weight of: three cloves of garlic where
 * it weighs a clove, two onions where it weighs an onion; not a head of garlic, a can of tomatoes.
 */
function countsWhole(foodText: string, food: Food | null): boolean {
  if (food === null) return false;
  const size = sizeIn(foodText);
  const words = foldWords(foodText).split(" ").map(singular);
  const counts = words.filter((word) => isCounted(word) || isContainer(word));
  if (food.one === null) return size !== null && sizedG(food, size) !== null && counts.length === 0;
  const one = singular(foldWords(food.one.word));
  const others = counts.filter((word) => word !== one);
  // A thigh fillet is a thigh.
  if (words.includes(one)) return others.every((word) => word === "fillet");
  return others.length === 0 && !isCounted(one);
}
