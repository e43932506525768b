import type { Amount } from "../../shared/quantity/types.ts";
import { massUnitG } from "../../shared/quantity/unit.ts";
import { writeAmount, writeGrams } from "../../shared/quantity/write-amount.ts";
import { shortOf, type UsedInHand } from "../../shared/recipe/hand-used.ts";
import type { ScaledRecipe } from "../../shared/recipe/scale.ts";
import type { WholeMass } from "../../shared/recipe/scale-size.ts";
import { count } from "../../shared/words/plural.ts";
import { type Part, type Row, rows } from "../kit/reply.ts";
import type { Card } from "./card-model.ts";
import type { CardRequest } from "./card-request.ts";

/** The answer in one line: what it makes, and what decided that. */
export function headingOf({ published, request, scaled }: Card): string {
  const { title, portionWord } = published.recipe;
  const makes = count(scaled.portions, scaled.portionWord);
  const { by } = request;
  if (by.kind === "fill") {
    const each = count(scaled.portionShare, portionWord);
    return `${title} for ${makes} of ${massIn(by.boxG, request)}: each holds ${each}`;
  }
  const [scarcest, ...others] = scaled.inHand;
  if (scarcest === undefined) return `${title}: ${makes}`;
  const size = shareOf(scaled);
  const inHand = massIn(scarcest.grams, request);
  return others.length === 0
    ? `${inHand} of ${scarcest.food} makes ${makes} of ${title}, ${size}`
    : `${makes} of ${title}, ${size}: the ${scarcest.food} ${verb(scarcest.food)} out first`;
}

function shareOf({ portionShare }: ScaledRecipe): string {
  const percent = Math.round(portionShare * 100);
  return percent === 100 ? "each of the written size" : `each ${percent} % of the written size`;
}

function verb(food: string): string {
  return /[^s]s$/iu.test(food) ? "run" : "runs";
}

/** A weight in the units asked for. */
function massIn(grams: number, { units }: Pick<CardRequest, "units">): string {
  const ounces: Amount = { value: grams / (massUnitG("oz") ?? 1), to: null, unit: "oz" };
  return units === "us" ? writeAmount(ounces) : writeGrams(grams);
}

/** What decided the size, in short rows: what is left of the foods in hand, or what the boxes take. */
export function sizeParts(
  { request, scaled }: Pick<Card, "request" | "scaled">,
  isCooked = false,
): readonly Part[] {
  const { by } = request;
  if (by.kind === "fill" && scaled.filledBy !== null) {
    const figure = `${by.boxes} × ${massIn(by.boxG, request)}`;
    const total = massIn(by.boxes * by.boxG, request);
    const note = `${total} in all, ${MASS_OF[scaled.filledBy.of]}`;
    return [rows(null, [{ label: "boxes", figure, note }])];
  }
  return scaled.inHand.length < 2 ? [] : [rows("In hand", handRows(scaled, request, isCooked))];
}

const MASS_OF: Readonly<Record<WholeMass["of"], string>> = {
  stated: "cooked, by the weight the recipe states",
  estimated: "cooked, estimated: roasting and simmering may leave it 5 to 15 % lighter",
  "as put together": "nothing is cooked",
  raw: "by what goes in: nothing published says what cooking takes away, so boxes come out lighter",
};

function handRows(
  { inHand }: ScaledRecipe,
  request: CardRequest,
  isCooked: boolean,
): readonly Row[] {
  const left = inHand.map((food, index): Row => {
    const held = { label: food.food, figure: amountOf(food, food.grams, request) };
    const restG = food.grams - food.usedG;
    if (index === 0 && restG < 0.5) return { ...held, note: "all of it, runs out first" };
    const rest = restG < 0.5 ? "all of it" : `${amountOf(food, restG, request)} left`;
    return { ...held, note: index === 0 ? `${rest}, runs out first` : rest };
  });
  // Once it is cooked, nobody goes and gets more.
  const short = isCooked ? null : shortOf(inHand);
  if (short === null) return left;
  const [scarcest] = inHand;
  const more =
    scarcest === undefined
      ? massIn(short.moreG, request)
      : amountOf(scarcest, short.moreG, request, "more ");
  return [...left, { label: `to use up the ${short.usesUp}`, figure: `${more} ${short.food}` }];
}

/** "850 g"; pieces with their grams: "2 (220 g)", in halves as a cook counts them. */
function amountOf(
  { onePieceG }: UsedInHand,
  grams: number,
  request: CardRequest,
  more = "",
): string {
  const mass = massIn(grams, request);
  if (onePieceG === null) return more === "" ? mass : `${mass} ${more}`.trim();
  const pieces = Math.round((grams / onePieceG) * 2) / 2;
  const shown = pieces === 0 ? mass : `${pieces} (${mass})`;
  return more === "" ? shown : `${shown} ${more}`.trim();
}
