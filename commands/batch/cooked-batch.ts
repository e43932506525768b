import { allergensIn } from "../../shared/allergen/find.ts";
import { batchId } from "../../shared/ids.ts";
import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import type { Batch } from "../../shared/stock/types.ts";
import { dateIn } from "../../shared/time.ts";
import { readWhen } from "../../shared/words/read-when.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { sayScaleProblem } from "../kit/say-problem.ts";
import { allergyAlerts, tableAlerts } from "../recipe/allergen-parts.ts";

/** A slip of the unit or the point would make a label and a thaw time that nobody can trust. */
function checkWeight(weightG: number | undefined, portions: number): void {
  if (weightG === undefined) return;
  const eachG = weightG / portions;
  if (eachG >= 20 && eachG <= 5000) return;
  throw new Refusal(
    `${Math.round(weightG)} g for ${portions} portions is ${Math.round(eachG)} g each. Type the cooked weight of the whole batch, such as 2.4 kg.`,
  );
}

interface Cooked {
  readonly portions?: number | undefined;
  readonly cooked?: string | undefined;
  readonly weight?: number | undefined;
  readonly without?: string | undefined;
}

interface LoggedBatch {
  readonly batch: Batch;
  /** What the member avoids and the batch holds, and what is not for who eats with them. */
  readonly alerts: readonly string[];
}

/** The batch with everything its dates and labels need as of today: a later revision does not change it. */
export function cookedBatch(
  context: Context,
  published: PublishedRecipe,
  input: Cooked,
): LoggedBatch {
  const { member, now, foods } = context;
  const { recipe } = published;
  const zone = member.choice.zone;
  const when =
    input.cooked === undefined
      ? { ok: true as const, value: now }
      : readWhen(input.cooked, now, zone);
  if (!when.ok) {
    throw new Refusal(
      `“${input.cooked}” is not a time I understand: type such as now, 18:30, yesterday 18:30 or Sun 17:00.`,
    );
  }
  const portions = input.portions ?? recipe.portions;
  const without = input.without?.split(",").map((part) => part.trim()) ?? [];
  const scaled = scaleRecipe(recipe, foods, {
    by: { kind: "portions", portions },
    without,
    swaps: {},
  });
  if (!scaled.ok) throw new Refusal(sayScaleProblem(scaled.problem));
  const leftOut = scaled.value.leftOut
    .filter((part) => part.kind === "component")
    .map((part) => part.name);
  const nutrition = nutritionOf(scaled.value, foods, { cookedWeightG: input.weight ?? null });
  checkWeight(input.weight, portions);
  const massG = input.weight ?? nutrition.cookedWeightG ?? nutrition.togetherG;
  const batch: Batch = {
    id: batchId(context.newId()),
    memberId: member.id,
    revisionId: published.revisionId,
    title: recipe.title,
    portionWord: recipe.portionWord,
    portionsCooked: portions,
    cookedAt: when.value,
    cookedOn: dateIn(when.value, zone),
    cookedWeightG: input.weight ?? null,
    portionG: massG / portions,
    keeping: resolveKeeping(recipe, foods, leftOut),
    perPortion: nutrition.perPortion,
  };
  const lines = scaled.value.components.flatMap((part) => part.lines);
  const alerts = [
    ...allergyAlerts(member.profile, allergensIn(lines, foods)),
    ...tableAlerts(member.profile, { recipe, lines, foods }),
  ];
  return { batch, alerts };
}
