import type { LabelStyle } from "../label/types.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { fold } from "../words/fold.ts";
import { excerpt } from "../words/problems.ts";
import type { LabelProblem } from "./problems.ts";
import { figureOf, isNegative, type Printed, printedAtStart } from "./read-figure.ts";
import type { PackFigure } from "./types.ts";

interface Energy {
  readonly energyKcal: PackFigure | null;
  readonly energyKj: PackFigure | null;
}

/** What packs call a kilocalorie. */
const KCAL = new Set(["kcal", "cal", "cals", "calorie", "calories"]);
const KJ = new Set(["kj", "kilojoule", "kilojoules"]);
/** Below 5 kcal a US label may say 0 (21 CFR 101.9(c)(1)). */
const ZERO_KCAL = 5;

/**
 * Energy as a pack prints it: "520 kJ", "124 kcal", "520 kJ / 124 kcal", "124 kcal (520 kJ)". "Calories"
 * are kilocalories. A number alone is refused: it may be either.
 */
export function readEnergy(text: string, style: LabelStyle): Outcome<Energy, LabelProblem> {
  const folded = fold(text.slice(0, 60));
  const first = printedAtStart(folded);
  if (first === null || isNegative(folded)) return notUnderstood(text);
  if (first.unit === "" && first.rest === "") {
    return fail({ code: "energy without unit", text: excerpt(text) });
  }
  const second = restOf(first.rest);
  if (second === "odd") return notUnderstood(text);
  const both = second === null ? [first] : [first, second];
  const kcal = both.filter(({ unit }) => KCAL.has(unit));
  const kj = both.filter(({ unit }) => KJ.has(unit));
  if (kcal.length > 1 || kj.length > 1 || kcal.length + kj.length < both.length) {
    return notUnderstood(text);
  }
  return ok({
    energyKcal: onlyOne(kcal, (printed) =>
      figureOf(printed, style === "us" ? usHalfStepKcal(printed.value) : 0, ZERO_KCAL),
    ),
    energyKj: onlyOne(kj, (printed) => figureOf(printed, 0, ZERO_KCAL * 4.184)),
  });
}

function onlyOne<T>(list: readonly Printed[], make: (printed: Printed) => T): T | null {
  const [only] = list;
  return only === undefined ? null : make(only);
}

/** The second of two energies: null where there is none, "odd" where something else stands there. */
function restOf(rest: string): Printed | null | "odd" {
  if (rest === "") return null;
  const inside = rest.replace(/^[/|,;(=] ?/u, "").replace(/ ?\)$/u, "");
  const second = printedAtStart(inside);
  return second === null || second.rest !== "" ? "odd" : second;
}

/** US labels round to 5 kcal up to 50 kcal, and to 10 above (21 CFR 101.9(c)(1)). */
function usHalfStepKcal(kcal: number): number {
  return kcal <= 50 ? 2.5 : 5;
}

function notUnderstood(text: string): Outcome<never, LabelProblem> {
  return fail({ code: "energy not understood", text: excerpt(text) });
}
