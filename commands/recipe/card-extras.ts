import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import { writeGrams } from "../../shared/quantity/write-amount.ts";
import { type Marinade, marinadeOf } from "../../shared/recipe/marinade.ts";
import { dateIn, type Instant, timeIn } from "../../shared/time.ts";
import { count } from "../../shared/words/plural.ts";
import { writeTime, writeWhen } from "../../shared/words/write-when.ts";
import type { Row } from "../kit/reply.ts";
import type { Card } from "./card-model.ts";
import { keepingRow } from "./keeping-row.ts";

/** What is left of a sauce that makes more than goes in, and for how long that keeps by itself. */
export function leftoverRows({
  published,
  scaled,
  foods,
}: Pick<Card, "published" | "scaled" | "foods">): readonly Row[] {
  return scaled.leftover.map(({ component, madeG, leftG }) => {
    const own = published.recipe.components.filter(({ name }) => name === component);
    const alone = {
      ...published.recipe,
      components: own,
      keeping: { fridgeDays: null, freezerMonths: null, freezes: null, reason: "" },
    };
    const { figure, note } = keepingRow(resolveKeeping(alone, foods, []));
    return {
      label: `${component}, left over`,
      figure: writeGrams(leftG),
      note: `of ${writeGrams(madeG)}, not in the figures; keeps ${figure}, ${note ?? ""}`,
    };
  });
}

/** The window of a marinade, with clock times when its start is known. */
export function marinadeRows({ published, request, reader }: Card): readonly Row[] {
  const marinade = marinadeOf(published.recipe);
  if (marinade === null) return [];
  const { leastMinutes, mostMinutes } = marinade;
  const { start } = request;
  const length = `${writeSpans(leastMinutes, mostMinutes)} in the fridge`;
  return start === undefined
    ? [
        {
          label: "marinade",
          figure: length,
          note: `${whoseFigures(marinade)}type start: for clock times`,
        },
      ]
    : [
        {
          label: "marinade",
          figure: `ready ${whenAfter(start, leastMinutes, reader.zone)}`,
          note: `from ${writeWhen(start, reader.zone)}; at the latest ${whenAfter(start, mostMinutes, reader.zone)}; ${length}`,
        },
      ];
}

function whoseFigures({ least, most }: Marinade): string {
  return least === "usual" && most === "usual" ? "the usual time, the recipe gives none; " : "";
}

/** The time alone on the day it starts, else with its day. */
function whenAfter(start: Instant, minutes: number, zone: string): string {
  const at = start.add({ minutes });
  const sameDay = dateIn(at, zone).equals(dateIn(start, zone));
  return sameDay ? writeTime(timeIn(at, zone)) : writeWhen(at, zone);
}

/** "30 min to 24 hours", "2 to 24 hours". */
function writeSpans(least: number, most: number): string {
  const [from, to] = [writeSpan(least), writeSpan(most)];
  if (from === to) return to;
  return from.endsWith(" hours")
    ? `${from.slice(0, -" hours".length)} to ${to}`
    : `${from} to ${to}`;
}

function writeSpan(minutes: number): string {
  if (minutes < 120 && minutes !== 60) return `${Math.round(minutes)} min`;
  return count(minutes / 60, "hour");
}
