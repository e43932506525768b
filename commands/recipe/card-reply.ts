import { type AllergensFound, allergensIn } from "../../shared/allergen/find.ts";
import type { FoodBook } from "../../shared/food/book.ts";
import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import { withEuEnergy } from "../../shared/label/eu.ts";
import { labelExtras } from "../../shared/label/extras.ts";
import { shortFigures } from "../../shared/label/short.ts";
import type { LabelExtras, LabelStyle } from "../../shared/label/types.ts";
import { type Nutrition, nutritionOf } from "../../shared/nutrition/portion.ts";
import type { NutrientSums } from "../../shared/nutrition/types.ts";
import type { Profile } from "../../shared/people/types.ts";
import type { Amount } from "../../shared/quantity/types.ts";
import { massUnitG } from "../../shared/quantity/unit.ts";
import { writeAmount, writeGrams } from "../../shared/quantity/write-amount.ts";
import { type ScaledRecipe, scaleRecipe } from "../../shared/recipe/scale.ts";
import type { TargetFigures } from "../../shared/target/types.ts";
import { count } from "../../shared/words/plural.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { type Button, type Part, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { sayScaleCaution } from "../kit/say-problem.ts";
import { allergenRows, allergyAlerts, tableAlerts } from "./allergen-parts.ts";
import { figureNotes, HUNDRED_OF, portionNote } from "./card-notes.ts";
import { type CardRequest, requestPress } from "./card-request.ts";
import { figureParts } from "./figure-parts.ts";
import { keepingRow } from "./keeping-row.ts";
import { labelReply } from "./label.ts";
import { lineRow } from "./line-row.ts";
import { cardPicture } from "./picture.ts";
import { targetPart } from "./target-part.ts";

/** A scaled recipe with what it was asked as. */
export interface Card {
  readonly published: PublishedRecipe;
  readonly request: CardRequest;
  readonly scaled: ScaledRecipe;
  readonly foods: FoodBook;
  readonly reader: CardReader;
}

/** For whom a card is. What they avoid is theirs alone: a card with it is never shown to others. */
export interface CardReader {
  readonly profile: Profile;
  readonly style: LabelStyle;
  /** Today's figures; null when there are none. */
  readonly target: TargetFigures | null;
}

/**
 * The card: what may hurt its reader first, then what it makes, ingredients by component, figures in the
 * group's style and against the day's target, keeping, cautions.
 */
export function cardReply(card: Card): Reply {
  const { scaled, foods, request, published, reader } = card;
  const figures = nutritionOf(scaled, foods);
  const extras = labelExtras(scaled, foods, figures);
  const keeping = resolveKeeping(published.recipe, foods, request.without);
  const again = withEachLeftOut(card);
  const optional = optionalRows(card, figures, again);
  const { alerts, allergens } = alertsOf(card);
  const [portion, ...hundred] = figureParts(
    { ...figures, extras },
    {
      style: reader.style,
      portionWord: scaled.portionWord,
      portionNote: portionNote(scaled, figures),
      hundredNote: HUNDRED_OF[figures.per100gOf],
    },
  );
  const portionSums = counted(figures.perPortion, reader.style, extras.perPortion);
  const recounted = ({ name, perPortion }: Again) => ({
    name,
    perPortion: counted(perPortion, reader.style),
  });
  const picture = cardPicture({
    title: published.recipe.title,
    portionWord: scaled.portionWord,
    style: reader.style,
    figures: { perPortion: portionSums, without: figures.without.map(recounted) },
    withAgain: again.map(recounted),
    target: reader.target,
  });
  const hasTarget = reader.target !== null && Object.keys(reader.target).length > 0;
  return reply(headingOf(card), {
    alerts,
    parts: [
      ...ingredientParts(card),
      ...(portion === undefined ? [] : [portion]),
      ...(hasTarget ? [targetPart(reader.target, portionSums, scaled.portionWord)] : []),
      ...(optional.length === 0 ? [] : [rows(null, optional)]),
      ...hundred,
      rows(null, [keepingRow(keeping), ...allergenRows(allergens)]),
      text(logHint(card)),
    ],
    cautions: [
      ...figureNotes(figures),
      ...scaled.cautions.map(sayScaleCaution),
      ...keeping.remarks,
    ],
    buttons: cardButtons(card),
    pictures: picture === null ? [] : [picture],
  });
}

/** The sums as they are held against a target: energy as the card itself shows it. */
function counted(sums: NutrientSums, style: LabelStyle, extras?: LabelExtras): NutrientSums {
  return style === "us" ? sums : withEuEnergy(sums, extras);
}

/** What its reader avoids and the card has, and what is not for who eats with them. */
function alertsOf({ scaled, foods, published, reader }: Card): {
  readonly alerts: readonly string[];
  readonly allergens: AllergensFound;
} {
  const lines = scaled.components.flatMap((part) => part.lines);
  const allergens = allergensIn(lines, foods);
  const { profile } = reader;
  const table = tableAlerts(profile, { recipe: published.recipe, lines, foods });
  return { alerts: [...allergyAlerts(profile, allergens), ...table], allergens };
}

/** Steps, reheating and notes: the long part, behind its button. */
export function stepsReply(card: Card): Reply {
  const { recipe } = card.published;
  const parts: Part[] = [text(...recipe.steps.map((step, index) => `${index + 1}. ${step.text}`))];
  if (recipe.reheating.length > 0) parts.push(text("Reheating:", ...recipe.reheating));
  if (recipe.notes.length > 0) parts.push(text("Notes:", ...recipe.notes));
  return reply(`${recipe.title}: steps`, {
    alerts: alertsOf(card).alerts,
    parts,
    cautions: card.scaled.cautions.map(sayScaleCaution),
    buttons: backButton(card),
  });
}

/** The whole nutrition label in the group's style, behind its button. */
export function cardLabelReply(card: Card): Reply {
  const { scaled, foods, published, reader } = card;
  const figures = nutritionOf(scaled, foods);
  const massG = figures.cookedWeightG ?? figures.togetherG;
  return labelReply({
    ...figures,
    extras: labelExtras(scaled, foods, figures),
    title: published.recipe.title,
    portionWord: scaled.portionWord,
    portionG: figures.unmeasured.length > 0 || massG === 0 ? null : massG / scaled.portions,
    hundredNote: HUNDRED_OF[figures.per100gOf],
    style: reader.style,
    buttons: backButton(card),
  });
}

function headingOf({ published, request, scaled }: Card): string {
  const makes = count(scaled.portions, scaled.portionWord);
  if (request.by.kind !== "have") return `${published.recipe.title}: ${makes}`;
  const percent = Math.round(scaled.portionShare * 100);
  const size =
    percent === 100 ? "each of the written size" : `each ${percent} % of the written size`;
  const ounces: Amount = { value: request.by.grams / (massUnitG("oz") ?? 1), to: null, unit: "oz" };
  const inHand = request.units === "us" ? writeAmount(ounces) : writeGrams(request.by.grams);
  return `${inHand} of ${request.by.foodText} makes ${makes} of ${published.recipe.title}, ${size}`;
}

function ingredientParts({ scaled, request, foods }: Card): readonly Part[] {
  const alone = scaled.components.length === 1;
  return scaled.components.map((part) => {
    const title = part.optional ? `${part.name} (optional)` : part.name;
    return rows(
      alone && !part.optional ? null : title,
      part.lines.map((line) =>
        lineRow(line, { units: request.units, factor: scaled.factor, foods }),
      ),
    );
  });
}

/** A portion without each optional part that is in, and with each that was left out. */
function optionalRows(
  { reader }: Card,
  figures: Nutrition,
  again: readonly Again[],
): readonly Row[] {
  const row = (word: string) => (part: Again) => ({
    label: `${word} ${part.name}`,
    figure: shortFigures(part.perPortion, reader.style),
  });
  return [...figures.without.map(row("without")), ...again.map(row("with"))];
}

interface Again {
  readonly name: string;
  readonly perPortion: NutrientSums;
}

/** What a portion would have with each part that was left out. */
function withEachLeftOut({ published, request, scaled, foods }: Card): readonly Again[] {
  return scaled.leftOut.flatMap(({ name }) => {
    const again = scaleRecipe(published.recipe, foods, {
      by: request.by,
      swaps: request.swaps,
      without: scaled.leftOut.filter((other) => other.name !== name).map((other) => other.name),
    });
    if (!again.ok) return [];
    return [{ name, perPortion: nutritionOf(again.value, foods).perPortion }];
  });
}

function logHint({ published, scaled }: Card): string {
  const left = scaled.leftOut.filter(({ kind }) => kind === "component").map(({ name }) => name);
  const without = left.length === 0 ? "" : ` without:${left.join(", ")}`;
  return `Cooked it? Log this batch: /batch log recipe:${published.recipe.title} portions:${scaled.portions}${without}`;
}

function cardButtons({ published, request }: Card): readonly Button[] {
  const { recipe, id } = published;
  const press = (action: "steps" | "label") => requestPress(action, id, recipe, request);
  const hasMore = recipe.steps.length + recipe.reheating.length + recipe.notes.length > 0;
  const [steps, label] = [press("steps"), press("label")];
  return [
    ...(steps === null || !hasMore ? [] : [{ id: steps, label: "Steps", weight: "main" } as const]),
    ...(label === null ? [] : [{ id: label, label: "Label", weight: "plain" } as const]),
  ];
}

function backButton({ published, request }: Card): readonly Button[] {
  const back = requestPress("show", published.id, published.recipe, request);
  return back === null ? [] : [{ id: back, label: "Back to the card", weight: "plain" }];
}
