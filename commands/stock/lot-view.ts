import { isPast } from "../../shared/stock/lot.ts";
import type { Instant } from "../../shared/time.ts";
import { dateIn } from "../../shared/time.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { sayWhose } from "../kit/keeping.ts";
import { writePress } from "../kit/press.ts";
import { type Button, type Reply, reply, rows } from "../kit/reply.ts";
import { canThaw, portionsOf, readyOf, type Shown, untilOf } from "../kit/say-lot.ts";

/** One lot with everything that can be done to `portions` of it. */
export function lotReply(one: Shown, portions: number, now: Instant, zone: string): Reply {
  const { lot, batch } = one;
  const today = dateIn(now, zone);
  const details = [
    { label: "Until", figure: untilOf(one, today), ...whoseNote(one) },
    { label: "Cooked", figure: writeDate(batch.cookedOn) },
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
      { id: writePress("stock", "board"), label: "Back", weight: "plain" },
    ],
    choices: lot.portions > 1 ? [howMany(one, portions)] : [],
  });
}

function whoseNote({ lot, batch }: Shown): { readonly note?: string } {
  const whose = lot.place === "freezer" ? "" : sayWhose(batch.keeping);
  return whose === "" ? {} : { note: whose };
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
