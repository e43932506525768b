import { lotCodes } from "../../shared/container-label/lot-code.ts";
import { isPast } from "../../shared/stock/lot.ts";
import type { Batch, Stock } from "../../shared/stock/types.ts";
import { dateIn, isBefore, type PlainDate } from "../../shared/time.ts";
import { fold } from "../../shared/words/fold.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { type Completer, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { portionsByCode, sayCodeProblem } from "../kit/lot-by-code.ts";
import { loadStock } from "../kit/plan.ts";
import { lotsByUrgency, portionsOf, type Shown, untilOf } from "../kit/say-lot.ts";
import { listed } from "../kit/say-problem.ts";

/** A lot to be labelled, with the code that stands on its labels. */
export interface CodedLot extends Shown {
  readonly code: string;
}

export const EVERYTHING = "everything in stock";
const OFFERED = 25;

/** All of a stock, what must go first at the top. */
export function codedLots(stock: Stock): readonly CodedLot[] {
  const codes = lotCodes(stock.lots);
  return lotsByUrgency(stock).map((one) => ({ ...one, code: codes.get(one.lot.id) ?? "" }));
}

/** Offers what is in stock, each lot by its code. */
export const completeLots: Completer = async ({ stores, member, now }, typed) => {
  const lots = codedLots(await loadStock(stores, member));
  const today = dateIn(now, member.choice.zone);
  const offers = lots.map((one) => ({
    label: `${one.batch.title}, ${one.lot.place}: ${portionsOf(one)}, ${untilOf(one, today)}`,
    value: one.code,
  }));
  const all = lots.length > 1 ? [{ label: EVERYTHING, value: EVERYTHING }] : [];
  return [...all, ...offers]
    .filter(({ label, value }) => fold(`${label} ${value}`).includes(fold(typed)))
    .slice(0, OFFERED);
};

/**
 * The lots that were asked for: by code, by the title of a batch or words of it, everything, or, where
 * nothing was typed, what was cooked last. Of several batches of one title the newest.
 */
export async function lotsAsked(
  context: Context,
  own: Stock,
  typed: string | undefined,
): Promise<readonly CodedLot[]> {
  const all = codedLots(own);
  if (all.length === 0) {
    throw new Refusal("Nothing in stock to label: log what you cook with /batch log.");
  }
  if (typed === undefined) return ofBatch(all, newest(own.batches));
  if ([fold(EVERYTHING), "everything", "all"].includes(fold(typed))) return all;
  const coded = await portionsByCode(context, own, typed);
  if (coded.ok) {
    const { lot, batch } = coded.value;
    return lot === null ? ofBatch(all, batch) : all.filter((one) => one.lot.id === lot.id);
  }
  // Five letters may be a code with a slip, or the name of a dish.
  const named = batchNamed(own.batches, typed);
  if (named !== null) return ofBatch(all, named);
  throw new Refusal(
    coded.problem.code === "not a lot code"
      ? `Nothing in stock is called “${excerpt(typed)}”: type ${listed(titlesOf(own.batches))}, or the code on a label.`
      : sayCodeProblem(coded.problem),
  );
}

function ofBatch(all: readonly CodedLot[], batch: Batch): readonly CodedLot[] {
  return all.filter((one) => one.batch.id === batch.id);
}

function newest([first, ...others]: readonly Batch[]): Batch {
  if (first === undefined) throw new Error("lots without a batch");
  return others.reduce((last, one) => (isBefore(last.cookedAt, one.cookedAt) ? one : last), first);
}

function batchNamed(batches: readonly Batch[], typed: string): Batch | null {
  const words = fold(typed).split(" ");
  const whole = batches.filter(({ title }) => fold(title) === fold(typed));
  const part = batches.filter(({ title }) => words.every((word) => fold(title).includes(word)));
  const fitting = whole.length > 0 ? whole : part;
  if (fitting.length === 0) return null;
  const titles = titlesOf(fitting);
  if (titles.length > 1) {
    throw new Refusal(`“${excerpt(typed)}” fits several: type ${listed(titles)}.`);
  }
  return newest(fitting);
}

function titlesOf(batches: readonly Batch[]): readonly string[] {
  return [...new Set(batches.map(({ title }) => title))].slice(0, 6);
}

/** Parts lots into those that get a label and those that must go. */
export function byPast(
  lots: readonly CodedLot[],
  today: PlainDate,
): { readonly good: readonly CodedLot[]; readonly past: readonly CodedLot[] } {
  return {
    good: lots.filter(({ lot, batch }) => !isPast(lot, batch, today)),
    past: lots.filter(({ lot, batch }) => isPast(lot, batch, today)),
  };
}

/** "Barley pot in the fridge was good until Wed 14 Oct: throw it away." */
export function sayPast(one: CodedLot, today: PlainDate): string {
  const until = untilOf(one, today).replace(/: .*$/u, "");
  const where = one.lot.place === "thawing" ? "thawed in the fridge" : "in the fridge";
  return `${one.batch.title} of ${writeDate(one.batch.cookedOn)}, ${where}, ${until}: throw it away. It gets no label.`;
}
