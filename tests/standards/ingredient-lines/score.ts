import type { FoodBook } from "../../../shared/food/book.ts";
import type { Amount, Unit } from "../../../shared/quantity/types.ts";
import { massUnitG } from "../../../shared/quantity/unit.ts";
import { readRecipe } from "../../../shared/recipe/read.ts";
import type { Line } from "../../../shared/recipe/types.ts";
import { FRESH_LINES } from "./fresh-lines.ts";
import { LABELLED_LINES } from "./lines.ts";
import { MISLEADING_LINES } from "./misleading-lines.ts";
import { UNSEEN_LINES } from "./unseen-lines.ts";

/** What a careful reader takes from a line. */
export interface LabelledLine {
  readonly text: string;
  /** Null where no amount is given, or none is meant. */
  readonly amount: Amount | null;
  readonly statedG: number | null;
  /** Numbers of the foods it may be taken for; none where the table has no such food. */
  readonly numbers: readonly string[];
  readonly flags: readonly string[];
}

const ALL = labelled(LABELLED_LINES);
/** Written later on: two sets that the reader was mended by, and one to measure it with. */
export const LATER_LINES = {
  fresh: labelled(FRESH_LINES),
  misleading: labelled(MISLEADING_LINES),
  unseen: labelled(UNSEEN_LINES),
};
/** Every second line, from the first on. */
export const TUNING_LINES = ALL.filter((_, at) => at % 2 === 0);
export const TEST_LINES = ALL.filter((_, at) => at % 2 === 1);

function labelled(rows: string): readonly LabelledLine[] {
  return rows.trim().split("\n").map(parse);
}

function parse(row: string): LabelledLine {
  const [text = "", amount = "", numbers = "", flags = ""] = row
    .split("|")
    .map((cell) => cell.trim());
  const [main = "", stated] = amount.split("=").map((piece) => piece.trim());
  const weight = stated === undefined ? null : amountOf(stated);
  return {
    text,
    amount: main === "taste" || main === "?" ? null : amountOf(main),
    statedG: weight === null ? null : weight.value * (massUnitG(weight.unit) ?? Number.NaN),
    numbers: numbers === "-" ? [] : numbers.split(","),
    flags: flags === "" ? [] : flags.split(",").map((flag) => flag.trim()),
  };
}

function amountOf(label: string): Amount {
  const match = /^([\d./ ]*\d)(?:-([\d./ ]*\d))? ([a-z ]+)$/u.exec(label);
  if (match === null) throw new Error(`no amount: ${label}`);
  const to = match[2];
  return {
    value: numberOf(match[1] ?? ""),
    to: to === undefined ? null : numberOf(to),
    unit: match[3] as Unit,
  };
}

function numberOf(label: string): number {
  return label
    .split(" ")
    .map((piece) => {
      const [above, below = "1"] = piece.split("/");
      return Number(above) / Number(below);
    })
    .reduce((sum, part) => sum + part, 0);
}

/** What can be wrong with how a line was read. */
export type Miss = "not read as a line" | "amount" | "unit" | "stated weight" | "food" | "flags";

export interface LineScore {
  readonly lines: number;
  /** Per cent of lines with amount, range, unit and stated weight exactly as labelled. */
  readonly amountPct: number;
  /** Per cent of lines taken first for a food among those labelled, or for none where there is none. */
  readonly foodPct: number;
  readonly flagsPct: number;
  readonly misses: readonly { readonly text: string; readonly missed: readonly Miss[] }[];
}

/** Reads each line as it stands, below "Ingredients" and without a mark. */
export function scoreLines(labelled: readonly LabelledLine[], foods: FoodBook): LineScore {
  const results = labelled.map((line) => ({ text: line.text, missed: missesOf(line, foods) }));
  const pct = (...kinds: readonly Miss[]) => {
    const missing = (missed: readonly Miss[]) =>
      missed.some((miss) => miss === "not read as a line" || kinds.includes(miss));
    return (100 * results.filter(({ missed }) => !missing(missed)).length) / results.length;
  };
  return {
    lines: results.length,
    amountPct: pct("amount", "unit", "stated weight"),
    foodPct: pct("food"),
    flagsPct: pct("flags"),
    misses: results.filter(({ missed }) => missed.length > 0),
  };
}

function missesOf(labelled: LabelledLine, foods: FoodBook): readonly Miss[] {
  const outcome = readRecipe(`Test\nMakes 1 portion\n\nIngredients\n${labelled.text}`, foods);
  const line = outcome.ok ? outcome.value.recipe.components[0]?.lines[0] : undefined;
  if (!outcome.ok || line === undefined) return ["not read as a line"];
  const hasRemark = outcome.value.remarks.some(({ code }) => code === "no amount");
  const food = line.main.foodId === null ? null : foods.byId(line.main.foodId);
  const isRightFood =
    food === null ? labelled.numbers.length === 0 : labelled.numbers.includes(food.source.number);
  const misses: Miss[] = [...amountMisses(line, labelled)];
  if (!isRightFood) misses.push("food");
  const flags = flagsOf(line, hasRemark).sort().join(",");
  if (flags !== [...labelled.flags].sort().join(",")) misses.push("flags");
  return misses;
}

function amountMisses({ main }: Line, { amount, statedG }: LabelledLine): readonly Miss[] {
  const misses: Miss[] = [];
  if (!isSame(main.amount?.value, amount?.value) || !isSame(main.amount?.to, amount?.to)) {
    misses.push("amount");
  }
  if (main.amount?.unit !== amount?.unit) misses.push("unit");
  if (statedG !== null && !isSame(main.grams, statedG)) misses.push("stated weight");
  return misses;
}

function isSame(a: number | null | undefined, b: number | null | undefined): boolean {
  return a == null || b == null ? (a ?? null) === (b ?? null) : Math.abs(a - b) < 1e-9 * (1 + b);
}

/** To taste is what has no amount and is not remarked upon for it. */
function flagsOf(line: Line, hasRemark: boolean): string[] {
  return [
    ...(line.main.amount === null && !hasRemark ? ["taste"] : []),
    ...(line.optional ? ["optional"] : []),
    ...(line.swaps.length > 0 ? ["swap"] : []),
  ];
}
