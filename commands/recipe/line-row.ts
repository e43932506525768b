import type { FoodBook } from "../../shared/food/book.ts";
import type { Amount } from "../../shared/quantity/types.ts";
import { massUnitG, volumeUnitMl } from "../../shared/quantity/unit.ts";
import { isContainer, isCounted } from "../../shared/quantity/unit-words.ts";
import { writeAmount, writeGrams } from "../../shared/quantity/write-amount.ts";
import type { ScaledLine } from "../../shared/recipe/scale.ts";
import type { LineChoice } from "../../shared/recipe/types.ts";
import { foldWords } from "../../shared/words/fold.ts";
import { singular } from "../../shared/words/plural.ts";
import type { Row } from "../kit/reply.ts";
import type { CardUnits } from "./card-request.ts";

const OUNCE_G = 28.349523125;
/** Ounces are written to the quarter (7 g): less than this goes by spoons, else by grams. */
const FEW_OUNCES_G = 2 * OUNCE_G;

/** How the lines of a card are shown. */
interface Shown {
  readonly units: CardUnits;
  readonly factor: number;
  readonly foods: FoodBook;
  /** How many share the line, and what one of them is called. */
  readonly portions: number;
  readonly portionWord: string;
}

/** One ingredient of a card: food, amount with unit, and what a cook should know about it. */
export function lineRow(line: ScaledLine, shown: Shown): Row {
  const { units, factor, foods } = shown;
  const { choice, roundedByG, grams } = line;
  const { countWord, food } = splitCount(choice);
  const densityOf = (id: LineChoice["foodId"]) =>
    id === null ? null : (foods.byId(id)?.densityGPerMl ?? null);
  const written = writtenIn(choice, line.written, units, densityOf(choice.foodId));
  const figure = countWord === "" ? written : `${written} ${countWord}`;
  const notes = [
    besideG(choice.amount, grams, written),
    choice.preparation,
    roundedNote(line, shown),
    line.optional ? "optional" : "",
    line.swapped ? "swap" : "",
    ...line.others.map((other) => otherNote(other, { units, factor }, densityOf(other.foodId))),
  ].filter((note) => note !== "");
  // A count without a unit word is read with its label: "eggs — 3".
  return roundedByG === 0 && notes.length === 0
    ? { label: food, figure }
    : { label: food, figure, note: notes.join("; ") };
}

/** "cloves garlic" is counted in cloves; "large eggs" in eggs. */
function splitCount({ amount, foodText }: LineChoice): {
  readonly countWord: string;
  readonly food: string;
} {
  const [first = "", ...rest] = foodText.split(" ");
  const word = singular(foldWords(first));
  const food = rest.join(" ").replace(/^of /iu, "");
  const counts = amount?.unit === "piece" && food !== "" && (isCounted(word) || isContainer(word));
  return counts ? { countWord: first, food } : { countWord: "", food: foodText };
}

/** The amount in the units asked for; spoons stay spoons, pieces stay pieces. */
function writtenIn(
  { amount, grams }: LineChoice,
  asScaled: string,
  units: CardUnits,
  densityGPerMl: number | null,
): string {
  if (amount === null || units === "as written" || amount.unit === "piece") return asScaled;
  if (massUnitG(amount.unit) !== null && grams !== null) {
    return units === "metric" ? writeGrams(grams) : usMass(grams, densityGPerMl);
  }
  const toCups: readonly string[] = ["ml", "cl", "l"];
  const toMl: readonly string[] = ["cup", "pint", "quart", "fl oz"];
  if (units === "us" && toCups.includes(amount.unit)) return inUnit(amount, "cup");
  if (units === "metric" && toMl.includes(amount.unit)) return inUnit(amount, "ml");
  return asScaled;
}

function usMass(grams: number, densityGPerMl: number | null): string {
  if (grams >= FEW_OUNCES_G) {
    return writeAmount({ value: grams / OUNCE_G, to: null, unit: "oz" });
  }
  const spoonMl = volumeUnitMl("tbsp", "us");
  if (densityGPerMl === null || spoonMl === null) return writeGrams(grams);
  return writeAmount({ value: grams / densityGPerMl / spoonMl, to: null, unit: "tbsp" });
}

function inUnit(amount: Amount, unit: "cup" | "ml"): string {
  const times = (volumeUnitMl(amount.unit, "us") ?? 1) / (volumeUnitMl(unit, "us") ?? 1);
  const to = amount.to === null ? null : amount.to * times;
  return writeAmount({ value: amount.value * times, to, unit });
}

/** Grams beside what is not written in grams: a scale is the surest measure. */
function besideG(amount: Amount | null, grams: number | null, written: string): string {
  if (amount === null || grams === null || / k?g$/u.test(written)) return "";
  const weight = writeGrams(grams);
  return weight === "0 g" ? "" : weight;
}

/** "rounded from 2.67: 4 g, 6 kcal more a portion": whole foods come whole, and that moves each portion. */
function roundedNote(line: ScaledLine, { foods, portions, portionWord }: Shown): string {
  const { choice, grams, roundedByG } = line;
  if (roundedByG === 0 || grams === null || grams === 0 || choice.amount === null) return "";
  const exact = (choice.amount.value * (grams - roundedByG)) / grams;
  const shown = Math.round(exact * 100) / 100;
  if (shown === choice.amount.value) return "";
  const food = choice.foodId === null ? null : foods.byId(choice.foodId);
  const eatenG = (Math.abs(roundedByG) * choice.uptake) / portions;
  const kcal = ((food?.per100g.energyKcal ?? 0) * eatenG * choice.tableGPerG) / 100;
  const moved = [
    eatenG < 0.25 ? "" : writeGrams(eatenG),
    kcal < 0.5 ? "" : `${Math.round(kcal)} kcal`,
  ].filter((part) => part !== "");
  const from = `rounded from ${shown}`;
  if (moved.length === 0) return from;
  return `${from}: ${moved.join(", ")} ${roundedByG > 0 ? "more" : "less"} a ${portionWord}`;
}

function otherNote(
  other: LineChoice,
  { units, factor }: Pick<Shown, "units" | "factor">,
  densityGPerMl: number | null,
): string {
  if (other.amount === null) return `or ${other.foodText}`;
  const { value, to, unit } = other.amount;
  const scaled = {
    ...other,
    amount: { value: value * factor, to: to === null ? null : to * factor, unit },
    grams: other.grams === null ? null : other.grams * factor,
  };
  const written = writtenIn(scaled, writeAmount(scaled.amount), units, densityGPerMl);
  return `or ${written} ${other.foodText}`;
}
