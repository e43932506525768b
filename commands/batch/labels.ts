import { z } from "zod";
import { cellsOf } from "../../shared/container-label/grids.ts";
import type { Stock } from "../../shared/stock/types.ts";
import { dateIn } from "../../shared/time.ts";
import { writeHalves } from "../../shared/words/halves.ts";
import { readNumber } from "../../shared/words/read-number.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { optionalText, wordText } from "../kit/options.ts";
import { loadStock, planFor } from "../kit/plan.ts";
import { writePress } from "../kit/press.ts";
import type { Button, Reply } from "../kit/reply.ts";
import { portionsOf } from "../kit/say-lot.ts";
import { LABELS_MAX, labelJobs } from "./label-jobs.ts";
import {
  byPast,
  type CodedLot,
  codedLots,
  completeLots,
  lotsAsked,
  sayPast,
} from "./label-lots.ts";
import { completeGrid, gridNamed, PAPERS, type Paper, usualGrid } from "./label-sheet.ts";
import { labelsReply, type Sheet } from "./labels-reply.ts";

/** A whole number from 1 on. */
function numberText(most: number, sentence: string) {
  return z.string({ error: sentence }).transform((typed, checks): number => {
    const read = readNumber(typed.trim().slice(0, 20));
    const value = read.ok && read.value.to === null ? read.value.value : Number.NaN;
    if (Number.isInteger(value) && value >= 1 && value <= most) return value;
    checks.addIssue({ code: "custom", message: sentence });
    return z.NEVER;
  });
}

export const batchLabels = command({
  path: ["batch", "labels"],
  description: "A sheet of labels for your boxes, to print, and each label as a picture",
  who: "everyone",
  options: [
    {
      name: "batch",
      description: "Which portions; what you cooked last if you leave it out",
      required: false,
      kind: "text",
      complete: completeLots,
    },
    {
      name: "copies",
      description: "How many labels for each; one for every portion if you leave it out",
      required: false,
      kind: "text",
    },
    {
      name: "paper",
      description: "The size of the paper",
      required: false,
      kind: "text",
      choices: PAPERS,
    },
    {
      name: "grid",
      description: "Your label sheet by its dimensions, such as 63.5 x 38.1 mm, or plain paper",
      required: false,
      kind: "text",
      complete: completeGrid,
    },
    {
      name: "start",
      description: "First free label on a used sheet; 1 is the one top left",
      required: false,
      kind: "text",
    },
  ],
  input: z.object({
    batch: optionalText(120),
    copies: numberText(
      LABELS_MAX,
      `Type how many labels you want for each, from 1 to ${LABELS_MAX}.`,
    ).optional(),
    paper: wordText(PAPERS, "Type a4 or letter.").optional(),
    grid: optionalText(60),
    start: numberText(100, "Type the number of the first free label, such as 4.").optional(),
  }),
  handle: async (context, input) => {
    const sheet = sheetOf(context, input);
    const own = await loadStock(context.stores, context.member);
    const lots = await lotsAsked(context, own, input.batch);
    return answer(context, own, lots, { sheet, copies: input.copies });
  },
  actions: {
    print: (context, args) => pressPrint(context, args),
  },
});

interface SheetInput {
  readonly paper?: Paper | undefined;
  readonly grid?: string | undefined;
  readonly start?: number | undefined;
}

function sheetOf({ group }: Context, { paper, grid: typed, start = 1 }: SheetInput): Sheet {
  const usual = paper ?? (group.labelStyle === "us" ? "letter" : "a4");
  const grid = typed === undefined ? usualGrid(usual) : gridNamed(typed, paper, usual);
  const cells = cellsOf(grid).length;
  if (start > cells) {
    throw new Refusal(
      `A sheet of this grid has ${cells} labels: type start:1 to start:${cells}, counted from the top left, row by row.`,
    );
  }
  return { grid, start };
}

const printArguments = z.tuple([
  z.enum(["batch", "lot", "all"]),
  z.string().regex(/^[0-9a-z]{1,32}$/u),
  z.enum(["usual", ...PAPERS]),
  z.enum(["sheet", "plain"]).default("sheet"),
]);

/** Labels of the asker's own portions, as they are now; of another's nothing is told. */
async function pressPrint(context: Context, args: readonly string[]): Promise<Reply> {
  const parsed = printArguments.safeParse(args);
  if (!parsed.success) {
    throw new Refusal("That button is too old to work. Type /batch labels for a fresh one.");
  }
  const [kind, id, paper, grid] = parsed.data;
  const own = await loadStock(context.stores, context.member);
  const lots = codedLots(own).filter(
    ({ lot, batch }) =>
      kind === "all" || (kind === "lot" ? lot.id === String(id) : batch.id === String(id)),
  );
  if (lots.length === 0) {
    throw new Refusal("Nothing of yours is left to label there. Type /stock to see what you have.");
  }
  const sheet = sheetOf(context, {
    paper: paper === "usual" ? undefined : paper,
    grid: grid === "plain" ? "plain paper" : undefined,
  });
  return answer(context, own, lots, { sheet, copies: undefined });
}

async function answer(
  context: Context,
  own: Stock,
  lots: readonly CodedLot[],
  { sheet, copies }: { readonly sheet: Sheet; readonly copies: number | undefined },
): Promise<Reply> {
  const today = dateIn(context.now, context.member.choice.zone);
  const { good, past } = byPast(lots, today);
  const sentences = past.map((one) => sayPast(one, today));
  if (good.length === 0) {
    throw new Refusal([...sentences, "Then press Threw away in /stock."]);
  }
  return labelsReply({
    lots: await labelJobs(context, good, copies),
    past: sentences,
    ...(await toFreezeFirst(context, own, good)),
    sheet,
    again: againOf(lots),
  });
}

/** What the lots have in common, for the buttons. */
function againOf(lots: readonly CodedLot[]): readonly [string, string] {
  const [first, ...others] = lots;
  if (first === undefined) throw new Error("nothing to label");
  if (others.length === 0) return ["lot", first.lot.id];
  const isOneBatch = others.every(({ batch }) => batch.id === first.batch.id);
  return isOneBatch ? ["batch", first.batch.id] : ["all", "0"];
}

/** Portions that no meal takes before their date get another label once they are frozen. */
async function toFreezeFirst(
  { stores, member, now }: Context,
  own: Stock,
  lots: readonly CodedLot[],
): Promise<{ readonly first: readonly string[]; readonly firstButtons: readonly Button[] }> {
  const rules = await stores.meals.wishes(member.id);
  const { allocation } = planFor(own, rules, member.choice, now);
  const found = allocation.surplus.flatMap((spare) => {
    const one = lots.find(({ lot }) => lot.id === spare.lotId);
    return one === undefined || spare.advice !== "freeze" ? [] : [{ one, spare }];
  });
  return {
    first: found.map(
      ({ one, spare }) =>
        `Freeze ${portionsOf(one, spare.portions)} of ${one.batch.title} first, then print: a frozen box has another label.`,
    ),
    firstButtons: found.slice(0, 1).map(({ one, spare }) => ({
      id: writePress("stock", "move", one.lot.id, "froze", spare.portions, one.lot.portions),
      label: `Froze ${writeHalves(spare.portions)}`,
      weight: "main",
    })),
  };
}
