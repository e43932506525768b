import type { Recipe, Step } from "../recipe/types.ts";
import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";

/** Words by which a step says that food is heated through. */
const HEAT =
  /\b(?:bak|boil|brais|broil|brown|cook|fry|fri|griddl|grill|heat|microwav|oven|poach|roast|saut|scald|sear|simmer|steam|stew|toast)/iu;

/** Dishes that the Food Code names as made of raw egg (3-302.13), and their kin. */
export const RAW_EGG_DISH =
  /\b(?:aioli|bearnaise|caesar|egg ?nog|hollandaise|ice cream|mayo|mayonnaise|meringue|mousse|tiramisu)\b/u;
/** Sauces that are named for what is stirred in raw. */
export const DRESSING = /\b(?:dressing|vinaigrette)\b/u;
/** Dishes of raw fish or meat. */
export const RAW_DISH = /\b(?:carpaccio|ceviche|crudo|gravlax|poke|sashimi|sushi|tartare)\b/u;

/** Whether the steps heat anything: a temperature of at least 60 °C, or a word for it. */
export function isHeated(recipe: Recipe): boolean {
  return recipe.steps.some(heats);
}

/** Whether a step heats: it names a temperature of at least 60 °C, or has a word for it. */
function heats({ text, temperaturesC }: Step): boolean {
  return temperaturesC.some((c) => c >= 60) || HEAT.test(text);
}

/**
 * Whether a step heats the food: one from the first that names it on. Where no step names it, any step
 * that heats will do. Boiling the rice before the fish is cut does not cook the fish.
 */
export function isCooked(text: string, recipe: Recipe): boolean {
  const own = new Set(wordsOf(text));
  const first = recipe.steps.findIndex((step) => stepWords(step).some((word) => own.has(word)));
  return recipe.steps.slice(Math.max(0, first)).some(heats);
}

const SAYS_LITTLE: ReadonlySet<string> = new Set(
  "and boneless fillet fresh in large medium of raw skinless small the with".split(" "),
);

/** Every food of a recipe is looked for in all its steps. */
const STEP_WORDS = new WeakMap<Step, readonly string[]>();

function stepWords(step: Step): readonly string[] {
  const known = STEP_WORDS.get(step);
  if (known !== undefined) return known;
  const words = wordsOf(step.text);
  STEP_WORDS.set(step, words);
  return words;
}

function wordsOf(text: string): readonly string[] {
  return foldWords(text)
    .split(" ")
    .map(singular)
    .filter((word) => word.length >= 3 && !SAYS_LITTLE.has(word));
}
