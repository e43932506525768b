import type { Food } from "../food/types.ts";
import type { Component, Recipe } from "../recipe/types.ts";
import { foldWords } from "../words/fold.ts";
import { DRESSING, isCooked } from "./heated.ts";

/** A food of a part as a line names it. */
export interface Named {
  readonly text: string;
  readonly food: Food;
}

/** How something freezes that does not freeze well, and why. */
export interface FreezesBadly {
  readonly how: "poorly" | "no";
  readonly reason: string;
}

/** A published row of what freezes badly, told by what the food is and what the recipe does with it. */
export interface FreezingRule extends FreezesBadly {
  readonly name: string;
  readonly source: string;
}

interface Seen {
  readonly words: string;
  readonly food: Food;
  /** A step heats it, or one does that names nothing. */
  readonly isCooked: boolean;
  /** Names of the part and of the dish, folded. */
  readonly names: string;
  readonly steps: string;
}

const NCHFP =
  "National Center for Home Food Preservation, foods that do not freeze well (So Easy to Preserve; OSU SP 50-766)";

/** In the order in which the worst is looked for. */
const RULES: readonly (FreezingRule & { readonly applies: (seen: Seen) => boolean })[] = [
  {
    name: "egg and oil emulsion",
    how: "no",
    reason: "the emulsion splits",
    source: `${NCHFP}: mayonnaise or salad dressing separates`,
    applies: ({ food, words, names, isCooked: cooked }) =>
      food.keepingClass === "mayonnaise"
        ? !cooked
        : food.keepingClass === "egg-raw" &&
          !/\bpasta\b/u.test(words) &&
          (/\b(?:aioli|bearnaise|caesar|hollandaise|mayo|mayonnaise)\b/u.test(names) ||
            DRESSING.test(names)),
  },
  {
    name: "cooked egg white",
    how: "no",
    reason: "cooked egg white turns rubbery",
    source: `${NCHFP}: cooked egg white soft, tough, rubbery; FoodSafety.gov, Cold Food Storage Chart: hard-cooked eggs, do not freeze`,
    applies: ({ food, words, steps }) =>
      (food.keepingClass === "egg-raw" || food.keepingClass === "egg-cooked") &&
      !/\byolks?\b/u.test(words) &&
      (food.keepingClass === "egg-cooked" || WHOLE_EGG.test(steps) || WHOLE_EGG.test(words)),
  },
  {
    name: "raw salad",
    how: "no",
    reason: "raw salad turns limp and watery",
    source: `${NCHFP}: lettuce, cucumber, celery, cabbage, endive, radish, watercress; raw tomato`,
    applies: ({ food, words, isCooked: cooked }) =>
      LEAF.test(words) ||
      (!cooked && food.keepingClass === "salad-leaf") ||
      (!cooked && food.keepingClass === "vegetable" && food.state === "raw" && SALAD.test(words)),
  },
  {
    name: "raw avocado",
    how: "poorly",
    reason: "raw avocado turns brown and watery",
    source:
      "National Center for Home Food Preservation, Freezing avocados: best as a purée with acid, whole or sliced not recommended (from memory)",
    applies: ({ food, words }) => food.keepingClass !== "shelf-stable" && AVOCADO.test(words),
  },
  {
    name: "boiled or baked potato",
    how: "poorly",
    reason: "potato turns soft and mealy",
    source: `${NCHFP}: baked or boiled potatoes soft, crumbly, waterlogged, mealy; mashed and twice-baked freeze well`,
    applies: ({ words, names, steps }) =>
      /\bpotato(?:es)?\b/u.test(words) &&
      !/\bsweet potato|\bpotato (?:starch|flour)|\bmashed\b/u.test(words) &&
      !MASHED.test(names) &&
      !MASHED.test(steps),
  },
  {
    name: "crisp coating",
    how: "poorly",
    reason: "the crisp coating turns soggy",
    source: `${NCHFP}: fried foods lose crispness, cheese or crumb toppings turn soggy`,
    applies: ({ words, names, steps }) =>
      CRUMBS.test(words) &&
      (CRISP.test(names) || CRISP.test(steps) || /\bcroutons?\b/u.test(words)),
  },
];

const WHOLE_EGG =
  /\b(?:hard|soft) (?:boil|cook)(?:ed)?\b|\b(?:boil|fry|poach|peel) the eggs?\b|\b(?:boiled|fried|poached) eggs?\b/u;
const SALAD =
  /\b(?:lettuce|cucumbers?|celery|radish(?:es)?|cabbage|endive|watercress|tomato(?:es)?)\b/u;
/** Nobody cooks these; spinach and its kin go by the steps. */
const LEAF = /\b(?:lettuce|rocket|arugula|watercress)\b/u;
const AVOCADO = /\b(?:avocados?|guacamole)\b/u;
const MASHED = /\b(?:mash|mashed|puree|pureed|blend|blended|twice baked)\b/u;
const CRUMBS = /\b(?:breadcrumbs?|bread crumbs?|panko|batter|cornflakes|croutons?)\b/u;
const CRISP =
  /\b(?:batter|breaded|coat|coated|crisp|crispy|crumb topping|crumble topping|crumbed|deep fry|dip|dredge|fried|fry|golden|schnitzel|tempura|topping)\b/u;

/** What of a part freezes badly by the published list; empty when nothing does. */
export function freezingRules(
  part: Component,
  recipe: Recipe,
  known: readonly Named[],
): readonly FreezingRule[] {
  const names = foldWords(`${part.name} ; ${recipe.components.length === 1 ? recipe.title : ""}`);
  const steps = foldWords(recipe.steps.map(({ text }) => text).join(" ; "));
  const seen = known.map(
    ({ text, food }): Seen => ({
      words: foldWords(`${text} ; ${food.name}`),
      food,
      isCooked: isCooked(text, recipe),
      names,
      steps,
    }),
  );
  return RULES.filter(({ applies }) => seen.some(applies)).map(({ name, how, reason, source }) => ({
    name,
    how,
    reason,
    source,
  }));
}

/**
 * Cooked rice, pasta or grain with nothing else in the part: it freezes, but drier and softer than under
 * its sauce (the list of the National Center for Home Food Preservation: mushy, warmed-over taste).
 */
export function isGrainAlone(known: readonly Named[]): boolean {
  const perishable = known.filter(({ food }) => food.keepingClass !== "shelf-stable");
  return (
    perishable.length > 0 && perishable.every(({ food }) => food.keepingClass === "cooked-grain")
  );
}
