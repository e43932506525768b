import type { Allocation, Serving } from "../../shared/allocation/types.ts";
import { bestBefore, discardBy } from "../../shared/keeping/dates.ts";
import { type DayMark, type StockBar, sayMarks } from "../../shared/picture/stock-alt.ts";
import { stockPicture } from "../../shared/picture/stock-picture.ts";
import { isPast, lotAfterMove } from "../../shared/stock/lot.ts";
import type { Stock } from "../../shared/stock/types.ts";
import { dateIn, type Instant, type PlainDate } from "../../shared/time.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import type { Context } from "../kit/context.ts";
import { loadStock, planFor } from "../kit/plan.ts";
import { writePress } from "../kit/press.ts";
import { type Reply, reply, rows, text } from "../kit/reply.ts";
import { lotsByUrgency, portionsOf, type Shown, untilAndWhose } from "../kit/say-lot.ts";
import { firstLines } from "./first-lines.ts";

interface PictureInput {
  readonly stock: Stock;
  readonly allocation: Allocation;
  readonly now: Instant;
  readonly zone: string;
}

/** So many rows say what a picture shows; the board has the rest. */
const ROWS_MAX = 25;

/** The coming two weeks of the asker's own stock, drawn, and the same in rows. */
export async function showPicture({ stores, member, now }: Context): Promise<Reply> {
  const stock = await loadStock(stores, member);
  const meals = await stores.meals.list(member.id);
  const { allocation } = planFor(stock, meals, member.choice, now);
  return pictureReply({ stock, allocation, now, zone: member.choice.zone });
}

function pictureReply(input: PictureInput): Reply {
  const { now, zone } = input;
  const bars = barsOf(input);
  const [first, second] = firstLines(input, lotsByUrgency(input.stock));
  const more = bars.length - ROWS_MAX;
  return reply(first, {
    parts: [
      ...(second === "" ? [] : [text(second)]),
      ...(bars.length === 0
        ? []
        : [rows("The coming two weeks", bars.slice(0, ROWS_MAX).map(rowOf))]),
      ...(more > 0 ? [text(`and ${more} more: type /stock for all.`)] : []),
    ],
    pictures: [stockPicture({ bars, now, zone })],
    buttons: [{ id: writePress("stock", "board"), label: "Back", weight: "plain" }],
  });
}

function rowOf(bar: StockBar) {
  return {
    label: bar.title,
    figure: bar.portions,
    note: [bar.kind === "past" ? "throw away" : "", bar.until, ...sayMarks(bar)]
      .filter((one) => one !== "")
      .join("; "),
  };
}

/** Every lot in the order in which it must go, what is to be frozen now before what is frozen. */
function barsOf(input: PictureInput): readonly StockBar[] {
  const shown = lotsByUrgency(input.stock);
  const isFrozen = ({ lot }: Shown): boolean => lot.place === "freezer";
  return [
    ...shown.filter((one) => !isFrozen(one)).flatMap((one) => lotBar(one, input)),
    ...shown.flatMap((one) => toFreezeBar(one, input)),
    ...shown.filter(isFrozen).flatMap((one) => lotBar(one, input)),
  ];
}

function lotBar(one: Shown, input: PictureInput): readonly StockBar[] {
  const { lot, batch } = one;
  const today = dateIn(input.now, input.zone);
  const last = discardBy(lot, batch.keeping) ?? bestBefore(lot, batch.keeping);
  if (last === null) return [];
  const past = isPast(lot, batch, today);
  const own = servingsFrom(input, one, lot.place === "freezer");
  return [
    {
      kind: past ? "past" : lot.place,
      title: batch.title,
      portions: portionsOf(one),
      until: past ? `was good until ${writeDate(last)}` : untilAndWhose(one, today),
      from: lot.since,
      last,
      ...marksOf(own, input.zone),
    },
  ];
}

/** Portions still in the fridge that no meal takes in time, as they will be once frozen today. */
function toFreezeBar(one: Shown, input: PictureInput): readonly StockBar[] {
  const { lot, batch } = one;
  const spare = input.allocation.surplus.find(
    ({ lotId, advice }) => lotId === lot.id && advice === "freeze",
  );
  const today = dateIn(input.now, input.zone);
  const frozen = lotAfterMove(lot, "freezer", { id: lot.id, at: input.now, on: today });
  const last = bestBefore(frozen, batch.keeping);
  if (spare === undefined || last === null) return [];
  return [
    {
      kind: "to freeze",
      title: batch.title,
      portions: portionsOf(one, spare.portions),
      until: `best before ${writeDate(last)}`,
      from: today,
      last,
      ...marksOf(servingsFrom(input, one, true), input.zone),
    },
  ];
}

/** The meals a lot serves from the freezer, or the others. */
function servingsFrom(
  { allocation }: PictureInput,
  { lot }: Shown,
  frozen: boolean,
): readonly Serving[] {
  return allocation.servings.filter(
    ({ lotId, from }) => lotId === lot.id && (from === "freezer") === frozen,
  );
}

function marksOf(servings: readonly Serving[], zone: string): Pick<StockBar, "meals" | "thaws"> {
  return {
    meals: byDay(servings.map(({ slot }) => slot.date)),
    thaws: byDay(servings.flatMap(({ thawAt }) => (thawAt === null ? [] : dateIn(thawAt, zone)))),
  };
}

/** Days in order, each with how often it occurs. */
function byDay(dates: readonly PlainDate[]): readonly DayMark[] {
  const found = new Map<string, { readonly date: PlainDate; portions: number }>();
  for (const date of dates) {
    const day = found.get(date.toString()) ?? { date, portions: 0 };
    found.set(date.toString(), { date, portions: day.portions + 1 });
  }
  return [...found]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { date, portions }]) => ({ date, portions: String(portions) }));
}
