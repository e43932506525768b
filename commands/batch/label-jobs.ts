import { type AllergensFound, allergensIn, allergensInRecipe } from "../../shared/allergen/find.ts";
import type { LabelJob } from "../../shared/container-label/layout.ts";
import { labelWords } from "../../shared/container-label/words.ts";
import type { FoodBook } from "../../shared/food/book.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import type { Batch } from "../../shared/stock/types.ts";
import { count } from "../../shared/words/plural.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { CodedLot } from "./label-lots.ts";

/** More labels are hours of cutting and sticking, and a slip. */
export const LABELS_MAX = 200;

/** A lot with the labels that are printed for it. */
export interface LabelledLot extends CodedLot {
  readonly jobs: readonly LabelJob[];
  readonly labels: number;
}

/** The labels of each lot: one for each portion, or as many `copies` as there are boxes. */
export async function labelJobs(
  context: Context,
  lots: readonly CodedLot[],
  copies: number | undefined,
): Promise<readonly LabelledLot[]> {
  const total = lots.reduce((sum, { lot }) => sum + (copies ?? Math.ceil(lot.portions)), 0);
  if (total > LABELS_MAX) {
    throw new Refusal(
      `That is ${count(total, "label")}, and ${LABELS_MAX} is the most at once: name one batch, or type fewer copies.`,
    );
  }
  const recipes = await recipesOf(context, lots);
  return lots.map((one) => {
    const jobs = jobsOf(context, one, recipes.get(one.batch.revisionId) ?? null, copies);
    return { ...one, jobs, labels: jobs.reduce((sum, job) => sum + job.copies, 0) };
  });
}

async function recipesOf({ stores, group }: Context, lots: readonly CodedLot[]) {
  const recipes = new Map<string, Recipe>();
  for (const id of new Set(lots.map(({ batch }) => batch.revisionId))) {
    const found = await stores.recipes.revision(group.id, id);
    if (found !== null) recipes.set(id, found.recipe);
  }
  return recipes;
}

function jobsOf(
  { foods, group }: Context,
  { lot, batch, code }: CodedLot,
  recipe: Recipe | null,
  copies: number | undefined,
): readonly LabelJob[] {
  const allergens = recipe === null ? null : allergensOf(recipe, batch, foods);
  const reheating = recipe?.reheating ?? [];
  return boxesOf(Math.ceil(lot.portions), copies).map(({ portions, boxes }) => ({
    words: labelWords({
      lot,
      batch,
      code,
      style: group.labelStyle,
      allergens,
      reheating,
      without: batch.asMade?.without ?? [],
      ticks: portions,
    }),
    copies: boxes,
  }));
}

/**
 * Of what was cooked: without the parts that were left out, with the swaps that were taken. Of a batch that
 * does not say how it was made, of all that its recipe has.
 */
function allergensOf(recipe: Recipe, { asMade }: Batch, foods: FoodBook): AllergensFound {
  if (asMade === undefined) return allergensInRecipe(recipe, foods);
  const { without, swaps } = asMade;
  const by = { kind: "portions", portions: recipe.portions } as const;
  const scaled = scaleRecipe(recipe, foods, { by, without, swaps });
  if (!scaled.ok) return allergensInRecipe(recipe, foods);
  return allergensIn(
    scaled.value.components.flatMap(({ lines }) => lines),
    foods,
  );
}

/** Portions spread over as many boxes, the fuller ones first; a label too many still has its one place to tick. */
function boxesOf(
  portions: number,
  copies = portions,
): readonly { readonly portions: number; readonly boxes: number }[] {
  const each = Math.max(1, Math.floor(portions / copies));
  const fuller = Math.max(0, portions - each * copies);
  return [
    { portions: each + 1, boxes: fuller },
    { portions: each, boxes: copies - fuller },
  ].filter(({ boxes }) => boxes > 0);
}
