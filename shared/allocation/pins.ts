import type { Fresh } from "./fresh.ts";
import type { Frozen } from "./frozen.ts";
import type { Shares } from "./halves.ts";
import { asItStands, frozenFirst, type Kitchen, thawed, type Way } from "./kitchen.ts";
import { servingsOf } from "./serve.ts";
import { toFreeze } from "./surplus.ts";
import type { Pin, Serving, Surplus } from "./types.ts";

/** A kitchen after what is kept for single meals has been set aside. */
export interface SetAside {
  readonly servings: readonly Serving[];
  /** To be frozen now so that it lasts until its meal. */
  readonly surplus: readonly Surplus[];
  readonly fresh: readonly Fresh[];
  readonly frozen: readonly Frozen[];
  /** Portions that each meal still takes. */
  readonly places: readonly number[];
}

/**
 * Gives each meal that a batch is kept for its portions of that batch, in order of time: what stands
 * ready in the fridge, first expired first; else what can be thawed in time, oldest first; else what is
 * frozen now and thawed then. Never past its date. A pin that cannot be held is passed over, and its
 * meal is served like any other.
 */
export function setAside(kitchen: Kitchen, pins: readonly Pin[]): SetAside {
  const left = new Map<Shares, number>();
  const leftOf = (one: Shares): number => left.get(one) ?? one.portions;
  const servings: Serving[] = [];
  const surplus: Surplus[] = [];
  const kept = new Map(pins.map((pin) => [pin.slotKey, pin.batchId]));
  const places = kitchen.slots.map((slot, meal) => {
    const batchId = kept.get(slot.key);
    let open = slot.portions;
    while (batchId !== undefined && open > 0) {
      const way = waysTo(kitchen, batchId, meal).find(({ of }) => leftOf(of) > 0);
      if (way === undefined) break;
      open -= 1;
      left.set(way.of, leftOf(way.of) - 1);
      servings.push(...servingsOf(slot, way, "pinned"));
      if (way.kind === "freeze and thaw") {
        surplus.push(...toFreeze(way.of, 1, "kept for a later meal"));
      }
    }
    return open;
  });
  const rest = <Kind extends Shares>(one: Kind): Kind => ({ ...one, portions: leftOf(one) });
  return {
    servings,
    surplus,
    places,
    fresh: kitchen.fresh.map(rest),
    frozen: kitchen.frozen.map(rest),
  };
}

/** Every way in which portions of a batch can come to a meal, the best first. */
export function waysTo(kitchen: Kitchen, batchId: string, meal: number): readonly Way[] {
  const own = ({ batch }: Fresh | Frozen): boolean => batch.id === batchId;
  const fresh = kitchen.fresh.filter(own);
  return [
    ...fresh.map((one) => asItStands(kitchen, one, meal)),
    ...kitchen.frozen.filter(own).map((one) => thawed(kitchen, one, meal)),
    ...fresh.map((one) => frozenFirst(kitchen, one, meal)),
  ].filter((way) => way !== null);
}
