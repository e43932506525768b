/** Whose rules a group's figures follow: 21 CFR 101.9, or Regulation (EU) No 1169/2011. */
export type LabelStyle = "us" | "eu";

/**
 * How an amount stands to the truth. "at least": something was missing from it. "up to": something was
 * missing that would be taken off.
 */
type Bound = "exact" | "at least" | "up to";

export interface BoundedAmount {
  readonly amount: number;
  readonly bound: Bound;
}

/** What the EU's figures need besides the sums, for the same mass of food. */
export interface LabelExtras {
  readonly alcoholG: number;
  /** Carbohydrate (with fibre) of the foods whose fibre nobody knows: any part of it may be fibre. */
  readonly unknownFibreCarbohydrateG: number;
}

/** A figure as a label prints it. */
export interface LabelFigure {
  /** With its unit: "12 g", "less than 1 g", "at least 230 kcal", "not known". */
  readonly text: string;
  /** Percent of the day's value, "15 %"; null where the law or our table has none. */
  readonly dailyValue: string | null;
}

/** One line of a panel. */
export interface LabelRow {
  /** As the law names it. */
  readonly name: string;
  /** Part of the row before it: saturated fat of fat. */
  readonly isPart: boolean;
  readonly figure: LabelFigure;
}

/** What stands on a panel, in the order in which the law puts it. */
export interface LabelName<Key extends string> {
  readonly key: Key;
  readonly name: string;
  readonly isPart: boolean;
}
