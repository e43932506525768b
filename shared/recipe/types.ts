import type { FoodId } from "../ids.ts";
import type { Amount } from "../quantity/types.ts";

/** Names of foods as the coach wrote them (folded) -> the entry of the food table that they say they mean. */
export type TakenFoods = Readonly<Record<string, FoodId>>;

/** One way to fill a line: an amount of a food. */
export interface LineChoice {
  /** Null for "to taste". */
  readonly amount: Amount | null;
  /** The food as the coach wrote it, without amount and preparation. */
  readonly foodText: string;
  /** The entry of the food table it was taken for; null when none was found. */
  readonly foodId: FoodId | null;
  /** What is done to it before use ("diced"); empty when nothing. */
  readonly preparation: string;
  /** Edible grams for the recipe as written; null when it cannot be weighed (and the line is then unmeasured). */
  readonly grams: number | null;
  /** Share of the grams that is eaten, 0 to 1: frying oil and marinades are partly left behind. */
  readonly uptake: number;
  /**
   * Grams of the table's food in one gram of the line: 1, but where the line is written cooked and the
   * table has the dry food (below 1), or the other way round (above 1).
   */
  readonly tableGPerG: number;
}

/** One ingredient of a component. */
export interface Line {
  /** Stable within the revision: "<component index>.<line index>". */
  readonly key: string;
  /** The line exactly as the coach wrote it. */
  readonly text: string;
  readonly main: LineChoice;
  /** Alternatives ("or 25 g oil"), in the order written. */
  readonly swaps: readonly LineChoice[];
  readonly optional: boolean;
}

/** What the coach states about keeping; null where nothing is stated. */
export interface StatedKeeping {
  readonly fridgeDays: number | null;
  readonly freezerMonths: number | null;
  readonly freezes: "well" | "poorly" | "no" | null;
  /** Why it freezes badly, in the coach's words; empty when not said. */
  readonly reason: string;
}

/** A part of a recipe that is made and kept apart. */
export interface Component {
  readonly name: string;
  readonly optional: boolean;
  readonly lines: readonly Line[];
  readonly keeping: StatedKeeping;
  /** Where the coach says that it makes more than the recipe uses; null or not there: all of it is used. */
  readonly makes?: MakesMore | null | undefined;
}

/** "(makes 300 g, 180 g used)": grams for the recipe as written; used is above 0 and at most made. */
export interface MakesMore {
  readonly madeG: number;
  readonly usedG: number;
}

export interface Step {
  readonly text: string;
  /** Temperatures named in the step, degrees Celsius, in order. */
  readonly temperaturesC: readonly number[];
  /** Durations named in the step, minutes (upper end of a range), in order. */
  readonly minutes: readonly number[];
}

/** A recipe as published: one immutable revision's content. */
export interface Recipe {
  readonly title: string;
  readonly portions: number;
  /** What a portion is called ("portion", "wrap"). */
  readonly portionWord: string;
  /** Cooked mass of the whole as the coach states it, grams; null when not stated. */
  readonly yieldG: number | null;
  readonly tags: readonly string[];
  readonly components: readonly Component[];
  readonly steps: readonly Step[];
  /** What is stated for the whole. */
  readonly keeping: StatedKeeping;
  readonly reheating: readonly string[];
  readonly notes: readonly string[];
}
