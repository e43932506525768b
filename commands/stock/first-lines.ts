import type { Allocation } from "../../shared/allocation/types.ts";
import { isPast } from "../../shared/stock/lot.ts";
import { dateIn, type Instant, type PlainDate } from "../../shared/time.ts";
import { canThaw, mealOf, portionsOf, type Shown, untilOf } from "../kit/say-lot.ts";

interface Asked {
  readonly allocation: Allocation;
  readonly now: Instant;
  readonly zone: string;
}

/** So many lots are named in one line. */
const NAMED = 3;

/**
 * The two lines every board begins with: what must go and what is eaten next. Food past its date comes
 * first of all; else the next meal does. `shown` is in the order in which lots must go.
 */
export function firstLines(asked: Asked, shown: readonly Shown[]): readonly [string, string] {
  const today = dateIn(asked.now, asked.zone);
  const past = shown.filter(({ lot, batch }) => isPast(lot, batch, today));
  const good = shown.filter((one) => !past.includes(one));
  if (shown.length === 0) return ["Nothing in stock.", ""];
  const next = nextLine(asked, good, today);
  return past.length > 0 ? [throwLine(past), next] : [next, mustGoLine(good, today)];
}

function throwLine(past: readonly Shown[]): string {
  const named = past.slice(0, NAMED).map((one) => `${portionsOf(one)} of ${one.batch.title}`);
  const more = past.length - named.length;
  const all = more > 0 ? [...named, `${more} more`] : named;
  const [last = "", ...before] = [...all].reverse();
  const list = before.length === 0 ? last : `${before.reverse().join(", ")} and ${last}`;
  return `Throw away ${list}: past ${past.length === 1 ? "its date" : "their dates"}.`;
}

function nextLine(asked: Asked, good: readonly Shown[], today: PlainDate): string {
  const [serving] = asked.allocation.servings;
  const planned = good.find(({ lot }) => lot.id === serving?.lotId);
  if (serving !== undefined && planned !== undefined) {
    const isFrozen = planned.lot.place === "freezer";
    const where =
      serving.from !== "freezer" ? "" : isFrozen ? ", still in the freezer" : ", to be frozen now";
    return `Next: ${planned.batch.title}${where}, ${mealOf(serving, asked.zone)}.`;
  }
  const [first] = good;
  if (first === undefined) return "Nothing else is in stock.";
  if (first.lot.place !== "freezer") {
    return `Next: ${first.batch.title}, ${untilOf(first, today)}; no meal is planned for it.`;
  }
  const how = canThaw(first) ? "set it to thaw a full day ahead" : "heat it straight from frozen";
  return `Next: ${first.batch.title} from the freezer; ${how}.`;
}

/** The first to go of what is still good. */
function mustGoLine(good: readonly Shown[], today: PlainDate): string {
  const [first] = good;
  if (first === undefined || first.lot.place === "freezer")
    return "Nothing has to go: all of it is in the freezer.";
  return `First to go: ${portionsOf(first)} of ${first.batch.title}, ${untilOf(first, today)}.`;
}
