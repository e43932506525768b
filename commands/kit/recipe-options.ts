import { completeRecipes } from "../../shared/book/complete.ts";
import {
  hasWords,
  partsOf,
  type RecipePart,
  resolvePart,
} from "../../shared/recipe/resolve-part.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { fold } from "../../shared/words/fold.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { type Completer, type OtherOptions, Refusal, type Suggestion } from "./command.ts";
import type { Context } from "./context.ts";
import type { PublishedRecipe } from "./ports.ts";
import { listed, sayScaleProblem } from "./say-problem.ts";

const OFFERED = 25;
/** The platform's limit for the label and the value of an offer. */
const OFFER_CHARS = 100;

/**
 * Offers the group's recipes by what their titles, tags and foods begin with or hold. While the book is
 * first being read, by titles and tags alone.
 */
export const completeRecipe: Completer = async (context, typed) => {
  const found = await recipesLike(context, typed.slice(0, OFFER_CHARS));
  return found.map(({ id, title }) =>
    title.length <= OFFER_CHARS
      ? { label: title, value: title }
      : { label: `${title.slice(0, OFFER_CHARS - 1)}…`, value: id },
  );
};

async function recipesLike({ recipeBook, stores, group }: Context, typed: string) {
  const book = await recipeBook.soon();
  return book === null
    ? stores.recipes.search(group.id, typed, OFFERED)
    : completeRecipes(book, typed, OFFERED);
}

/** Offers the parts and foods of the recipe that stands in `recipe`, optional parts first. */
export const completePart: Completer = async (context, typed, others) => {
  const recipe = await chosen(context, others);
  const names =
    recipe === null
      ? []
      : partsOf(recipe)
          .toSorted(optionalFirst)
          .map(({ name }) => name);
  return offered(names, typed);
};

function optionalFirst(a: RecipePart, b: RecipePart): number {
  return Number(b.optional) - Number(a.optional);
}

/** Offers the swaps that the recipe in `recipe` names. */
export const completeSwap: Completer = async (context, typed, others) => {
  const recipe = await chosen(context, others);
  const lines = recipe?.components.flatMap((part) => part.lines) ?? [];
  return offered(
    lines.flatMap(({ swaps }) => swaps.map(({ foodText }) => foodText)),
    typed,
  );
};

async function chosen({ stores, group }: Context, others: OtherOptions): Promise<Recipe | null> {
  const title = others["recipe"] ?? "";
  return title === ""
    ? null
    : ((await stores.recipes.find(group.id, title, group.recipesVersion))?.recipe ?? null);
}

function offered(names: readonly string[], typed: string): readonly Suggestion[] {
  return [...new Set(names)]
    .filter((name) => fold(name).includes(fold(typed)))
    .slice(0, OFFERED)
    .map((name) => ({ label: name, value: name }));
}

/**
 * The recipe of this group by title or id, or the only one whose title has the words typed; else a refusal
 * that names the nearest. A slip is never mended unasked: another recipe would be cooked.
 */
export async function recipeOrRefuse(context: Context, typed: string): Promise<PublishedRecipe> {
  const { stores, group } = context;
  const found = await stores.recipes.find(group.id, typed, group.recipesVersion);
  if (found !== null) return found;
  const titled = await stores.recipes.search(group.id, typed, 4);
  const [only, ...others] = titled;
  if (only !== undefined && others.length === 0) {
    const sole = await stores.recipes.find(group.id, only.id, group.recipesVersion);
    if (sole !== null) return sole;
  }
  if (titled.length > 0) {
    throw new Refusal(
      `“${excerpt(typed)}” fits several recipes: type ${listed(titled.map(({ title }) => title))}.`,
    );
  }
  const near = completeRecipes(await context.recipeBook.whole(), typed, 3);
  throw new Refusal(
    near.length === 0
      ? `There is no recipe “${excerpt(typed)}”: type /recipe find to see which there are.`
      : `There is no recipe “${excerpt(typed)}”: did you mean ${listed(near.map(({ title }) => title))}?`,
  );
}

/** What is to be left out, "tortillas, cheese": the names of those components and foods. */
export function resolveWithout(recipe: Recipe, typed: string): readonly string[] {
  const names = piecesOf(typed).map((text) => {
    const part = resolvePart(recipe, text);
    if (!part.ok) throw new Refusal(sayScaleProblem(part.problem));
    return part.value.name;
  });
  return [...new Set(names)];
}

/** The swaps to take, "yoghurt, rapeseed oil": line key -> which of its choices (1 is the first swap). */
export function resolveSwaps(recipe: Recipe, typed: string): Readonly<Record<string, number>> {
  const all = recipe.components.flatMap((part) =>
    part.lines.flatMap(({ key, swaps }) =>
      swaps.map(({ foodText }, index) => ({ key, index: index + 1, foodText })),
    ),
  );
  const taken: Record<string, number> = {};
  for (const text of piecesOf(typed)) {
    const fitting = all.filter(({ foodText }) => hasWords(foodText, text));
    const lines = new Set(fitting.map(({ key }) => key));
    const [first] = fitting;
    if (first === undefined || fitting.length > lines.size) {
      throw new Refusal(noSuchSwap(text, [...new Set(all.map(({ foodText }) => foodText))]));
    }
    for (const { key, index } of fitting) taken[key] = index;
  }
  return taken;
}

function noSuchSwap(text: string, swaps: readonly string[]): string {
  return swaps.length === 0
    ? `This recipe has no swaps, so not “${excerpt(text)}” either.`
    : `“${excerpt(text)}” is not one swap of this recipe: type one of ${listed(swaps)}.`;
}

function piecesOf(typed: string): readonly string[] {
  return typed
    .split(/[,;]/u)
    .map((text) => text.trim())
    .filter((text) => text !== "");
}
