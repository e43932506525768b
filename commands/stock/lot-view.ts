import { lotCodes } from "../../shared/container-label/lot-code.ts";
import { batchOf, isPast } from "../../shared/stock/lot.ts";
import type { Lot, Stock } from "../../shared/stock/types.ts";
import type { Instant } from "../../shared/time.ts";
import { dateIn } from "../../shared/time.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { writePress } from "../kit/press.ts";
import { type Button, type Reply, reply, rows } from "../kit/reply.ts";
import { canThaw, portionsOf, readyOf, type Shown, untilOf } from "../kit/say-lot.ts";

/** A lot with the code that stands on its label. */
export type Coded = Shown & { readonly code: string };

export function codedLot(own: Stock, lot: Lot): Coded {
  const code = lotCodes(own.lots).get(lot.id) ?? "";
  return { lot, batch: batchOf(own.batches, lot.batchId), code };
}

/** One lot with everything that can be done to `portions` of it. */
export function lotReply(one: Coded, portions: number, now: Instant, zone: string): Reply {
  const { lot, batch, code } = one;
  const today = dateIn(now, zone);
  const details = [
    { label: "Until", figure: untilOf(one, today) },
    { label: "Cooked", figure: writeDate(batch.cookedOn) },
    { label: "Lot code", figure: code, note: "on its label" },
    ...(lot.place === "thawing" ? [{ label: "Ready", figure: readyOf(one, now, zone) }] : []),
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
  return reply(`${batch.title}, ${lot.place}: ${portionsOf(one)}.`, {
    parts: [rows(null, details)],
    buttons: [
      ...moveButtons(one, portions, isPast(lot, batch, today)),
      ...(isPast(lot, batch, today) ? [] : [labelsButton(lot)]),
      { id: writePress("stock", "board"), label: "Back", weight: "plain" },
    ],
    choices: lot.portions > 1 ? [howMany(one, portions)] : [],
  });
}

/** The dates of a label hold for one place: after a move it is printed again. */
function labelsButton(lot: Lot): Button {
  return {
    id: writePress("batch labels", "print", "lot", lot.id, "usual"),
    label: "Print labels",
    weight: "plain",
  };
}

function moveButtons({ lot, batch }: Shown, portions: number, past: boolean): readonly Button[] {
  const button = (kind: string, label: string, weight: Button["weight"]): Button => ({
    id: writePress("stock", "move", lot.id, kind, portions, lot.portions),
    label: `${label} ${portions}`,
    weight,
  });
  const gone = [button("threw", "Threw away", "grave")];
  if (past) return [...gone, button("ate", "Ate", "plain")];
  const place =
    lot.place === "freezer"
      ? canThaw({ lot, batch })
        ? [{ ...button("thaw", "Set", "plain"), label: `Set ${portions} to thaw` }]
        : []
      : batch.keeping.freezes === "no"
        ? []
        : [button("froze", "Froze", "plain")];
  return [button("ate", "Ate", "main"), ...place, button("gave", "Gave away", "plain"), ...gone];
}

function howMany({ lot }: Shown, portions: number): Reply["choices"][number] {
  const counts = Array.from({ length: Math.min(lot.portions, 25) }, (_, index) => index + 1);
  return {
    id: writePress("stock", "count", lot.id),
    placeholder: `How many? Now ${portions}`,
    options: counts.map((one) => ({ value: String(one), label: String(one) })),
  };
}
