import type { Allocation } from "../../shared/allocation/types.ts";
import { isPast } from "../../shared/stock/lot.ts";
import type { Place, Stock } from "../../shared/stock/types.ts";
import { dateIn, type Instant, isBefore } from "../../shared/time.ts";
import { writeHalves } from "../../shared/words/halves.ts";
import { writeWhen } from "../../shared/words/write-when.ts";
import { writePress } from "../kit/press.ts";
import {
  type Button,
  type Choice,
  type Part,
  type Reply,
  reply,
  rows,
  text,
} from "../kit/reply.ts";
import {
  lotsByUrgency,
  mealOf,
  portionsOf,
  readyOf,
  type Shown,
  servingsOf,
  staysThawable,
  untilAndWhose,
  untilOf,
} from "../kit/say-lot.ts";
import { firstLines } from "./first-lines.ts";

const PLACES: readonly { readonly place: Place; readonly title: string }[] = [
  { place: "fridge", title: "Fridge" },
  { place: "thawing", title: "Thawing in the fridge" },
  { place: "freezer", title: "Freezer" },
];

const PICTURE: Button = {
  id: writePress("stock", "picture"),
  label: "Picture",
  weight: "plain",
};

interface BoardInput {
  readonly stock: Stock;
  readonly allocation: Allocation;
  readonly now: Instant;
  readonly zone: string;
  readonly hasMeals: boolean;
  /** What Undo would take back; null when there is nothing fresh enough. */
  readonly undo: string | null;
}

/** What is where and until when. `lead` is said first, in place of the usual heading. */
export function boardReply(input: BoardInput, lead: string | null = null): Reply {
  const { stock, now, zone } = input;
  const shown = lotsByUrgency(stock);
  const today = dateIn(now, zone);
  if (shown.length === 0) {
    return reply(lead ?? "Nothing in stock.", {
      parts: [text("Log what you cook with /batch log, and its dates and reminders follow.")],
      buttons: undoButtons(input),
    });
  }
  const [first, second] = firstLines(input, shown);
  const parts = PLACES.flatMap(({ place, title }) => placeRows(shown, place, title, input));
  return reply(lead ?? first, {
    parts: [
      text(...(lead === null ? [] : [first]), second),
      ...parts,
      ...adviceParts(input, shown),
    ],
    cautions: shown.some((one) => isPast(one.lot, one.batch, today))
      ? ["Past its date means thrown away: do not taste it to find out."]
      : [],
    buttons: [...firstButtons(input, shown), ...undoButtons(input), PICTURE],
    choices: [lotChoice(shown, input)],
  });
}

function placeRows(
  shown: readonly Shown[],
  place: Place,
  title: string,
  input: BoardInput,
): readonly Part[] {
  const here = shown.filter((one) => one.lot.place === place);
  if (here.length === 0) return [];
  const today = dateIn(input.now, input.zone);
  return [
    rows(
      title,
      here.map((one) => ({
        label: one.batch.title,
        figure: portionsOf(one),
        note:
          place === "thawing"
            ? `${readyOf(one, input.now, input.zone)}, ${untilAndWhose(one, today)}`
            : untilAndWhose(one, today),
      })),
    ),
  ];
}

/** What to freeze, what is spare, what to thaw next. */
function adviceParts(input: BoardInput, shown: readonly Shown[]): readonly Part[] {
  const lines = [...surplusLines(input, shown), ...thawLines(input, shown)];
  if (!input.hasMeals)
    lines.push(
      "No meals are set. Type /meals days:Mon-Fri time:12:30 and I say what to freeze and when to thaw.",
    );
  return lines.length === 0 ? [] : [text(...lines)];
}

function surplusLines(input: BoardInput, shown: readonly Shown[]): string[] {
  return input.allocation.surplus.flatMap((spare) => {
    const one = shown.find((candidate) => candidate.lot.id === spare.lotId);
    if (one === undefined) return [];
    const what = `${portionsOf(one, spare.portions)} of ${one.batch.title}`;
    const [them, their] = spare.portions <= 1 ? ["it", "its"] : ["them", "their"];
    if (spare.advice === "freeze") {
      const how = staysThawable(one, dateIn(input.now, input.zone))
        ? ""
        : ` Then heat ${them} straight from frozen: too few days are left to thaw ${them} in the fridge.`;
      return [`Freeze now: ${what}. No meal takes ${them} before ${their} date.${how}`];
    }
    return [
      `Spare: ${what}. No meal takes ${them} before ${their} date${whyNotFrozen(one)}. Eat ${them} sooner or give ${them} away.`,
    ];
  });
}

function whyNotFrozen({ batch }: Shown): string {
  const { freezes, reason } = batch.keeping;
  if (freezes === "well") return "";
  return `, and it freezes badly${reason === "" ? "" : ` (${reason})`}`;
}

/** The next meal that is served from the freezer, with the lot it comes from. */
function nextThaw({ allocation }: BoardInput, shown: readonly Shown[]) {
  for (const serving of allocation.servings) {
    const one = shown.find(({ lot }) => lot.id === serving.lotId && lot.place === "freezer");
    if (serving.thawAt !== null && one !== undefined) {
      const same = allocation.servings.filter(
        ({ slot, lotId }) => slot.key === serving.slot.key && lotId === serving.lotId,
      );
      return { one, serving, thawAt: serving.thawAt, portions: same.length };
    }
  }
  return null;
}

function thawLines(input: BoardInput, shown: readonly Shown[]): string[] {
  const next = nextThaw(input, shown);
  if (next === null) return [];
  const { one, serving, thawAt, portions } = next;
  const when = isBefore(input.now, thawAt) ? `on ${writeWhen(thawAt, input.zone)}` : "now";
  return [
    `Next to thaw: ${portionsOf(one, portions)} of ${one.batch.title}, ${when}, for ${mealOf(serving, input.zone)}.`,
  ];
}

/** Offered from half a day before the planned moment, so that a reminder put off is not a dead end. */
function thawButton(input: BoardInput, shown: readonly Shown[]): readonly Button[] {
  const next = nextThaw(input, shown);
  if (next === null || isBefore(input.now.add({ hours: 12 }), next.thawAt)) return [];
  const { lot } = next.one;
  const id = writePress("stock", "move", lot.id, "thaw", next.portions, lot.portions);
  return [{ id, label: `Set ${writeHalves(next.portions)} to thaw`, weight: "plain" }];
}

function firstButtons(input: BoardInput, shown: readonly Shown[]): readonly Button[] {
  const [first] = shown;
  if (first === undefined) return [];
  const { lot, batch } = first;
  const today = dateIn(input.now, input.zone);
  const short = batch.title.length > 18 ? `${batch.title.slice(0, 17)}…` : batch.title;
  const one = Math.min(1, lot.portions);
  const move = (kind: string, portions: number): string =>
    writePress("stock", "move", lot.id, kind, portions, lot.portions);
  if (isPast(lot, batch, today)) {
    return [
      {
        id: move("threw", lot.portions),
        label: `Threw away ${writeHalves(lot.portions)}`,
        weight: "grave",
      },
    ];
  }
  return [
    { id: move("ate", one), label: `Ate ${writeHalves(one)} ${short}`, weight: "main" },
    ...freezeButton(input, shown),
    ...thawButton(input, shown),
  ];
}

/** Freezing is offered for exactly what was advised to be frozen. */
function freezeButton({ allocation }: BoardInput, shown: readonly Shown[]): readonly Button[] {
  const spare = allocation.surplus.find((one) => one.advice === "freeze");
  const lot = shown.find((one) => one.lot.id === spare?.lotId)?.lot;
  if (spare === undefined || lot === undefined) return [];
  const id = writePress("stock", "move", lot.id, "froze", spare.portions, lot.portions);
  return [{ id, label: `Froze ${writeHalves(spare.portions)}`, weight: "plain" }];
}

function undoButtons({ stock, undo }: BoardInput): readonly Button[] {
  if (undo === null) return [];
  const id = writePress("stock", "undo", stock.version);
  return [{ id, label: `Undo ${undo}`.slice(0, 34), weight: "plain" }];
}

function lotChoice(shown: readonly Shown[], { now, zone, allocation }: BoardInput): Choice {
  const today = dateIn(now, zone);
  return {
    id: writePress("stock", "lot"),
    placeholder: "Move, give or throw away…",
    options: shown.slice(0, 25).map((one) => {
      const meals = servingsOf(allocation, one.lot).length;
      return {
        value: one.lot.id,
        label: `${one.batch.title}, ${one.lot.place}`.slice(0, 100),
        hint: `${portionsOf(one)}, ${untilOf(one, today)}${meals > 0 ? `, ${meals} planned` : ""}`.slice(
          0,
          100,
        ),
      };
    }),
  };
}
