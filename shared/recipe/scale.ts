import { readCooking } from "../cooking/read-cooking.ts";
import { type HowCooked, NOT_COOKED } from "../cooking/types.ts";
import type { FoodBook } from "../food/book.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import type { SpoonSet } from "../quantity/types.ts";
import { type ScaleCaution, scaleCautions } from "./cautions.ts";
import { type UsedInHand, usedInHand } from "./hand-used.ts";
import { foodKeyOf } from "./in-hand.ts";
import { type Leftover, leftoverOf, usedOf } from "./leftover.ts";
import { RECIPE_LIMITS, type ScaleProblem } from "./problems.ts";
import { type RecipePart, resolvePart } from "./resolve-part.ts";
import { type ScaledAmount, scaleChoice } from "./scale-choice.ts";
import { type ScaleBy, type Size, sizeOf, type WholeMass } from "./scale-size.ts";
import type { Tray } from "./tray.ts";
import type { Component, Line, LineChoice, Recipe } from "./types.ts";
import { wholeMassOf } from "./whole-mass.ts";

/** How a recipe is asked for. */
export interface ScaleRequest {
  readonly by: ScaleBy;
  /** Components or foods to leave out, by name or by line key. */
  readonly without: readonly string[];
  /** Line key -> which choice to take: 0 the line's own, 1 its first swap, and so on. */
  readonly swaps: Readonly<Record<string, number>>;
  /** Spoons that amounts are written for; US when not said. */
  readonly spoons?: SpoonSet;
  /** What it roasts on; an oven's own tray when not said. */
  readonly tray?: Tray | undefined;
}

export interface ScaledLine extends ScaledAmount {
  readonly key: string;
  readonly optional: boolean;
  /** True when a swap was taken instead of the line's own food. */
  readonly swapped: boolean;
  /** The choices not taken, as the recipe has them. */
  readonly others: readonly LineChoice[];
  /** What the steps do to it. */
  readonly cooking: HowCooked;
}

export interface ScaledComponent {
  readonly name: string;
  readonly optional: boolean;
  readonly lines: readonly ScaledLine[];
}

export interface LeftOut {
  readonly kind: RecipePart["kind"];
  readonly name: string;
}

export interface ScaledRecipe {
  /** Everything is the recipe as written times this. */
  readonly factor: number;
  /** Whole portions; boxes where boxes are filled. */
  readonly portions: number;
  readonly portionWord: string;
  /** Size of a portion relative to the written one: 1 but when scaled by what is in hand or by boxes. */
  readonly portionShare: number;
  /** What became of the foods in hand, the scarcest first; empty when they did not decide. */
  readonly inHand: readonly UsedInHand[];
  /** What boxes were filled by, for the whole as written; null when they did not decide. */
  readonly filledBy: WholeMass | null;
  /** Cooked mass of the whole, grams; null where not stated, or something was left out or swapped. */
  readonly yieldG: number | null;
  readonly components: readonly ScaledComponent[];
  readonly leftOut: readonly LeftOut[];
  /** Components of which more is made than goes in. */
  readonly leftover: readonly Leftover[];
  readonly cautions: readonly ScaleCaution[];
}

/**
 * Scales a recipe linearly: recipe conversion factor = new yield / old yield, on every line (TM 10-412,
 * 2003, section A-1). Optional parts are in unless left out. Foods counted in pieces round to whole
 * pieces, and each says by how many grams; nothing else is rounded but in how it is written.
 */
export function scaleRecipe(
  recipe: Recipe,
  foods: FoodBook,
  request: ScaleRequest,
): Outcome<ScaledRecipe, ScaleProblem> {
  const leftOut = resolveAll(recipe, request.without);
  if (!leftOut.ok) return leftOut;
  const unknown = unknownSwap(recipe, request.swaps);
  if (unknown !== null) return fail(unknown);
  const taken = takeParts(recipe, leftOut.value, request.swaps);
  if (taken.length === 0) return fail({ code: "nothing left" });
  const choices = taken.flatMap(({ lines }) => lines.map(({ choice }) => choice));
  const job: Job = { recipe, foods, taken, leftOut: leftOut.value, request };
  const asWritten = { factor: 1, portions: recipe.portions, portionShare: 1 };
  const size = sizeOf(
    {
      recipe,
      choices,
      foods,
      wholeMass: () =>
        wholeMassOf(assemble(job, { ...asWritten, inHand: [], filledBy: null }), foods),
    },
    request.by,
  );
  return size.ok ? ok(assemble(job, size.value)) : size;
}

/** Everything but the size. */
interface Job {
  readonly recipe: Recipe;
  readonly foods: FoodBook;
  readonly taken: readonly TakenComponent[];
  readonly leftOut: readonly RecipePart[];
  readonly request: ScaleRequest;
}

function assemble({ recipe, foods, taken, leftOut, request }: Job, size: Size): ScaledRecipe {
  const { factor } = size;
  const cooking = readCooking(recipe);
  const spoons = request.spoons ?? "us";
  const components = withinHand(size.inHand, (held) =>
    taken.map(({ component, lines }): ScaledComponent => {
      const scaled = lines.map(({ line, choice, index }): ScaledLine => {
        const rounding = held.has(foodKeyOf(choice)) ? "down" : "nearest";
        return {
          key: line.key,
          ...scaleChoice(usedOf(component, choice), factor, spoons, rounding),
          optional: line.optional,
          swapped: index > 0,
          others: choicesOf(line).filter((other) => other !== choice),
          cooking: cooking.get(line.key) ?? NOT_COOKED,
        };
      });
      return { name: component.name, optional: component.optional, lines: scaled };
    }),
  );
  const isAsStated =
    leftOut.length === 0 && taken.every(({ lines }) => lines.every((line) => line.index === 0));
  const lines = components.flatMap((part) => part.lines);
  return {
    ...size,
    portionWord: request.by.kind === "fill" ? "box" : recipe.portionWord,
    inHand: size.inHand.map((food) => usedInHand(food, lines)),
    yieldG: isAsStated && recipe.yieldG !== null ? recipe.yieldG * factor : null,
    components,
    leftOut: leftOut.map(({ kind, name }) => ({ kind, name })),
    leftover: leftoverOf(
      taken.map(({ component }) => component),
      factor,
    ),
    cautions: scaleCautions({ recipe, lines, foods, factor, tray: request.tray ?? null }),
  };
}

/** Whole foods to the nearest; where that is more than there is in hand, those foods down. */
function withinHand(
  inHand: Size["inHand"],
  scaleAll: (roundedDown: ReadonlySet<string>) => readonly ScaledComponent[],
): readonly ScaledComponent[] {
  const nearest = scaleAll(new Set());
  const lines = nearest.flatMap((part) => part.lines);
  const over = inHand.filter((food) => {
    const { usedG, grams } = usedInHand(food, lines);
    // A hair's tolerance for binary fractions.
    return usedG > grams * (1 + 1e-9);
  });
  return over.length === 0 ? nearest : scaleAll(new Set(over.map(({ key }) => key)));
}

interface TakenComponent {
  readonly component: Component;
  readonly lines: readonly {
    readonly line: Line;
    readonly choice: LineChoice;
    readonly index: number;
  }[];
}

/** Components with the lines that stay in, each with the choice taken. */
function takeParts(
  recipe: Recipe,
  leftOut: readonly RecipePart[],
  swaps: ScaleRequest["swaps"],
): readonly TakenComponent[] {
  const gone = new Set(leftOut.flatMap(({ keys }) => keys));
  return recipe.components
    .map((component) => ({
      component,
      lines: component.lines
        .filter(({ key }) => !gone.has(key))
        .map((line) => {
          const index = Object.hasOwn(swaps, line.key) ? (swaps[line.key] ?? 0) : 0;
          return { line, index, choice: choicesOf(line)[index] ?? line.main };
        }),
    }))
    .filter(({ lines }) => lines.length > 0);
}

function choicesOf(line: Line): readonly LineChoice[] {
  return [line.main, ...line.swaps];
}

function unknownSwap(recipe: Recipe, swaps: ScaleRequest["swaps"]): ScaleProblem | null {
  const lines = new Map(
    recipe.components.flatMap((part) => part.lines.map((line) => [line.key, line])),
  );
  for (const [key, index] of Object.entries(swaps)) {
    const choices = lines.get(key)?.swaps.length ?? 0;
    const isKnown = lines.has(key) && Number.isInteger(index) && index >= 0 && index <= choices;
    if (!isKnown) return { code: "no such swap", key, choices };
  }
  return null;
}

function resolveAll(
  recipe: Recipe,
  without: readonly string[],
): Outcome<readonly RecipePart[], ScaleProblem> {
  const parts: RecipePart[] = [];
  for (const text of without.slice(0, RECIPE_LIMITS.lines)) {
    const part = resolvePart(recipe, text);
    if (!part.ok) return part;
    if (!parts.some(({ kind, name }) => kind === part.value.kind && name === part.value.name))
      parts.push(part.value);
  }
  return ok(parts);
}
