/** The resolved keeping time of a whole batch: what its dates are computed from. */
export interface KeepingTime {
  /**
   * Days in the fridge after the day of cooking: cooked Sunday with 3 is good to the end of Wednesday.
   * Never above 6: the day of preparation is day one of at most seven (FDA Food Code 3-501.17).
   */
  readonly fridgeDays: number;
  /** Months of best quality in the freezer; null where it is not frozen. */
  readonly freezerMonths: number | null;
  readonly freezes: "well" | "poorly" | "no";
  /** Why it freezes badly; empty when it freezes well. */
  readonly reason: string;
  /** The part that decides the fridge time. */
  readonly limitedBy: string;
  /** Sentences for the card: where the coach states longer than the chart, and the like. */
  readonly remarks: readonly string[];
}
