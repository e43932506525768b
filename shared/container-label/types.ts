/** What is said in one place of a label, from its longest form to its shortest; null to leave it off. */
export interface LabelNote {
  readonly id: NoteId;
  readonly forms: readonly (string | null)[];
}

export type NoteId = "after" | "cooked" | "without" | "thaw" | "portion" | "allergens" | "reheat";

/** A label in words, before it is known how much room there is. */
export interface LabelWords {
  /** Empty where our font cannot print it: a line to write on stands instead. */
  readonly name: string;
  /** "Eat by" or "Best before". */
  readonly lead: string;
  /** "Tue 12 Jan 2027", and as it may stand in a narrow line: "Tue 12 Jan" where the year follows from the rest. */
  readonly date: string;
  readonly dateShort: string;
  readonly code: string;
  /** One place to tick for each portion that the label stands for. */
  readonly ticks: number;
  /** In the order in which they stand. */
  readonly notes: readonly LabelNote[];
}
