import { z } from "zod";
import { type CauseId, type LotId, lotId } from "../../shared/ids.ts";
import { byChart, whoseWord } from "../../shared/keeping/coach-word.ts";
import { discardBy } from "../../shared/keeping/dates.ts";
import { fail, type Outcome } from "../../shared/outcome.ts";
import { decideCorrect } from "../../shared/stock/correct.ts";
import { decideMove, type Move, type MoveKind } from "../../shared/stock/decide.ts";
import { batchOf, isPast } from "../../shared/stock/lot.ts";
import type { StockStep, When } from "../../shared/stock/movement.ts";
import type { StockProblem } from "../../shared/stock/problems.ts";
import type { Batch, Lot, Stock } from "../../shared/stock/types.ts";
import { dateIn, type Instant } from "../../shared/time.ts";
import { writeHalves } from "../../shared/words/halves.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { changeStock } from "../kit/plan.ts";
import type { Shown } from "../kit/say-lot.ts";
import { sayStockProblem } from "../kit/say-stock-problem.ts";

/** Moves of portions and counts put right, from a button or from a command. */

const DONE: Readonly<Record<MoveKind, string>> = {
  ate: "Ate",
  froze: "Froze",
  "set to thaw": "Set to thaw:",
  gave: "Gave away",
  "threw away": "Threw away",
};

/** A button's argument that names a lot. */
export const lotArgument = z
  .string()
  .regex(/^[0-9a-z]{1,32}$/u)
  .transform(lotId);
/** A button's argument that is a number of portions. */
export const portionsArgument = z.coerce.number().multipleOf(0.5).min(0).max(100_000);

/** What is to be written, what caused it and when it happened. */
interface Writing {
  readonly cause: CauseId;
  /** How many portions the asker saw in the lot; null to take it as it is. */
  readonly seen: number | null;
  readonly at: Instant;
}

/** Moves portions and says what was done; null when this very cause was carried out before. */
export function move(context: Context, wish: Move, writing: Writing): Promise<string | null> {
  return write(context, wish.lotId, writing, {
    decide: (own, when) => decideMove(own, wish, when, () => lotId(context.newId())),
    say: (own, lot, when) => sayMoved(own, lot, wish, when),
  });
}

/**
 * Puts a count right and says what was done; null when this very cause was carried out before. `emptied` is
 * the lot where nothing was left of it: it comes back with the dates it had.
 */
export function correct(
  context: Context,
  wish: { readonly lotId: LotId; readonly counted: number; readonly emptied?: Shown },
  writing: Writing,
): Promise<string | null> {
  const { emptied } = wish;
  return write(context, wish.lotId, writing, {
    ...(emptied === undefined ? {} : { emptied }),
    decide: (own, when) => decideCorrect(own, wish, when),
    say: (own, lot) => {
      const { title, portionWord } = batchOf(own.batches, lot.batchId);
      return `Counted anew: ${count(wish.counted, portionWord)} of ${title} in the ${placeName(lot)}, not ${writeHalves(lot.portions)}.`;
    },
  });
}

interface Deed {
  /** The lot as it is if by now nothing is left of it. */
  readonly emptied?: Shown;
  readonly decide: (own: Stock, when: When) => Outcome<StockStep, StockProblem>;
  readonly say: (own: Stock, lot: Lot, when: When) => string;
}

async function write(
  context: Context,
  id: LotId,
  { cause, seen, at }: Writing,
  deed: Deed,
): Promise<string | null> {
  const { stores, member, now, newId } = context;
  const zone = member.choice.zone;
  const when = { at, on: dateIn(at, zone) };
  let said = "";
  const changed = await changeStock({
    stores,
    member,
    now,
    causeId: cause,
    newId,
    ...(deed.emptied === undefined ? {} : { emptied: [deed.emptied.batch] }),
    decide: (loaded) => {
      const own = deed.emptied === undefined ? loaded : withEmptied(loaded, deed.emptied);
      const lot = own.lots.find((one) => one.id === id);
      if (lot === undefined || (seen !== null && lot.portions !== seen))
        return fail({ code: "lot is gone" });
      said = deed.say(own, lot, when);
      return deed.decide(own, when);
    },
  });
  if (!changed.ok) throw new Refusal(sayStockProblem(changed.problem, zone));
  return changed.value.already ? null : said;
}

function withEmptied(own: Stock, { lot, batch }: Shown): Stock {
  const hasLot = own.lots.some(({ id }) => id === lot.id);
  const hasBatch = own.batches.some(({ id }) => id === batch.id);
  return {
    ...own,
    lots: hasLot ? own.lots : [...own.lots, lot],
    batches: hasBatch ? own.batches : [...own.batches, batch],
  };
}

function sayMoved(own: Stock, lot: Lot, wish: Move, { on }: When): string {
  const batch = batchOf(own.batches, lot.batchId);
  const why = wish.reason == null ? "" : `, ${wish.reason}`;
  const base = `${DONE[wish.kind]} ${count(wish.portions, batch.portionWord)} of ${batch.title}${why}.`;
  if (wish.kind === "ate" && isPast(lot, batch, on)) {
    return `${base} It was past its date: if anyone feels unwell, call a doctor and say so.`;
  }
  // USDA FSIS: cooked food thawed in the fridge may be frozen again; the quality suffers.
  if (wish.kind === "froze" && lot.place === "thawing") {
    return `${base} Frozen a second time is safe when it stayed in the fridge, but softer: eat it first.`;
  }
  return wish.kind === "gave" ? `${base}${toTell(lot, batch)}` : base;
}

/** What whoever gets portions on the coach's word must know: the giver's table is not theirs. */
function toTell(lot: Lot, { keeping }: Batch): string {
  const last = whoseWord(keeping) === "coach" ? discardBy(lot, byChart(keeping)) : null;
  return last === null
    ? ""
    : ` Tell them: its date is the coach's word. With somebody pregnant, under five, over 65 or with a weak immune system, eat it by ${writeDate(last)}.`;
}

function placeName({ place }: Lot): string {
  return place === "freezer" ? "freezer" : "fridge";
}

/** The asker's own lot; a sentence when it is empty, unknown or somebody else's. */
export async function ownLot(context: Context, own: Stock, id: LotId): Promise<Lot> {
  const lot = own.lots.find((one) => one.id === id);
  if (lot !== undefined) return lot;
  const other = await context.stores.stocks.findLot(id);
  if (other !== null && other.batch.memberId !== context.member.id) {
    throw new Refusal("Those portions are not yours. Type /stock to see your own.");
  }
  throw new Refusal(sayStockProblem({ code: "lot is gone" }, context.member.choice.zone));
}

export function stale(): Refusal {
  return new Refusal("That button is too old to work. Type /stock for a fresh one.");
}
