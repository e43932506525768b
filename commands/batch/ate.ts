import { z } from "zod";
import { lotCodes } from "../../shared/container-label/lot-code.ts";
import { thawLeadHours } from "../../shared/keeping/thaw.ts";
import { decideEatFirst, type Taken } from "../../shared/stock/eat-first.ts";
import { dateIn, type Instant, isBefore } from "../../shared/time.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { halvesText, optionalText } from "../kit/options.ts";
import { changeStock } from "../kit/plan.ts";
import { writePress } from "../kit/press.ts";
import { type Part, type Reply, reply, rows } from "../kit/reply.ts";
import { untilOf } from "../kit/say-lot.ts";
import { sayStockProblem } from "../kit/say-stock-problem.ts";
import { board } from "../stock/stock.ts";
import { completeInStock, meantBy } from "./in-stock.ts";

export const batchAte = command({
  path: ["batch", "ate"],
  description: "You ate one: takes the portion that must go first and says which box that is",
  who: "everyone",
  options: [
    {
      name: "recipe",
      description: "Of what; whatever must go first if you leave it out",
      required: false,
      kind: "text",
      complete: completeInStock,
    },
    {
      name: "portions",
      description: "How many, such as 2, ½ or 0.5; one if you leave it out",
      required: false,
      kind: "text",
    },
  ],
  input: z.object({ recipe: optionalText(120), portions: halvesText.optional() }),
  handle: ateFirst,
});

/** With the code that stands on its label. */
interface Coded extends Taken {
  readonly code: string;
}

interface Ate {
  readonly recipe?: string | undefined;
  readonly portions?: number | undefined;
}

async function ateFirst(context: Context, { recipe, portions = 1 }: Ate): Promise<Reply> {
  const { stores, member, now, newId, causeId } = context;
  const zone = member.choice.zone;
  let taken: readonly Coded[] = [];
  const changed = await changeStock({
    stores,
    member,
    now,
    causeId,
    newId,
    decide: (stock) => {
      const isMeant = meantBy(stock, recipe);
      const step = decideEatFirst(stock, { portions, isMeant }, { at: now, on: dateIn(now, zone) });
      const codes = lotCodes(stock.lots);
      if (step.ok) {
        taken = step.value.taken.map((one) => ({ ...one, code: codes.get(one.lot.id) ?? "" }));
      }
      return step;
    },
  });
  if (!changed.ok) {
    const said = sayStockProblem(changed.problem, zone);
    // The board has the button that throws it away.
    if (changed.problem.code === "all past its date") return board(context, said);
    throw new Refusal(said);
  }
  if (changed.value.already) {
    return board(context, "That was recorded already; nothing was written twice.");
  }
  return ateReply(taken, portions, changed.value.stock.version, context);
}

function ateReply(
  taken: readonly Coded[],
  portions: number,
  version: number,
  { now, member }: Context,
): Reply {
  const { zone } = member.choice;
  const titles = [...new Set(taken.map(({ batch }) => batch.title))];
  const word = taken[0]?.batch.portionWord ?? "portion";
  return reply(`Ate ${count(portions, word)} of ${titles.join(" and ")}.`, {
    parts: taken.map((one) => boxPart(one, now, zone)),
    cautions: cautionsOf(taken, now),
    buttons: [
      { id: writePress("stock", "undo", version), label: "Undo", weight: "plain" },
      { id: writePress("stock", "board"), label: "See stock", weight: "plain" },
    ],
  });
}

/** Which box that is. */
function boxPart({ lot, batch, portions, code }: Coded, now: Instant, zone: string): Part {
  const where = { fridge: "fridge", thawing: "thawing in the fridge", freezer: "freezer" };
  const left = lot.portions - portions;
  return rows(`Look for: ${batch.title}`, [
    { label: "Take", figure: count(portions, batch.portionWord) },
    { label: "Cooked", figure: writeDate(batch.cookedOn) },
    { label: "Label", figure: code },
    { label: "Place", figure: where[lot.place] },
    { label: "Date", figure: untilOf({ lot, batch }, dateIn(now, zone)) },
    { label: "Left of these", figure: left === 0 ? "none" : count(left, batch.portionWord) },
  ]);
}

function cautionsOf(taken: readonly Taken[], now: Instant): readonly string[] {
  const isFrozen = taken.some(({ lot }) => lot.place === "freezer");
  const isIcy = taken.some(
    ({ lot, batch }) =>
      lot.place === "thawing" &&
      isBefore(now, lot.sinceAt.add({ minutes: Math.ceil(thawLeadHours(batch.portionG) * 60) })),
  );
  return [
    ...(isFrozen ? ["What comes out of the freezer: heat it straight from frozen to 74 °C."] : []),
    ...(isIcy ? ["It may still be icy in the middle: heat it to 74 °C right through."] : []),
  ];
}
