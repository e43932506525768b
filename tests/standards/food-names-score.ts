import type { FoodBook } from "../../shared/food/book.ts";
import type { LabelledName } from "./food-names.ts";

/** How a way of finding foods does on labelled names. Shares are of the names it could have found. */
export interface NameScore {
  readonly names: number;
  readonly firstPct: number;
  readonly inFivePct: number;
  /** Names whose first answer is another food: worse than no answer. */
  readonly wrongFirst: readonly string[];
  readonly absentNames: number;
  /** Names of foods that the book does not have, for which one was given all the same. */
  readonly wrongAbsent: readonly string[];
}

/** The numbers of the foods found for a text, best first. */
export type FindNumbers = (text: string) => readonly string[];

export function scoreNames(
  book: FoodBook,
  labelled: readonly LabelledName[],
  find: FindNumbers,
): NameScore {
  const numbers = new Set(book.foods.map((food) => food.source.number));
  const answers = labelled.map((name) => ({ name, found: find(name.text).slice(0, 5) }));
  // A food that the table does not have cannot be found: its name must find nothing.
  const isThere = ({ name }: { name: LabelledName }) => name.numbers.some((n) => numbers.has(n));
  const there = answers.filter(isThere);
  const absent = answers.filter((answer) => !isThere(answer));
  const right = (name: LabelledName, found: readonly string[]) =>
    found.length === 0 ? name.mayBeNothing : found.some((number) => name.numbers.includes(number));
  const pct = (count: number) => (100 * count) / there.length;
  const texts = (list: readonly { name: LabelledName }[]) => list.map(({ name }) => name.text);
  return {
    names: there.length,
    firstPct: pct(there.filter(({ name, found }) => right(name, found.slice(0, 1))).length),
    inFivePct: pct(there.filter(({ name, found }) => right(name, found)).length),
    wrongFirst: texts(
      there.filter(({ name, found }) => found.length > 0 && !right(name, found.slice(0, 1))),
    ),
    absentNames: absent.length,
    wrongAbsent: texts(absent.filter(({ found }) => found.length > 0)),
  };
}
