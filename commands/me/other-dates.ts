import { discardBy } from "../../shared/keeping/dates.ts";
import { batchOf, isPast } from "../../shared/stock/lot.ts";
import type { Stock } from "../../shared/stock/types.ts";
import type { PlainDate } from "../../shared/time.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { portionsOf, type Shown } from "../kit/say-lot.ts";

/**
 * What is in the fridge and has another last day since who eats along was stated, as sentences: what is
 * past it first. The coach's longer times end with the first vulnerable person, and are back without.
 */
export function sayOtherDates(before: Stock, after: Stock, today: PlainDate): readonly string[] {
  const changed = after.lots.flatMap((lot) => {
    const batch = batchOf(after.batches, lot.batchId);
    const old = before.batches.find(({ id }) => id === lot.batchId) ?? batch;
    const last = discardBy(lot, batch.keeping);
    const lastBefore = discardBy(lot, old.keeping);
    if (last === null || lastBefore === null || last.equals(lastBefore)) return [];
    return [{ one: { lot, batch }, last, isOver: isPast(lot, batch, today) }];
  });
  const over = changed.filter(({ isOver }) => isOver);
  const rest = changed.filter(({ isOver }) => !isOver);
  return [
    ...over.map(
      ({ one, last }) =>
        `Throw away ${nameOf(one)}: by the chart, which counts for your table, good until ${writeDate(last)}.`,
    ),
    ...rest.map(({ one, last }) => `Another date: ${nameOf(one)}, eat by ${writeDate(last)}.`),
  ];
}

function nameOf(one: Shown): string {
  return `${portionsOf(one)} of ${one.batch.title}`;
}
