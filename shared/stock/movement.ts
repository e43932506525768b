import type { LotId } from "../ids.ts";
import type { Instant, PlainDate } from "../time.ts";
import type { Lot, Movement } from "./types.ts";

/** When something happened to the stock. */
export interface When {
  readonly at: Instant;
  /** The member's calendar date at that instant. */
  readonly on: PlainDate;
}

/** What a decision does: the movements, and every lot it touches as it is afterwards. */
export interface StockStep {
  readonly movements: readonly Movement[];
  readonly lots: readonly Lot[];
}

/** A movement of portions that are there; `to` null takes them out of the stock. */
export function movementOf(
  kind: Movement["kind"],
  from: Lot,
  portions: number,
  when: When,
  to: LotId | null,
): Movement {
  const { at, on } = when;
  const { id, batchId } = from;
  return { kind, batchId, portions, from: id, to, at, on, undoes: null, reason: null };
}
