import type { Place, Stock } from "../../shared/stock/types.ts";
import { dateIn } from "../../shared/time.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { type Completer, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { writePress } from "../kit/press.ts";
import { type Reply, reply } from "../kit/reply.ts";
import { lotsByUrgency, portionsOf, type Shown, untilOf } from "../kit/say-lot.ts";
import { meantBy } from "./in-stock.ts";

const OFFERED = 25;

/** "Barley pot, fridge: 3 portions, eat by Wed 14 Oct". */
function sayLot(one: Shown, { now, member }: Context): string {
  const until = untilOf(one, dateIn(now, member.choice.zone));
  return `${one.batch.title}, ${one.lot.place}: ${portionsOf(one)}, ${until}`;
}

/** Offers the asker's lots one by one; what is picked names the very lot. */
export const completeLot: Completer = async (context, typed) => {
  const stock = await context.stores.stocks.load(context.member.id);
  return lotsIn(stock, typed, undefined)
    .slice(0, OFFERED)
    .map((one) => ({ label: sayLot(one, context).slice(0, 100), value: one.lot.id }));
};

/** The lots meant by a lot's id or the words of a title, and a place; what must go first first. */
function lotsIn(stock: Stock, typed: string, place: Place | undefined): readonly Shown[] {
  const all = lotsByUrgency(stock);
  const picked = all.filter(({ lot }) => lot.id === typed);
  if (picked.length > 0) return picked;
  const isMeant = meantBy(stock, typed);
  return all.filter(
    ({ lot, batch }) => isMeant(batch) && (place === undefined || lot.place === place),
  );
}

/** The one lot that is meant; several are offered to pick from; refuses when there is none. */
export function whichLot(
  context: Context,
  stock: Stock,
  asked: {
    readonly recipe: string;
    readonly place?: Place | undefined;
    /** Where it can only have been, given what was done with it; everywhere when not given. */
    readonly places?: readonly Place[] | undefined;
  },
): Shown | Reply {
  const all = lotsIn(stock, asked.recipe, asked.place);
  const possible = all.filter(({ lot }) => asked.places?.includes(lot.place) ?? true);
  // Where none is possible, why not is better said of the lot itself.
  const found = possible.length > 0 ? possible : all;
  const [only] = found;
  if (only === undefined) {
    const where =
      asked.place === undefined ? "in stock" : `in stock at that place (${asked.place})`;
    throw new Refusal(
      `There is no “${excerpt(asked.recipe)}” ${where}. Type /stock to see what there is.`,
    );
  }
  if (found.length === 1) return only;
  return reply(`${found.length} kinds of portions are meant: pick one. Nothing was changed.`, {
    choices: [
      {
        id: writePress("stock", "lot"),
        placeholder: "Which of these?",
        options: found.slice(0, OFFERED).map((one) => ({
          value: one.lot.id,
          label: `${one.batch.title}, ${one.lot.place}`.slice(0, 100),
          hint: sayLot(one, context).split(": ").at(-1)?.slice(0, 100) ?? "",
        })),
      },
    ],
  });
}
