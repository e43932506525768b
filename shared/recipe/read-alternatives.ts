import { fold } from "../words/fold.ts";
import { measuredAmount, type ReadChoice, type ReadIngredient } from "./read-ingredient.ts";

/** "Fresh or frozen blueberries" are one food: these choose between nothing that changes its figures. */
const ONE_FOOD = new Set(
  `fresh frozen chilled thawed hot cold warm boiling small medium large big thick thin organic smooth crunchy
  ripe fine coarse chopped sliced diced grated whole halved`
    .split(/\s+/u)
    .filter((word) => word !== ""),
);
/** "Butter, or more", "or to serve": what follows is no food. */
const NO_FOOD =
  /^(?:more|less|so|similar|other|another|any|your|to|as|use|until|if|equivalent|whatever|what|a (?:bit|little)|just|even|both|none|not|till)\b/iu;

/** Whether a name is that of a food. */
export type KnowsFood = (name: string) => boolean;

/**
 * The same line with foods that stand with "or" between them taken apart: "butter or oil, 10 g" is
 * butter, with oil as its swap. Where both share a last word ("chicken or vegetable stock") `knows`
 * tells; "fresh or frozen blueberries" stay one food. A swap takes the amount of the line.
 */
export function withAlternatives(read: ReadIngredient, knows: KnowsFood): ReadIngredient {
  const apart = alternatives(read.main, knows);
  if (apart === null) return read;
  const amount = measuredAmount(read.main) ?? read.main.amount;
  const swaps = apart.others.map(
    (foodText): ReadChoice => ({ amount, stated: null, foodText, preparation: "" }),
  );
  return { ...read, main: apart.main, swaps: [...swaps, ...read.swaps] };
}

interface Apart {
  readonly main: ReadChoice;
  readonly others: readonly string[];
}

function alternatives(main: ReadChoice, knows: KnowsFood): Apart | null {
  return inName(main, knows) ?? inPreparation(main, knows);
}

function inName(main: ReadChoice, knows: KnowsFood): Apart | null {
  const named = main.foodText.split(/ or /iu).map((piece) => piece.trim());
  const [first = "", ...others] = named;
  if (others.length === 0 || others.length > 3 || named.some((piece) => piece === "")) return null;
  if (first.split(" ").every((word) => ONE_FOOD.has(fold(word)))) {
    const rest = others.at(-1) ?? "";
    const chosen = [first, ...others.slice(0, -1), rest.split(" ")[0]].join(" or ");
    const food = rest.split(" ").slice(1).join(" ");
    return food === "" ? null : { main: prepared(main, food, chosen), others: [] };
  }
  if (others.some((other) => NO_FOOD.test(other))) return withoutTail(main, first);
  const [name = "", ...rest] = sharedWord(named, knows);
  const isFood = [name, ...rest].some((one) => knows(one));
  return isFood ? { main: { ...main, foodText: name }, others: rest } : null;
}

/** "Butter or more" is butter. */
function withoutTail(main: ReadChoice, first: string): Apart | null {
  const tail = main.foodText.slice(first.length).trim();
  return { main: prepared(main, first, tail), others: [] };
}

function prepared(main: ReadChoice, foodText: string, more: string): ReadChoice {
  const preparation = [more, main.preparation].filter((piece) => piece !== "").join(", ");
  return { ...main, foodText, preparation };
}

/** "Chicken or vegetable stock": chicken stock, if the table knows it and it is what is meant. */
function sharedWord(named: readonly string[], knows: KnowsFood): readonly string[] {
  const words = (named.at(-1) ?? "").split(" ");
  const last = words.at(-1) ?? "";
  if (words.length < 2) return named;
  return named.map((name, at) => {
    if (at === named.length - 1 || name.split(" ").length > 2 || name.endsWith(last)) return name;
    const longer = `${name} ${last}`;
    return knows(longer) ? longer : name;
  });
}

/** "600 g chicken thighs, or firm tofu": only where what follows is a food. */
function inPreparation(main: ReadChoice, knows: KnowsFood): Apart | null {
  const pieces = main.preparation.split(", ");
  const at = pieces.findIndex((piece) => /^or /iu.test(piece));
  const other = (pieces[at] ?? "").slice(3).trim();
  if (at === -1 || NO_FOOD.test(other) || !knows(other)) return null;
  const preparation = pieces.filter((_, index) => index !== at).join(", ");
  return { main: { ...main, preparation }, others: [other] };
}
