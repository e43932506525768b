import type { Allocation, Surplus } from "../../shared/allocation/types.ts";
import type { PlainDate } from "../../shared/time.ts";
import { portionsOf, type Shown, staysThawable, untilOf } from "./say-lot.ts";

/** What to freeze now and what is spare, a sentence or two each, with the reason. */
export function surplusLines(
  { surplus }: Allocation,
  shown: readonly Shown[],
  today: PlainDate,
): readonly string[] {
  return surplus.flatMap((spare) => {
    const one = shown.find((candidate) => candidate.lot.id === spare.lotId);
    if (one === undefined) return [];
    return [
      spare.advice === "freeze" ? freezeLine(one, spare, today) : spareLine(one, spare, today),
    ];
  });
}

function freezeLine(one: Shown, spare: Surplus, today: PlainDate): string {
  const what = `${portionsOf(one, spare.portions)} of ${one.batch.title}`;
  const [them, their] = pronouns(spare);
  if (spare.why === "kept for a later meal") {
    return `Freeze now: ${what}, so that ${them === "it" ? "it lasts" : "they last"} until the meal you pinned.`;
  }
  const how = staysThawable(one, today)
    ? ""
    : ` Then heat ${them} straight from frozen: too few days are left to thaw ${them} in the fridge.`;
  return `Freeze now: ${what}. No meal takes ${them} before ${their} date.${how}`;
}

function spareLine(one: Shown, spare: Surplus, today: PlainDate): string {
  const what = `${portionsOf(one, spare.portions)} of ${one.batch.title}`;
  if (spare.why === "half a portion") {
    return `Spare: ${what}. A meal takes whole portions: have it beside something, ${untilOf(one, today)}.`;
  }
  const [them, their] = pronouns(spare);
  return `Spare: ${what}. No meal takes ${them} before ${their} date${whyNotFrozen(one)}. Eat ${them} sooner or give ${them} away.`;
}

function pronouns({ portions }: Surplus): readonly [string, string] {
  return portions <= 1 ? ["it", "its"] : ["them", "their"];
}

function whyNotFrozen({ batch }: Shown): string {
  const { freezes, reason } = batch.keeping;
  if (freezes === "well") return "";
  return `, and it freezes badly${reason === "" ? "" : ` (${reason})`}`;
}
