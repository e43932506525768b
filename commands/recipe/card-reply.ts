import { withEuEnergy } from "../../shared/label/eu.ts";
import { labelExtras } from "../../shared/label/extras.ts";
import { shortFigures } from "../../shared/label/short.ts";
import type { LabelExtras, LabelStyle } from "../../shared/label/types.ts";
import { type Nutrition, nutritionOf } from "../../shared/nutrition/portion.ts";
import type { NutrientSums } from "../../shared/nutrition/types.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import { count } from "../../shared/words/plural.ts";
import { keepingFor } from "../kit/keeping.ts";
import { type Button, type Part, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { sayScaleCaution } from "../kit/say-problem.ts";
import { allergenRows } from "./allergen-parts.ts";
import { leftoverRows, marinadeRows } from "./card-extras.ts";
import { alertsOf, backButton, type Card } from "./card-model.ts";
import { figureNotes, HUNDRED_OF, portionNote } from "./card-notes.ts";
import { requestPress } from "./card-request.ts";
import { headingOf, sizeParts } from "./card-size.ts";
import { hasSteps, stepsFile } from "./card-steps.ts";
import { figureParts } from "./figure-parts.ts";
import { keepingRow } from "./keeping-row.ts";
import { labelReply } from "./label.ts";
import { lineRow } from "./line-row.ts";
import { cardPicture } from "./picture.ts";
import { targetPart } from "./target-part.ts";

/**
 * The card: what may hurt its reader first, then what it makes, ingredients by component, figures in the
 * group's style and against the day's target, keeping, cautions.
 */
export function cardReply(card: Card): Reply {
  const { scaled, foods, request, published, reader } = card;
  const figures = nutritionOf(scaled, foods);
  const extras = labelExtras(scaled, foods, figures);
  const keeping = keepingFor(published, foods, request.without, reader.profile);
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
      ...changeParts(card),
      ...sizeParts(card),
      ...ingredientParts(card),
      ...(portion === undefined ? [] : [portion]),
      ...(hasTarget ? [targetPart(reader.target, portionSums, scaled.portionWord)] : []),
      ...(optional.length === 0 ? [] : [rows(null, optional)]),
      ...hundred,
      rows(null, [
        keepingRow(keeping),
        ...leftoverRows(card),
        ...marinadeRows(card),
        ...allergenRows(allergens),
      ]),
      ...logHint(card),
    ],
    cautions: [
      ...figureNotes({ ...figures, assumptions: assumptionsShown(card, figures) }),
      ...scaled.cautions.map(sayScaleCaution),
      ...keeping.remarks,
    ],
    buttons: cardButtons(card),
    pictures: picture === null ? [] : [picture],
    files: stepsPress(card) === null && hasSteps(card) ? [stepsFile(card)] : [],
  });
}

/** First of all for who cooked it before: by heart it is another recipe now. */
function changeParts({ reader }: Card): readonly Part[] {
  const { changes } = reader;
  return changes.length === 0 ? [] : [text(`Changed since you cooked it: ${changes.join("; ")}.`)];
}

/** That a part of a sauce is not eaten stands in its own row, once and not for each of its foods. */
function assumptionsShown(
  { published, scaled }: Card,
  { assumptions }: Nutrition,
): Nutrition["assumptions"] {
  const names = new Set(scaled.leftover.map(({ component }) => component));
  const own = published.recipe.components
    .filter(({ name }) => names.has(name))
    .flatMap(({ lines }) => lines.flatMap(({ main, swaps }) => [main, ...swaps]))
    .filter(({ uptake }) => uptake === 1)
    .map(({ foodText }) => foodText);
  return assumptions.filter(({ code, food }) => code !== "taken up" || !own.includes(food));
}

/** The sums as they are held against a target: energy as the card itself shows it. */
function counted(sums: NutrientSums, style: LabelStyle, extras?: LabelExtras): NutrientSums {
  return style === "us" ? sums : withEuEnergy(sums, extras);
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

function ingredientParts({ scaled, request, foods }: Card): readonly Part[] {
  const alone = scaled.components.length === 1;
  return scaled.components.map((part) => {
    const title = part.optional ? `${part.name} (optional)` : part.name;
    return rows(
      alone && !part.optional ? null : title,
      part.lines.map((line) =>
        lineRow(line, {
          units: request.units,
          factor: scaled.factor,
          foods,
          portions: scaled.portions,
          portionWord: scaled.portionWord,
        }),
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

/** Only where the button has no room for the request: the same size, to type. */
function logHint({ published, request, scaled }: Card): readonly Part[] {
  const { recipe, revisionId } = published;
  if (requestPress("log", revisionId, recipe, request) !== null) return [];
  return [
    text(
      `Cooked it? Type /batch log recipe:${recipe.title} with the same options as this card; it made ${count(scaled.portions, scaled.portionWord)}.`,
    ),
  ];
}

function stepsPress({ published, request }: Card): string | null {
  return requestPress("steps", published.id, published.recipe, request);
}

function cardButtons(card: Card): readonly Button[] {
  const { published, request } = card;
  const steps = stepsPress(card);
  const log = requestPress("log", published.revisionId, published.recipe, request);
  const label = requestPress("label", published.id, published.recipe, request);
  return [
    ...(steps === null || !hasSteps(card)
      ? []
      : [{ id: steps, label: "Steps", weight: "main" } as const]),
    ...(log === null ? [] : [{ id: log, label: "Log it", weight: "plain" } as const]),
    ...(label === null ? [] : [{ id: label, label: "Label", weight: "plain" } as const]),
  ];
}
