import type { AllergensFound } from "../../../shared/allergen/find.ts";
import type { LabelWords } from "../../../shared/container-label/types.ts";
import { type LabelInput, labelWords } from "../../../shared/container-label/words.ts";
import { ALLERGENS } from "../../../shared/food/types.ts";
import { batch, date, keeping, lot } from "../../kit/stock.ts";

/** The first `contains` allergens are in it, the next `mayHide` may be hidden. */
export function allergens(contains: number, mayHide = 0, unknown: readonly string[] = []) {
  const list = (from: number, to: number) =>
    ALLERGENS.slice(from, to).map((allergen) => ({ allergen, foods: ["stock cube"] }));
  const found: AllergensFound = {
    contains: list(0, contains),
    mayHide: list(contains, contains + mayHide),
    unknown,
    inSwaps: { contains: [], mayHide: [], unknown: [] },
  };
  return found;
}

export const FROZEN = lot({ place: "freezer", since: date("2026-10-12"), usedDays: 2 });
export const REHEAT =
  "covered with a spoonful of water for 3-4 minutes in the microwave, until 74 °C / 165 °F throughout.";

/** Kept longer than the chart gives, on the coach's word. */
const CHART = { fridgeDays: 3, limitedBy: "Base", remarks: [] };
export const COACHS = batch({
  title: "Lentil and barley pot with a name of some length",
  keeping: keeping({ fridgeDays: 5, longer: { chart: CHART, coach: { ...CHART, fridgeDays: 5 } } }),
});

export function label(rest: Partial<LabelInput> = {}, title = "Barley and lamb pot"): LabelWords {
  return labelWords({
    lot: lot(),
    batch: batch({ title, portionG: 412 }),
    code: "7K3QA",
    style: "eu",
    allergens: allergens(2),
    without: [],
    reheating: [REHEAT],
    ticks: 1,
    ...rest,
  });
}

/** What is hard to print. */
export const HARD: readonly LabelWords[] = [
  label(),
  label({ lot: FROZEN, allergens: allergens(3, 2) }),
  label({}, "Paprika thigh and white bean bake with roasted peppers, and so on and on and on"),
  label({}, "Donaudampfschifffahrtsgesellschaftskapitänsmützeneintopf"),
  label({ lot: FROZEN }, "Картофельная запеканка с грибами и сметаной"),
  label({}, "鶏の照り焼き"),
  label({}, "دجاج بالليمون"),
  label({ lot: FROZEN, allergens: allergens(ALLERGENS.length), ticks: 9 }),
  label({ allergens: allergens(7, 7, ["naan bread", "curry paste", "hot sauce", "dip", "x"]) }),
  label({ allergens: null, reheating: [], ticks: 6, code: "7K3QA4" }),
  label({ batch: COACHS, allergens: allergens(7, 7, ["naan bread"]) }),
  label({ batch: COACHS, lot: FROZEN, allergens: allergens(14), without: ["yoghurt sauce"] }),
  label({}, "חומוס hummus עם פטריות"),
];
