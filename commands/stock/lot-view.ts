import { lotCodes } from "../../shared/container-label/lot-code.ts";
import { mostCounted } from "../../shared/stock/correct.ts";
import { batchOf, isPast } from "../../shared/stock/lot.ts";
import { type Batch, type Lot, type Stock, WASTE_REASONS } from "../../shared/stock/types.ts";
import { dateIn, type Instant } from "../../shared/time.ts";
import { writeHalves } from "../../shared/words/halves.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import type { Context } from "../kit/context.ts";
import { sayWhose } from "../kit/keeping.ts";
import { writePress } from "../kit/press.ts";
import { type Button, type Choice, type Reply, type Row, reply, rows } from "../kit/reply.ts";
import { canThaw, portionsOf, readyOf, untilOf } from "../kit/say-lot.ts";

interface LotView {
  readonly lot: Lot;
  readonly batch: Batch;
  /** The code on its label. */
  readonly code: string;
  /** How many portions the buttons are about. */
  readonly portions: number;
  /** The most that it can be counted to hold. */
  readonly most: number;
  readonly now: Instant;
  readonly zone: string;
}

/** A lot of one's own, and how many portions of it were asked for. */
export function lotView(
  { now, member }: Pick<Context, "now" | "member">,
  own: Stock,
  lot: Lot,
  asked: number,
): LotView {
  return {
    lot,
    batch: batchOf(own.batches, lot.batchId),
    code: lotCodes(own.lots).get(lot.id) ?? "",
    portions: Math.max(0.5, Math.min(asked, lot.portions)),
    most: mostCounted(own, lot.id),
    now,
    zone: member.choice.zone,
  };
}

/** One lot with everything that can be done to `portions` of it. */
export function lotReply(view: LotView): Reply {
  const { lot, batch } = view;
  const past = isPast(lot, batch, dateIn(view.now, view.zone));
  return reply(`${batch.title}, ${lot.place}: ${portionsOf(view)}.`, {
    parts: [rows(null, details(view))],
    buttons: [
      ...moveButtons(view, past),
      ...(past ? [] : [labelsButton(lot)]),
      { id: writePress("stock", "board"), label: "Back", weight: "plain" },
    ],
    choices: [...(lot.portions > 0.5 ? [howMany(view)] : []), whyThrown(view), counted(view)],
  });
}

function details(view: LotView): readonly Row[] {
  const { lot, batch, code, now, zone } = view;
  return [
    { label: "Until", figure: untilOf(view, dateIn(now, zone)), ...whoseNote(view) },
    { label: "Cooked", figure: writeDate(batch.cookedOn) },
    { label: "Lot code", figure: code, note: "on its label" },
    ...(lot.place === "thawing" ? [{ label: "Ready", figure: readyOf(view, now, zone) }] : []),
    ...(batch.keeping.freezes === "well"
      ? []
      : [
          {
            label: "Freezing",
            figure: batch.keeping.freezes === "no" ? "do not freeze" : "freezes badly",
            note: batch.keeping.reason,
          },
        ]),
  ];
}

/** The dates of a label hold for one place: after a move it is printed again. */
function labelsButton(lot: Lot): Button {
  return {
    id: writePress("batch labels", "print", "lot", lot.id, "usual"),
    label: "Print labels",
    weight: "plain",
  };
}

function whoseNote({ lot, batch }: LotView): { readonly note?: string } {
  const whose = lot.place === "freezer" ? "" : sayWhose(batch.keeping);
  return whose === "" ? {} : { note: whose };
}

function moveButtons(view: LotView, past: boolean): readonly Button[] {
  const { lot, batch, portions } = view;
  const button = (
    kind: string,
    label: string,
    weight: Button["weight"],
    many = portions,
  ): Button => ({
    id: writePress("stock", "move", lot.id, kind, many, lot.portions),
    label: `${label} ${writeHalves(many)}`,
    weight,
  });
  const gone = [button("threw", "Threw away", "grave")];
  if (past) return [...gone, button("ate", "Ate", "plain")];
  const place =
    lot.place === "freezer"
      ? canThaw(view)
        ? [{ ...button("thaw", "Set", "plain"), label: `Set ${writeHalves(portions)} to thaw` }]
        : []
      : batch.keeping.freezes === "no"
        ? []
        : [button("froze", "Froze", "plain")];
  const half = portions === 0.5 ? [] : [button("ate", "Ate", "plain", 0.5)];
  return [
    button("ate", "Ate", "main"),
    ...half,
    ...place,
    button("gave", "Gave away", "plain"),
    ...gone,
  ];
}

/** The platform shows no more in one list. */
const OPTIONS_MAX = 25;

/** Every half where a list holds them; else one half, whole numbers, and the whole lot. */
function amounts(most: number): readonly number[] {
  if (most * 2 <= OPTIONS_MAX) return Array.from({ length: most * 2 }, (_, n) => (n + 1) / 2);
  const whole = Array.from(
    { length: Math.min(Math.floor(most), OPTIONS_MAX - 2) },
    (_, n) => n + 1,
  );
  return [0.5, ...whole, ...(whole.includes(most) ? [] : [most])];
}

function option(n: number, label = writeHalves(n)) {
  return { value: String(n), label };
}

function howMany({ lot, portions }: LotView): Choice {
  return {
    id: writePress("stock", "count", lot.id),
    placeholder: `How many? Now ${writeHalves(portions)}`,
    options: amounts(lot.portions).map((n) => option(n)),
  };
}

/** The second tap, for those who want to say it. */
function whyThrown({ lot, portions }: LotView): Choice {
  return {
    id: writePress("stock", "threw", lot.id, portions, lot.portions),
    placeholder: `Threw away ${writeHalves(portions)}, because…`,
    options: WASTE_REASONS.map((reason) => ({ value: reason, label: reason })),
  };
}

/** What the lot may hold instead, nearest to what it is thought to hold. */
function counted({ lot, batch, most }: LotView): Choice {
  const wrong = amounts(Math.max(most, lot.portions))
    .filter((n) => n !== lot.portions)
    .sort((a, b) => Math.abs(a - lot.portions) - Math.abs(b - lot.portions))
    .slice(0, OPTIONS_MAX - 1)
    .sort((a, b) => a - b);
  return {
    id: writePress("stock", "counted", lot.id, lot.portions),
    placeholder: `Wrong count? There ${lot.portions <= 1 ? "is" : "are"} really…`,
    options: [0, ...wrong].map((n) =>
      option(n, n === 0 ? "none there" : `${count(n, batch.portionWord)} there`),
    ),
  };
}
