import { lotCodes } from "../../shared/container-label/lot-code.ts";
import { isPast } from "../../shared/stock/lot.ts";
import { dateIn } from "../../shared/time.ts";
import { fold } from "../../shared/words/fold.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { type Completer, type Option, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { type CodedPortions, portionsByCode, sayCodeProblem } from "../kit/lot-by-code.ts";
import { loadStock } from "../kit/plan.ts";
import { writePress } from "../kit/press.ts";
import { type Reply, reply, rows } from "../kit/reply.ts";
import { lotsByUrgency, portionsOf, type Shown, untilOf } from "../kit/say-lot.ts";
import { lotReply, lotView } from "./lot-view.ts";

/** A lot with the code that stands on its label. */
type Coded = Shown & { readonly code: string };

const OFFERED = 25;

/** Offers the codes of what is in stock. */
const completeCode: Completer = async ({ stores, member }, typed) => {
  const own = await loadStock(stores, member);
  const codes = lotCodes(own.lots);
  return lotsByUrgency(own)
    .map(({ lot, batch }) => {
      const code = codes.get(lot.id) ?? "";
      return { label: `${code}, ${batch.title}, ${lot.place}`, value: code };
    })
    .filter(({ label }) => fold(label).includes(fold(typed)))
    .slice(0, OFFERED);
};

export const codeOption: Option = {
  name: "code",
  description: "The code on a box, to find where its portions are now",
  required: false,
  kind: "text",
  complete: completeCode,
};

/** Where the portions of a box are now, by the code on it. */
export async function byCode(context: Context, typed: string): Promise<Reply> {
  const { stores, member, now } = context;
  const own = await loadStock(stores, member);
  const found = await portionsByCode(context, own, typed);
  if (!found.ok) throw new Refusal(sayCodeProblem(found.problem));
  const { batch, lot, lots } = found.value;
  const zone = member.choice.zone;
  const [only, ...others] = lots;
  if (lot !== null && only !== undefined && others.length === 0) {
    return lotReply(lotView(context, own, lot, 1));
  }
  const shown = lotsByUrgency({ ...own, lots, batches: [batch] });
  const codes = lotCodes(own.lots);
  const coded = shown.map((one) => ({ ...one, code: codes.get(one.lot.id) ?? "" }));
  return batchReply(found.value, coded, dateIn(now, zone));
}

/** Several places: the box in hand may have been moved since its label was printed. */
function batchReply(
  { batch, lot }: CodedPortions,
  shown: readonly Coded[],
  today: ReturnType<typeof dateIn>,
): Reply {
  const where = shown
    .map((one) => `${portionsOf(one).replace(/ .*/u, "")} ${WHERE[one.lot.place]}`)
    .join(", ");
  const hasPast = shown.some((one) => isPast(one.lot, batch, today));
  return reply(`${batch.title}, cooked ${writeDate(batch.cookedOn)}: ${where}.`, {
    parts: [
      rows(
        null,
        shown.map((one) => ({
          label:
            one.lot.id === lot?.id
              ? `${capital(one.lot.place)}, this code`
              : capital(one.lot.place),
          figure: portionsOf(one),
          note: `${untilOf(one, today)}; code ${one.code}`,
        })),
      ),
    ],
    cautions: [
      "A box that was moved goes by the row of the place it stands in now, not by an older label.",
      ...(hasPast ? ["Past its date means thrown away: do not taste it to find out."] : []),
    ],
    choices: [
      {
        id: writePress("stock", "lot"),
        placeholder: "Which one? Move, give or throw away…",
        options: shown.slice(0, 25).map((one) => ({
          value: one.lot.id,
          label: `${batch.title}, ${one.lot.place}`.slice(0, 100),
          hint: `${portionsOf(one)}, ${untilOf(one, today)}`.slice(0, 100),
        })),
      },
    ],
    buttons: [
      {
        id: writePress("batch labels", "print", "batch", batch.id, "usual"),
        label: "Print labels again",
        weight: "plain",
      },
      { id: writePress("stock", "board"), label: "See stock", weight: "plain" },
    ],
  });
}

const WHERE = { fridge: "in the fridge", freezer: "in the freezer", thawing: "thawing" } as const;

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
