import { roundTo } from "../quantity/round.ts";
import type { Amount, SpoonSet } from "../quantity/types.ts";
import { writeAmount } from "../quantity/write-amount.ts";
import type { LineChoice } from "./types.ts";

/** One food of a scaled recipe. */
export interface ScaledAmount {
  /** The choice with its amount and grams scaled. */
  readonly choice: LineChoice;
  /** The amount as it is measured out ("1.2 kg", "2", "1½ tsp"); "to taste" where none is given. */
  readonly written: string;
  /** Edible grams, after whole foods were rounded to whole; null when it cannot be weighed. */
  readonly grams: number | null;
  /** By how many grams rounding to whole pieces changed the line; 0 when nothing was rounded. */
  readonly roundedByG: number;
}

/**
 * Which way pieces become whole: to the nearest and at least one, or down where no more than that is in
 * hand (and then less than one stays a part of one).
 */
export type Rounding = "nearest" | "down";

/** Scales one choice: exactly, but for foods counted in pieces, which come whole. */
export function scaleChoice(
  choice: LineChoice,
  factor: number,
  spoons: SpoonSet,
  rounding: Rounding = "nearest",
): ScaledAmount {
  const { amount, grams } = choice;
  const exactG = grams === null ? null : grams * factor;
  if (amount === null) {
    return {
      choice: { ...choice, grams: exactG },
      written: "to taste",
      grams: exactG,
      roundedByG: 0,
    };
  }
  const scaled = times(amount, factor);
  const whole =
    amount.unit === "piece" && factor !== 1 ? wholePieces(scaled, amount, rounding) : scaled;
  const measuredG = exactG === null ? null : (exactG * middle(whole)) / middle(scaled);
  return {
    choice: { ...choice, amount: whole, grams: measuredG },
    written: writeAmount(whole, spoons),
    grams: measuredG,
    roundedByG: whole === scaled ? 0 : (measuredG ?? 0) - (exactG ?? 0),
  };
}

function times(amount: Amount, factor: number): Amount {
  const { value, to, unit } = amount;
  return { value: value * factor, to: to === null ? null : to * factor, unit };
}

/** To whole pieces; where the recipe itself takes half a lemon, to halves. */
function wholePieces(scaled: Amount, asWritten: Amount, rounding: Rounding): Amount {
  const step = [1, 0.5, 0.25].find((size) => Number.isInteger(asWritten.value / size)) ?? 0.25;
  const round = (value: number) => {
    if (rounding === "nearest") return Math.max(step, roundTo(value, step));
    // A hair's tolerance: three eggs in hand are three, whatever binary fractions make of them.
    const whole = Math.floor(value / step + 1e-9) * step;
    return whole === 0 ? value : whole;
  };
  const value = round(scaled.value);
  const to = scaled.to === null ? null : round(scaled.to);
  return { value, to: to === value ? null : to, unit: scaled.unit };
}

function middle({ value, to }: Amount): number {
  return to === null ? value : (value + to) / 2;
}
