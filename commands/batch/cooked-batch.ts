import { allergensIn } from "../../shared/allergen/find.ts";
import { batchId } from "../../shared/ids.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { type ScaledRecipe, scaleRecipe } from "../../shared/recipe/scale.ts";
import type { Batch } from "../../shared/stock/types.ts";
import { dateIn } from "../../shared/time.ts";
import { readWhen } from "../../shared/words/read-when.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { keepingFor } from "../kit/keeping.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { type Part, rows } from "../kit/reply.ts";
import { sayScaleProblem } from "../kit/say-problem.ts";
import { allergyAlerts, tableAlerts } from "../recipe/allergen-parts.ts";
import { leftoverRows } from "../recipe/card-extras.ts";
import type { CardRequest } from "../recipe/card-request.ts";
import { sizeParts } from "../recipe/card-size.ts";

/** A slip of the unit or the point would make a label and a thaw time that nobody can trust. */
function checkWeight(weightG: number | undefined, portions: number): void {
  if (weightG === undefined) return;
  const eachG = weightG / portions;
  if (eachG >= 20 && eachG <= 5000) return;
  throw new Refusal(
    `${Math.round(weightG)} g for ${portions} portions is ${Math.round(eachG)} g each. Type the cooked weight of the whole batch, such as 2.4 kg.`,
  );
}

/** When it was cooked, as typed, and what it weighs, grams. */
export interface Cooked {
  readonly cooked?: string | undefined;
  readonly weight?: number | undefined;
}

interface LoggedBatch {
  readonly batch: Batch;
  /** What the member avoids and the batch holds, and what is not for who eats with them. */
  readonly alerts: readonly string[];
  /** What decided the size, and what is left over of what: the parts a card has of it. */
  readonly sized: readonly Part[];
}

/**
 * The batch at the size asked for, with everything its dates and labels need as of today: a later revision
 * does not change it.
 */
export function cookedBatch(
  context: Context,
  published: PublishedRecipe,
  request: CardRequest,
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
  const scaled = scaleRecipe(recipe, foods, request);
  if (!scaled.ok) throw new Refusal(sayScaleProblem(scaled.problem));
  const { portions, portionWord } = scaled.value;
  const without = scaled.value.leftOut.map(({ name }) => name);
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
    portionWord,
    portionsCooked: portions,
    cookedAt: when.value,
    cookedOn: dateIn(when.value, zone),
    cookedWeightG: input.weight ?? null,
    portionG: massG / portions,
    keeping: keepingFor(published, foods, leftOut, member.profile),
    perPortion: nutrition.perPortion,
    asMade: { without, swaps: request.swaps },
  };
  const lines = scaled.value.components.flatMap((part) => part.lines);
  const alerts = [
    ...allergyAlerts(member.profile, allergensIn(lines, foods)),
    ...tableAlerts(member.profile, { recipe, lines, foods }),
  ];
  return { batch, alerts, sized: sizedParts(published, request, scaled.value, context) };
}

function sizedParts(
  published: PublishedRecipe,
  request: CardRequest,
  scaled: ScaledRecipe,
  { foods }: Context,
): readonly Part[] {
  const left = leftoverRows({ published, scaled, foods });
  return [
    ...sizeParts({ request, scaled }, true),
    ...(left.length === 0 ? [] : [rows(null, left)]),
  ];
}
