import { allergensIn } from "../../shared/allergen/find.ts";
import type { FoodBook } from "../../shared/food/book.ts";
import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import type { KeepingTime } from "../../shared/keeping/types.ts";
import { type Nutrition, nutritionOf } from "../../shared/nutrition/portion.ts";
import type { NutrientSums } from "../../shared/nutrition/types.ts";
import { writeFigure, writeShort } from "../../shared/nutrition/write.ts";
import type { Amount } from "../../shared/quantity/types.ts";
import { massUnitG } from "../../shared/quantity/unit.ts";
import { writeAmount, writeGrams } from "../../shared/quantity/write-amount.ts";
import { type ScaledRecipe, scaleRecipe } from "../../shared/recipe/scale.ts";
import { count } from "../../shared/words/plural.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { type Button, type Part, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { sayScaleCaution } from "../kit/say-problem.ts";
import { allergenRows } from "./allergen-parts.ts";
import { type CardRequest, requestPress } from "./card-request.ts";
import { lineRow } from "./line-row.ts";

/** A scaled recipe with what it was asked as. */
export interface Card {
  readonly published: PublishedRecipe;
  readonly request: CardRequest;
  readonly scaled: ScaledRecipe;
  readonly foods: FoodBook;
}

/** The card: what it makes, ingredients by component, figures, keeping, cautions. */
export function cardReply(card: Card): Reply {
  const { scaled, foods, request, published } = card;
  const { recipe } = published;
  const figures = nutritionOf(scaled, foods);
  const keeping = resolveKeeping(recipe, foods, request.without);
  const allergens = allergensIn(
    scaled.components.flatMap((part) => part.lines),
    foods,
  );
  return reply(headingOf(card), {
    parts: [
      ...ingredientParts(card),
      rows(
        `Per ${scaled.portionWord}, estimated`,
        figureRows(figures.perPortion, portionNote(scaled, figures)),
      ),
      rows(null, [...optionalRows(card, figures), hundredRow(figures)]),
      rows(null, [keepingRow(keeping), ...allergenRows(allergens)]),
      text(logHint(card)),
    ],
    cautions: [...notCounted(figures), ...scaled.cautions.map(sayScaleCaution), ...keeping.remarks],
    buttons: stepsButton(card),
  });
}

/** Steps, reheating and notes: the long part, behind its button. */
export function stepsReply(card: Card): Reply {
  const { recipe, id } = card.published;
  const back = requestPress("show", id, recipe, card.request);
  const parts: Part[] = [text(...recipe.steps.map((step, index) => `${index + 1}. ${step.text}`))];
  if (recipe.reheating.length > 0) parts.push(text("Reheating:", ...recipe.reheating));
  if (recipe.notes.length > 0) parts.push(text("Notes:", ...recipe.notes));
  return reply(`${recipe.title}: steps`, {
    parts,
    cautions: card.scaled.cautions.map(sayScaleCaution),
    buttons: back === null ? [] : [{ id: back, label: "Back to the card", weight: "plain" }],
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

function figureRows(sums: NutrientSums, note: string): readonly Row[] {
  return [
    { label: "energy", figure: writeFigure(sums, "energyKcal"), ...(note === "" ? {} : { note }) },
    { label: "protein", figure: writeFigure(sums, "proteinG") },
    {
      label: "fat",
      figure: writeFigure(sums, "fatG"),
      note: `saturated ${writeFigure(sums, "saturatedFatG")}`,
    },
    {
      label: "carbohydrate",
      figure: writeFigure(sums, "carbohydrateG"),
      note: `sugars ${writeFigure(sums, "sugarsG")}, fibre ${writeFigure(sums, "fibreG")}`,
    },
    { label: "salt", figure: writeFigure(sums, "sodiumMg") },
  ];
}

function portionNote(scaled: ScaledRecipe, figures: Nutrition): string {
  if (figures.cookedWeightG !== null) {
    return `about ${writeGrams(figures.cookedWeightG / scaled.portions)} cooked`;
  }
  // Foods that could not be weighed would make the mass too small.
  return figures.unmeasured.length > 0 || figures.togetherG === 0
    ? ""
    : `${writeGrams(figures.togetherG / scaled.portions)} before cooking`;
}

/** A portion without each optional part that is in, and with each that was left out. */
function optionalRows(card: Card, figures: Nutrition): readonly Row[] {
  const without = figures.without.map(({ name, perPortion }) => ({
    label: `without ${name}`,
    figure: writeShort(perPortion),
  }));
  return [...without, ...withEachLeftOut(card)];
}

function withEachLeftOut({ published, request, scaled, foods }: Card): readonly Row[] {
  return scaled.leftOut.flatMap(({ name }) => {
    const again = scaleRecipe(published.recipe, foods, {
      by: request.by,
      swaps: request.swaps,
      without: scaled.leftOut.filter((other) => other.name !== name).map((other) => other.name),
    });
    if (!again.ok) return [];
    const figure = writeShort(nutritionOf(again.value, foods).perPortion);
    return [{ label: `with ${name}`, figure }];
  });
}

const HUNDRED_OF: Readonly<Record<Nutrition["per100gOf"], string>> = {
  "cooked, weighed": "cooked, by its weight",
  "cooked, as the recipe states": "cooked, by the weight the recipe states",
  "cooked, estimated": "cooked, estimated from published yields",
  "as put together": "as put together, before cooking",
};

function hundredRow(figures: Nutrition): Row {
  return {
    label: "per 100 g",
    figure: writeShort(figures.per100g),
    note: HUNDRED_OF[figures.per100gOf],
  };
}

export function keepingRow(keeping: KeepingTime): Row {
  const fridge = `${count(keeping.fridgeDays, "day")} in the fridge`;
  const months =
    keeping.freezerMonths === null ? "" : `, best within ${count(keeping.freezerMonths, "month")}`;
  const why = keeping.reason === "" ? "" : ` (${keeping.reason})`;
  const freezer =
    keeping.freezes === "no"
      ? `not for the freezer${why}`
      : `${keeping.freezes === "well" ? "freezes well" : "freezes badly"}${why}${months}`;
  return { label: "keeps", figure: fridge, note: freezer };
}

function logHint({ published, scaled }: Card): string {
  const left = scaled.leftOut.filter(({ kind }) => kind === "component").map(({ name }) => name);
  const without = left.length === 0 ? "" : ` without:${left.join(", ")}`;
  return `Cooked it? Log this batch: /batch log recipe:${published.recipe.title} portions:${scaled.portions}${without}`;
}

function notCounted(figures: Nutrition): readonly string[] {
  const list: string[] = [];
  if (figures.unmeasured.length > 0) {
    list.push(
      `Not counted: ${figures.unmeasured.join(", ")}. They are not in the food table or cannot be weighed, so the figures are lower bounds.`,
    );
  }
  if (figures.toTaste.length > 0) {
    list.push(`To taste, left out of the figures: ${figures.toTaste.join(", ")}.`);
  }
  return list;
}

function stepsButton({ published, request }: Card): readonly Button[] {
  const { recipe, id } = published;
  const press = requestPress("steps", id, recipe, request);
  const hasMore = recipe.steps.length + recipe.reheating.length + recipe.notes.length > 0;
  return press === null || !hasMore ? [] : [{ id: press, label: "Steps", weight: "main" }];
}
