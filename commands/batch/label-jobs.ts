import { allergensInRecipe } from "../../shared/allergen/find.ts";
import type { LabelJob } from "../../shared/container-label/layout.ts";
import { labelWords } from "../../shared/container-label/words.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
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
  const allergens = recipe === null ? null : allergensInRecipe(recipe, foods);
  const reheating = recipe?.reheating ?? [];
  return boxesOf(Math.ceil(lot.portions), copies).map(({ portions, boxes }) => ({
    words: labelWords({
      lot,
      batch,
      code,
      style: group.labelStyle,
      allergens,
      reheating,
      ticks: portions,
    }),
    copies: boxes,
  }));
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
