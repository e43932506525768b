/** A time in the fridge and what it rests on: that of the published chart, or that of the coach. */
export interface FridgeTime {
  readonly fridgeDays: number;
  /** The part that decides it. */
  readonly limitedBy: string;
  /** Sentences for the card that go with it. */
  readonly remarks: readonly string[];
}

/** Both times where the coach has confirmed a longer one than the chart's. Kept in the batch as long as it lasts. */
export interface LongerTime {
  readonly chart: FridgeTime;
  readonly coach: FridgeTime;
}

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
  /**
   * Where the coach has confirmed longer than the chart: both, for which of them counts depends on who
   * eats (`countedFor`). Else null.
   */
  readonly longer: LongerTime | null;
}
