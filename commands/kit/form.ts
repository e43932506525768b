/** The platform's limits for a form. */
export const FORM_LIMITS = {
  titleChars: 45,
  labelChars: 45,
  hintChars: 100,
  valueChars: 4000,
} as const;

/** One text to fill in. */
export interface FormField {
  /** Under which its text comes back. */
  readonly name: string;
  /** At most 45 characters. */
  readonly label: string;
  /** At most 100 characters. */
  readonly hint?: string;
  /** What stands in it at first; at most 4,000 characters. */
  readonly value: string;
  readonly required: boolean;
  /** Several lines, or one. */
  readonly isLong: boolean;
}

/** A form to fill in: one to five texts, sent back together. The platform keeps nothing of a form that is closed. */
export interface Form {
  /** Made by `writePress`: the command and the name of its submission. */
  readonly id: string;
  /** At most 45 characters. */
  readonly title: string;
  readonly fields: readonly FormField[];
}

/** What was filled in, by field name. Comes from a client, so it is input. */
export type FilledForm = Readonly<Record<string, string>>;
