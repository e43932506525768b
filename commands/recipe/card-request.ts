import { z } from "zod";
import { resolvePart } from "../../shared/recipe/resolve-part.ts";
import type { ScaleRequest } from "../../shared/recipe/scale.ts";
import type { LineChoice, Recipe } from "../../shared/recipe/types.ts";
import { Refusal } from "../kit/command.ts";
import { PRESS_ID_MAX, writePress } from "../kit/press.ts";

/** How amounts are shown: as the coach wrote them, or turned into grams, or into pounds and ounces. */
export type CardUnits = "as written" | "metric" | "us";

/** A card as it is asked for, with everything resolved against the recipe. */
export interface CardRequest {
  readonly by: ScaleRequest["by"];
  /** Names of the components and foods left out. */
  readonly without: readonly string[];
  readonly swaps: Readonly<Record<string, number>>;
  readonly units: CardUnits;
}

export const AS_WRITTEN: CardRequest = {
  by: { kind: "as written" },
  without: [],
  swaps: {},
  units: "as written",
};

const NONE = "-";
const STALE = "That button no longer fits the recipe: ask for the card again with /recipe card.";

/**
 * A button id that carries the request: recipe id, size, parts left out, swaps, units. Null when it
 * does not fit into the platform's 100 characters; the card then goes without that button.
 */
export function requestPress(
  action: "show" | "steps" | "label",
  recipeId: string,
  recipe: Recipe,
  request: CardRequest,
): string | null {
  const args = [
    recipeId,
    writeSize(recipe, request.by),
    listOr(request.without.map((name) => partRef(recipe, name))),
    listOr(Object.entries(request.swaps).map(([key, index]) => `${key}=${index}`)),
    request.units.slice(0, 1),
  ];
  const length = ["recipe card", action, ...args].join("~").length;
  return length > PRESS_ID_MAX ? null : writePress("recipe card", action, ...args);
}

function writeSize(recipe: Recipe, by: ScaleRequest["by"]): string {
  if (by.kind === "as written") return "w";
  if (by.kind === "portions") return `p${by.portions}`;
  const at = allChoices(recipe).find(({ choice }) => choice.foodText === by.foodText);
  return `h${Math.round(by.grams * 10) / 10}@${at?.ref ?? NONE}`;
}

function listOr(list: readonly string[]): string {
  return list.length === 0 ? NONE : list.join(",");
}

/** "c1" for the second component, a line's key for a food. */
function partRef(recipe: Recipe, name: string): string {
  const component = recipe.components.findIndex((part) => part.name === name);
  if (component >= 0) return `c${component}`;
  const part = resolvePart(recipe, name);
  return part.ok ? (part.value.keys[0] ?? NONE) : NONE;
}

/** Every choice of the recipe with a reference: line key, then which choice of the line. */
function allChoices(
  recipe: Recipe,
): readonly { readonly ref: string; readonly choice: LineChoice }[] {
  return recipe.components.flatMap((part) =>
    part.lines.flatMap((line) =>
      [line.main, ...line.swaps].map((choice, index) => ({ ref: `${line.key}.${index}`, choice })),
    ),
  );
}

const argsSchema = z.tuple([
  z.string().regex(/^[\w-]{1,40}$/u),
  z.string().regex(/^(?:w|p\d{1,3}|h\d{1,6}(?:\.\d)?@\d{1,3}\.\d{1,3}\.\d{1,2})$/u),
  z.string().regex(/^(?:-|(?:c\d{1,2}|\d{1,3}\.\d{1,3})(?:,(?:c\d{1,2}|\d{1,3}\.\d{1,3}))*)$/u),
  z.string().regex(/^(?:-|\d{1,3}\.\d{1,3}=\d{1,2}(?:,\d{1,3}\.\d{1,3}=\d{1,2})*)$/u),
  z.enum(["a", "m", "u"]),
]);
const idSchema = z.tuple([z.string().regex(/^[\w-]{1,40}$/u)]);

/** The recipe id of a press, and a reader of its request once the recipe is known. */
export interface PressedCard {
  readonly recipeId: string;
  readonly requestFor: (recipe: Recipe) => CardRequest;
}

/** Reads the arguments of a press; refuses what is none of ours. */
export function readPressedCard(args: readonly string[]): PressedCard {
  const alone = idSchema.safeParse(args);
  if (alone.success) return { recipeId: alone.data[0], requestFor: () => AS_WRITTEN };
  const parsed = argsSchema.safeParse(args);
  if (!parsed.success) throw new Refusal(STALE);
  const [recipeId, size, without, swaps, units] = parsed.data;
  return {
    recipeId,
    requestFor: (recipe) => ({
      by: readSize(recipe, size),
      without: pieces(without).map((ref) => partNamed(recipe, ref)),
      swaps: Object.fromEntries(
        pieces(swaps).map((swap) => {
          const [key = "", index = ""] = swap.split("=");
          return [key, Number(index)];
        }),
      ),
      units: units === "m" ? "metric" : units === "u" ? "us" : "as written",
    }),
  };
}

function readSize(recipe: Recipe, size: string): ScaleRequest["by"] {
  if (size === "w") return { kind: "as written" };
  if (size.startsWith("p")) return { kind: "portions", portions: Number(size.slice(1)) };
  const [grams = "", ref = ""] = size.slice(1).split("@");
  const at = allChoices(recipe).find((one) => one.ref === ref);
  if (at === undefined) throw new Refusal(STALE);
  return { kind: "have", grams: Number(grams), foodText: at.choice.foodText };
}

function pieces(text: string): readonly string[] {
  return text === NONE ? [] : text.split(",");
}

function partNamed(recipe: Recipe, ref: string): string {
  if (!ref.startsWith("c")) return ref;
  const component = recipe.components[Number(ref.slice(1))];
  if (component === undefined) throw new Refusal(STALE);
  return component.name;
}
