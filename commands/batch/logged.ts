import type { Allocation } from "../../shared/allocation/types.ts";
import { discardBy } from "../../shared/keeping/dates.ts";
import type { Batch, Lot, Stock } from "../../shared/stock/types.ts";
import type { Instant } from "../../shared/time.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate, writeWhen } from "../../shared/words/write-when.ts";
import { sayWhose } from "../kit/keeping.ts";
import { writePress } from "../kit/press.ts";
import { type Button, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { mealOf, servingsOf } from "../kit/say-lot.ts";
import { sayWhy } from "../kit/say-serving.ts";

interface Logged {
  readonly already: boolean;
  readonly stock: Stock;
  readonly allocation: Allocation;
  readonly batch: Batch;
  readonly froze: number;
  /** Eaten at once. */
  readonly ate: number;
  readonly now: Instant;
  readonly zone: string;
  readonly zoneIsOwn: boolean;
  readonly hasMeals: boolean;
  readonly alerts: readonly string[];
  /** What decided its size, and what is left over. */
  readonly sized: Reply["parts"];
}

/** What to keep, what to freeze now and why, right after logging. */
export function loggedReply(input: Logged): Reply {
  const { batch, stock, already } = input;
  if (already)
    return reply("That batch is logged already; nothing was written twice.", {
      parts: [text("Type /stock to see it.")],
    });
  const own = stock.lots.filter((lot) => lot.batchId === batch.id);
  const fridge = own.find((lot) => lot.place === "fridge");
  const frozen = own.find((lot) => lot.place === "freezer");
  return reply(`Logged: ${count(batch.portionsCooked, batch.portionWord)} of ${batch.title}.`, {
    alerts: input.alerts,
    parts: [
      rows(null, [
        ...(fridge === undefined ? [] : fridgeRows(fridge, input)),
        ...(frozen === undefined
          ? []
          : [
              {
                label: "In the freezer",
                figure: count(frozen.portions, batch.portionWord),
                note: thawNote(frozen, input),
              },
            ]),
        ...(input.ate === 0
          ? []
          : [{ label: "Eaten", figure: count(input.ate, batch.portionWord) }]),
        {
          label: "Cooked",
          figure: writeWhen(batch.cookedAt, input.zone),
          ...(batch.cookedWeightG === null
            ? {}
            : {
                note: `${Math.round(batch.cookedWeightG / batch.portionsCooked)} g a ${batch.portionWord}`,
              }),
        },
      ]),
      ...input.sized,
      ...plannedParts(input),
    ],
    cautions: cautionsOf(input, fridge),
    buttons: buttonsOf(input, fridge),
  });
}

function fridgeRows(lot: Lot, { batch, allocation }: Logged): readonly Row[] {
  const surplus = allocation.surplus.find((one) => one.lotId === lot.id);
  const keep = lot.portions - (surplus?.advice === "freeze" ? surplus.portions : 0);
  const until = discardBy(lot, batch.keeping);
  const by = until === null ? "" : `eat by ${writeDate(until)}`;
  const note = [by, sayWhose(batch.keeping)].filter((said) => said !== "").join("; ");
  const list: Row[] =
    keep > 0 ? [{ label: "Keep in the fridge", figure: count(keep, batch.portionWord), note }] : [];
  if (surplus?.advice === "freeze") {
    list.push({
      label: "Freeze now",
      figure: count(surplus.portions, batch.portionWord),
      note: `no meal takes ${surplus.portions <= 1 ? "it" : "them"} ${by.replace("eat by", "by")}`,
    });
  }
  if (surplus?.advice === "spare") {
    const why =
      batch.keeping.freezes === "well"
        ? ""
        : `freezes badly${batch.keeping.reason === "" ? "" : ` (${batch.keeping.reason})`}; `;
    list.push({
      label: "Without a meal",
      figure: count(surplus.portions, batch.portionWord),
      note: `${why}${by.replace("eat by", "eat sooner or give away by")}`,
    });
  }
  return list;
}

function thawNote(lot: Lot, { allocation, zone }: Logged): string {
  const [first] = servingsOf(allocation, lot);
  return first?.thawAt == null
    ? "no meal planned for it yet"
    : `first to thaw ${writeWhen(first.thawAt, zone)}`;
}

function plannedParts({ allocation, batch, stock, zone, hasMeals }: Logged): Reply["parts"] {
  if (!hasMeals) {
    return [
      text(
        "No meals are set. Type /meals days:Mon-Fri time:12:30 and I say what to freeze and remind you when to thaw.",
      ),
    ];
  }
  const lots = new Map(
    stock.lots.filter((lot) => lot.batchId === batch.id).map((lot) => [lot.id, lot]),
  );
  const own = allocation.servings
    .flatMap((serving) => {
      const lot = lots.get(serving.lotId);
      return lot === undefined ? [] : [{ serving, lot }];
    })
    .sort((a, b) => a.serving.slot.at.epochMilliseconds - b.serving.slot.at.epochMilliseconds);
  if (own.length === 0) return [];
  return [
    rows(
      "Planned",
      own.slice(0, 10).map(({ serving, lot }) => ({
        label: mealOf(serving, zone),
        figure:
          serving.thawAt === null
            ? "from the fridge"
            : `from the freezer, thaw ${writeWhen(serving.thawAt, zone)}`,
        note: sayWhy(serving, lot),
      })),
    ),
    ...(own.length > 10 ? [text(`and ${own.length - 10} more.`)] : []),
  ];
}

function cautionsOf(
  { batch, froze, now, zoneIsOwn, zone }: Logged,
  fridge: Lot | undefined,
): readonly string[] {
  const hours = (now.epochMilliseconds - batch.cookedAt.epochMilliseconds) / 3_600_000;
  return [
    ...(fridge !== undefined && hours < 2
      ? [
          "Into the fridge within two hours of cooking, in boxes no deeper than 5 cm; fridge at 4 °C or colder.",
        ]
      : []),
    ...batch.keeping.remarks,
    ...(froze > 0 && batch.keeping.freezes !== "well"
      ? [`It freezes badly${batch.keeping.reason === "" ? "" : `: ${batch.keeping.reason}`}.`]
      : []),
    ...(zoneIsOwn ? [] : [`Times are in ${zone}. If that is not yours, type /reminders zone:`]),
  ];
}

function buttonsOf(
  { batch, stock, allocation }: Logged,
  fridge: Lot | undefined,
): readonly Button[] {
  const surplus = allocation.surplus.find(
    (one) => one.lotId === fridge?.id && one.advice === "freeze",
  );
  const undo: Button = {
    id: writePress("stock", "undo", stock.version),
    label: "Undo",
    weight: "plain",
  };
  const labels: Button = {
    id: writePress("batch labels", "print", "batch", batch.id, "usual"),
    label: "Labels",
    weight: "plain",
  };
  const see: Button = { id: writePress("stock", "board"), label: "See stock", weight: "plain" };
  if (surplus === undefined || fridge === undefined) return [labels, see, undo];
  const froze = writePress("stock", "move", fridge.id, "froze", surplus.portions, fridge.portions);
  return [
    {
      id: froze,
      label: `Froze ${count(surplus.portions, batch.portionWord)}`.slice(0, 34),
      weight: "main",
    },
    labels,
    see,
    undo,
  ];
}
