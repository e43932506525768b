import { Temporal } from "temporal-polyfill";
import { allocate } from "../../shared/allocation/allocate.ts";
import { mealSlots } from "../../shared/allocation/slots.ts";
import type { MealRule } from "../../shared/allocation/types.ts";
import { batchId, lotId, slotRuleId } from "../../shared/ids.ts";
import type { Batch, Lot, Place, Stock } from "../../shared/stock/types.ts";
import { batch, choice, instant, keeping, lot, stockOf, ZONE } from "../kit/stock.ts";
import { median, report, timed } from "./measure.ts";

const LOTS = 200;
const WEEKS = 8;
const NOW = instant("2026-10-11T18:00:00Z");

const EVERY_DAY = [1, 2, 3, 4, 5, 6, 7];
const RULES: readonly MealRule[] = [
  ["breakfast", "07:30"],
  ["lunch", "12:30"],
  ["dinner", "19:00"],
].map(([name = "", at = ""]) => ({
  id: slotRuleId(name),
  name,
  weekdays: EVERY_DAY,
  time: Temporal.PlainTime.from(at),
  portions: 1,
}));

/** Lots of many sizes, ages, masses and keeping times; `places` says how they are spread over the kitchen. */
function manyLots(places: readonly Place[]): Stock {
  const batches: Batch[] = [];
  const lots: Lot[] = [];
  for (let i = 0; i < LOTS; i += 1) {
    const id = batchId(`b${i}`);
    const place = places[i % places.length] ?? "freezer";
    const sinceAt = NOW.subtract({ hours: (i * 7) % 60 });
    batches.push(
      batch({
        id,
        portionG: 300 + (i % 13) * 180,
        cookedAt: sinceAt,
        keeping: keeping({
          fridgeDays: 1 + (i % 6),
          freezes: i % 5 === 0 && place !== "freezer" ? "no" : "well",
        }),
      }),
    );
    lots.push(
      lot({
        id: lotId(`l${i}`),
        batchId: id,
        place,
        portions: 1 + (i % 6),
        sinceAt,
        since: sinceAt.toZonedDateTimeISO(ZONE).toPlainDate(),
        usedDays: place === "fridge" ? 0 : 1 + (i % 3),
      }),
    );
  }
  return stockOf(batches, lots);
}

/** The plan of a very full kitchen, against a structured clone of what it is worked out from. */
export async function benchAllocation(write: (line: string) => void): Promise<boolean> {
  const slots = mealSlots(RULES, NOW, ZONE, WEEKS * 7);
  const kitchens: readonly (readonly [string, readonly Place[]])[] = [
    ["in fridge, freezer and thawing", ["freezer", "fridge", "thawing", "freezer", "fridge"]],
    ["in the freezer", ["freezer"]],
    ["in the fridge", ["fridge"]],
    ["thawing", ["thawing"]],
  ];
  const results: boolean[] = [];
  for (const [where, places] of kitchens) {
    const stock = manyLots(places);
    const plain = JSON.parse(JSON.stringify({ stock, slots })) as unknown;
    const ours = await timed(() => allocate(stock, slots, NOW, choice()), 40);
    const clone = await timed(() => structuredClone(plain), 40);
    results.push(
      report(
        {
          what: `${LOTS} lots ${where} given to ${slots.length} meals of ${WEEKS} weeks`,
          ms: median(ours),
          budgetMs: 20,
          reference: { name: "structuredClone of the same", ms: median(clone), times: 12 },
        },
        write,
      ),
    );
  }
  return !results.includes(false);
}
