import type { NutrientSum, NutrientSums } from "../../shared/nutrition/types.ts";
import { TARGET_KEYS, type TargetFigures, type TargetKey } from "../../shared/target/types.ts";
import { TARGET_NAMES, writeTargetFigure } from "../../shared/target/write.ts";
import { type Part, type Row, rows } from "../kit/reply.ts";

/**
 * What one portion is of the day's target and what it leaves of it, figure by figure: "34 % of 2,100 kcal",
 * "1,390 kcal left". Nothing else eaten that day is counted. Where the sum is "at least", the share is too,
 * and what is left is "at most". Carbohydrate counts fibre in, in the target and in the portion.
 */
export function targetPart(
  figures: TargetFigures,
  perPortion: NutrientSums,
  portionWord: string,
): Part {
  const list = TARGET_KEYS.flatMap((key): readonly Row[] => {
    const target = figures[key];
    return target === undefined || target <= 0 ? [] : [shareRow(key, target, perPortion[key])];
  });
  return rows(`One ${portionWord} of your day's target, nothing else counted`, list);
}

function shareRow(key: TargetKey, target: number, { amount, atLeast }: NutrientSum): Row {
  const label = key === "carbohydrateG" ? `${TARGET_NAMES[key]}, with fibre` : TARGET_NAMES[key];
  const whole = writeTargetFigure(key, target);
  // A lower bound of nothing says nothing.
  if (atLeast && amount <= 0) return { label, figure: "not known", note: `target ${whole}` };
  const share = `${writePercent((amount / target) * 100)} of ${whole}`;
  return {
    label,
    figure: atLeast ? `at least ${share}` : share,
    note: leftOf(key, target - amount, atLeast),
  };
}

function writePercent(percent: number): string {
  return percent > 0 && percent < 1 ? "below 1 %" : `${Math.round(percent)} %`;
}

function leftOf(key: TargetKey, left: number, atLeast: boolean): string {
  const figure = writeTargetFigure(key, Math.abs(left));
  if (/^(?:0 |below )/u.test(figure)) return "nothing left";
  if (left < 0) return `over by ${atLeast ? "at least " : ""}${figure}`;
  return `${atLeast ? "at most " : ""}${figure} left`;
}
