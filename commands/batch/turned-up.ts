import { lotByCode } from "../../shared/container-label/lot-code.ts";
import type { Stock } from "../../shared/stock/types.ts";
import type { Context } from "../kit/context.ts";
import type { Shown } from "../kit/say-lot.ts";

/**
 * The asker's lot whose label says this code, also when by the records nothing is left of it: a box that
 * turned up behind the others has its own dates still. Null when it is no code of theirs.
 */
export async function lotOfLabel(
  { stores, member }: Pick<Context, "stores" | "member">,
  own: Stock,
  typed: string,
): Promise<Shown | null> {
  const found = lotByCode(typed, await stores.stocks.everyLot(member.id));
  if (!found.ok) return null;
  const lot = own.lots.find(({ id }) => id === found.value.id);
  const batch = own.batches.find(({ id }) => id === lot?.batchId);
  if (lot !== undefined && batch !== undefined) return { lot, batch };
  return stores.stocks.findLot(found.value.id);
}
