import type { FoodBook } from "../../shared/food/book.ts";
import { writeAmount, writeGrams } from "../../shared/quantity/write-amount.ts";
import type { LineChoice, MakesMore, StatedKeeping, Step } from "../../shared/recipe/types.ts";
import type { LineAspect, RecipeChange } from "../../shared/recipe/what-changed.ts";
import { count } from "../../shared/words/plural.ts";
import { excerpt } from "../../shared/words/problems.ts";

const SHOWN = 15;

/** What changed between two revisions, a short line each; of very many the first, and how many more. */
export function sayChanges(changes: readonly RecipeChange[], foods: FoodBook): readonly string[] {
  const said = changes.map((change) => sayChange(change, foods));
  const more = said.length - SHOWN;
  return more > 1 ? [...said.slice(0, SHOWN), `and ${more} more changes`] : said;
}

type OfPart = Extract<
  RecipeChange,
  { readonly code: "part new" | "part gone" | "part renamed" | "part optional" | "part makes" }
>;
type OfLine = Extract<RecipeChange, { readonly code: "line new" | "line gone" | "line changed" }>;

function sayChange(change: RecipeChange, foods: FoodBook): string {
  switch (change.code) {
    case "title":
      return `title “${change.before}” → “${change.after}”`;
    case "portions":
      return change.before.word === change.after.word
        ? `portions ${change.before.portions} → ${change.after.portions}`
        : `makes ${count(change.before.portions, change.before.word)} → ${count(change.after.portions, change.after.word)}`;
    case "cooked weight":
      return `stated cooked weight ${weightOr(change.before)} → ${weightOr(change.after)}`;
    case "keeping":
      return sayKeeping(change.part, change.before, change.after);
    case "step":
      return sayStep(change.number, change.before, change.after);
    case "steps":
      return saySteps(change.from, change.before, change.after);
    case "reheating":
      return "reheating reworded";
    case "notes":
      return "notes changed";
    case "tags":
      return sayTags(change.added, change.gone);
    case "wording":
      return "the order or the wording of some lines";
    default:
      return change.code.startsWith("part")
        ? sayPart(change as OfPart)
        : sayLine(change as OfLine, foods);
  }
}

function weightOr(grams: number | null): string {
  return grams === null ? "none" : writeGrams(grams);
}

function sayPart(change: OfPart): string {
  switch (change.code) {
    case "part new":
      return `new part: ${change.name}${change.optional ? " (optional)" : ""}`;
    case "part gone":
      return `part gone: ${change.name}`;
    case "part renamed":
      return `part “${change.before}” is now “${change.after}”`;
    case "part optional":
      return `${change.name} ${change.optional ? "may now be left out" : "is no longer optional"}`;
    case "part makes":
      return `${change.name}: ${arrow(writtenMakes(change.before), writtenMakes(change.after))}`;
  }
}

function writtenMakes(makes: MakesMore | null): string {
  return makes === null
    ? "all of it used"
    : `${writeGrams(makes.usedG)} of ${writeGrams(makes.madeG)} used`;
}

function sayLine(change: OfLine, foods: FoodBook): string {
  switch (change.code) {
    case "line new":
      return `new: ${amountOf(change.at.line.main)}`;
    case "line gone":
      return `gone: ${amountOf(change.at.line.main)}`;
    case "line changed": {
      const said = change.aspects.map((aspect) => sayAspect(aspect, change, foods)).join("; ");
      const name = change.after.line.main.foodText;
      return change.aspects[0] === "amount" ? `${name} ${said}` : `${name}: ${said}`;
    }
  }
}

/** "lemon juice 15 g". */
function amountOf({ foodText, amount }: LineChoice): string {
  return amount === null ? foodText : `${foodText} ${writeAmount(amount)}`;
}

function sayAspect(
  aspect: LineAspect,
  { before, after }: Extract<OfLine, { readonly code: "line changed" }>,
  foods: FoodBook,
): string {
  const [had, has] = [before.line.main, after.line.main];
  switch (aspect) {
    case "name":
      return `was ${had.foodText}`;
    case "amount":
      return arrow(writtenAmount(had), writtenAmount(has));
    case "weight":
      return sayWeight(had, has);
    case "food":
      return sayFood(has, foods);
    case "preparation":
      return has.preparation === "" ? `no longer ${had.preparation}` : has.preparation;
    case "optional":
      return after.line.optional ? "may now be left out" : "no longer optional";
    case "swaps":
      return saySwaps(after.line.swaps);
    case "part":
      return `moved from ${before.part} to ${after.part}`;
    case "wording":
      return "reworded";
  }
}

function writtenAmount({ amount }: LineChoice): string {
  return amount === null ? "no amount" : writeAmount(amount);
}

/** "120 → 100 g": the unit once where both have it. */
function arrow(before: string, after: string): string {
  const [, figure, unit] = /^(\S+)( \S+)$/u.exec(before) ?? [];
  const sharesUnit = figure !== undefined && unit !== undefined && after.endsWith(unit);
  return `${sharesUnit ? figure : before} → ${after}`;
}

function sayWeight(had: LineChoice, has: LineChoice): string {
  if (has.grams === null) return "can no longer be weighed, so it is not counted";
  if (had.grams === null) return `now counted, as ${writeGrams(has.grams)}`;
  if (had.uptake !== has.uptake) {
    return `eaten of it ${arrow(percent(had.uptake), percent(has.uptake))}`;
  }
  const [before, after] = [writeGrams(had.grams), writeGrams(has.grams)];
  return before === after ? "counted a little differently" : `weighs ${arrow(before, after)}`;
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

function sayFood({ foodId }: LineChoice, foods: FoodBook): string {
  if (foodId === null) return "no longer found in the food table, so it is not counted";
  return `now counted as ${foods.byId(foodId)?.name ?? "another food"}`;
}

function saySwaps(swaps: readonly LineChoice[]): string {
  return swaps.length === 0
    ? "no swap any more"
    : `or ${swaps.map((swap) => amountOf(swap)).join(", or ")}`;
}

function sayKeeping(part: string | null, before: StatedKeeping, after: StatedKeeping): string {
  const said: string[] = [];
  if (before.fridgeDays !== after.fridgeDays)
    said.push(sayDays(before.fridgeDays, after.fridgeDays));
  const [had, has] = [freezerOf(before), freezerOf(after)];
  if (had !== has) said.push(`${had} → ${has}`);
  if (said.length === 0) said.push("why it freezes so: reworded");
  return `${part === null ? "" : `${part}: `}${said.join("; ")}`;
}

function sayDays(before: number | null, after: number | null): string {
  if (before === null)
    return `keeps ${count(after ?? 0, "day")} in the fridge, where nothing was said`;
  if (after === null)
    return `no longer says how long it keeps in the fridge (was ${count(before, "day")})`;
  return `keeps ${before} → ${count(after, "day")}`;
}

function freezerOf({ freezes, freezerMonths }: StatedKeeping): string {
  const months = freezerMonths === null ? "" : ` ${count(freezerMonths, "month")}`;
  if (freezes === "no") return "does not freeze";
  if (freezes === "poorly") return `freezes badly${months}`;
  return freezes === null && months === "" ? "nothing on freezing" : `freezes${months}`;
}

/** Times and temperatures that moved are what a cook must see. */
function sayStep(number: number, before: Step, after: Step): string {
  const moved = [
    ...movedFigures(before.minutes, after.minutes, "min"),
    ...movedFigures(before.temperaturesC, after.temperaturesC, "°C"),
  ];
  return moved.length === 0 ? `step ${number} reworded` : `step ${number}: ${moved.join("; ")}`;
}

function movedFigures(
  before: readonly number[],
  after: readonly number[],
  unit: string,
): readonly string[] {
  const write = (figures: readonly number[]) =>
    figures.length === 0 ? `no ${unit}` : `${figures.map(Math.round).join(", ")} ${unit}`;
  const [had, has] = [write(before), write(after)];
  return had === has ? [] : [arrow(had, has)];
}

function saySteps(from: number, before: number, after: number): string {
  if (before === 0) return `new ${stepRun(from, after)}`;
  if (after === 0) return `${stepRun(from, before)} gone`;
  return `${stepRun(from, before)} rewritten, now ${stepRun(from, after)}`;
}

function stepRun(from: number, many: number): string {
  return many === 1 ? `step ${from}` : `steps ${from}–${from + many - 1}`;
}

function sayTags(added: readonly string[], gone: readonly string[]): string {
  const said = [
    added.length === 0 ? "" : `tagged ${added.join(", ")}`,
    gone.length === 0 ? "" : `no longer tagged ${gone.join(", ")}`,
  ];
  return excerpt(said.filter((one) => one !== "").join("; "));
}
