import type { Batch, Stock } from "../../shared/stock/types.ts";
import { foldWords } from "../../shared/words/fold.ts";
import type { Completer } from "../kit/command.ts";
import { lotsByUrgency } from "../kit/say-lot.ts";

/** The platform's limits for what it offers while somebody types. */
const OFFERED = 25;
const OFFER_CHARS = 100;

/**
 * Which batches in stock are meant by what was typed: those of exactly that title, else those whose
 * title holds all its words. Nothing typed means all of them.
 */
export function meantBy(stock: Stock, typed: string | undefined): (batch: Batch) => boolean {
  const wanted = foldWords(typed ?? "");
  if (wanted === "") return () => true;
  const isExact = (batch: Batch): boolean => foldWords(batch.title) === wanted;
  if (stock.batches.some(isExact)) return isExact;
  return ({ title }) => {
    const words = foldWords(title).split(" ");
    return wanted.split(" ").every((word) => words.some((one) => one.startsWith(word)));
  };
}

/** Offers the titles in the asker's stock, what must go first first. */
export const completeInStock: Completer = async ({ stores, member }, typed) => {
  const stock = await stores.stocks.load(member.id);
  const isMeant = meantBy(stock, typed);
  const titles = lotsByUrgency(stock)
    .filter(({ batch }) => isMeant(batch))
    .map(({ batch }) => batch.title.slice(0, OFFER_CHARS));
  return [...new Set(titles)].slice(0, OFFERED).map((title) => ({ label: title, value: title }));
};
