import { z } from "zod";
import { causeId, type LotId, reminderId } from "../../shared/ids.ts";
import { fail } from "../../shared/outcome.ts";
import type { MoveKind } from "../../shared/stock/decide.ts";
import { type StockChange, WASTE_REASONS } from "../../shared/stock/types.ts";
import { decideUndo } from "../../shared/stock/undo.ts";
import { dateIn, type Instant, isBefore, isDateBefore } from "../../shared/time.ts";
import { writeHalves } from "../../shared/words/halves.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { optionalText } from "../kit/options.ts";
import { changeStock, loadStock, planFor } from "../kit/plan.ts";
import type { Reply } from "../kit/reply.ts";
import { sayStockProblem } from "../kit/say-stock-problem.ts";
import { boardReply } from "./board.ts";
import { byCode, codeOption } from "./by-code.ts";
import { lotReply, lotView } from "./lot-view.ts";
import { correct, lotArgument, move, ownLot, portionsArgument, stale } from "./moving.ts";
import { showPicture } from "./picture.ts";

const KINDS: Readonly<Record<string, MoveKind>> = {
  ate: "ate",
  froze: "froze",
  thaw: "set to thaw",
  gave: "gave",
  threw: "threw away",
};
const USED = "That button was used already; nothing was changed. Here is the stock.";
const OTHER_STOCK = "Nothing was changed: the stock is another by now. Here it is.";

const whole = z.coerce.number().int().min(0).max(100_000);
const moveArguments = z.tuple([
  lotArgument,
  z.enum(["ate", "froze", "thaw", "gave", "threw"]),
  portionsArgument,
  portionsArgument,
]);
const thrownArguments = z.tuple([
  lotArgument,
  portionsArgument,
  portionsArgument,
  z.enum(WASTE_REASONS),
]);
const countArguments = z.tuple([lotArgument, portionsArgument, portionsArgument]);
const reminderArguments = z.tuple([
  lotArgument,
  z.enum(["ate", "froze", "thaw", "gave", "threw"]),
  portionsArgument,
  z.string().regex(/^[0-9a-z]{1,25}$/u),
  z
    .string()
    .regex(/^[0-9a-z]{1,25}$/u)
    .transform(reminderId),
]);

export const stock = command({
  path: ["stock"],
  description: "What is in your fridge and freezer, until when, and buttons to move it",
  who: "everyone",
  options: [codeOption],
  input: z.object({ code: optionalText(60) }),
  handle: (context, { code }) =>
    code === undefined ? board(context, null) : byCode(context, code),
  actions: {
    board: (context) => board(context, null),
    picture: (context) => showPicture(context),
    lot: (context, args) => showLot(context, args),
    count: (context, args) => showLot(context, args),
    move: (context, args) => pressMove(context, args),
    threw: (context, args) => pickReason(context, args),
    counted: (context, args) => pickCount(context, args),
    remind: (context, args) => pressReminder(context, args),
    undo: (context, args) => pressUndo(context, args),
  },
});

/** The board of the asker's own stock, `lead` said first. */
export async function board(context: Context, lead: string | null): Promise<Reply> {
  const { stores, member, now } = context;
  const own = await loadStock(stores, member);
  const rules = await stores.meals.list(member.id);
  const { allocation } = planFor(own, rules, member.choice, now);
  const last = await stores.stocks.lastChange(member.id);
  const undo = last === null || isTooOld(last.change, now) ? null : sayChange(last.change);
  const zone = member.choice.zone;
  return boardReply({ stock: own, allocation, now, zone, hasMeals: rules.length > 0, undo }, lead);
}

async function showLot(context: Context, args: readonly string[]): Promise<Reply> {
  const parsed = z
    .tuple([lotArgument])
    .or(z.tuple([lotArgument, portionsArgument]))
    .safeParse(args);
  if (!parsed.success) throw stale();
  const own = await loadStock(context.stores, context.member);
  const lot = await ownLot(context, own, parsed.data[0]);
  const asked = parsed.data[1] ?? 1;
  return lotReply(lotView(context, own, lot, asked));
}

/** A button of the board: it says how many portions it saw, so a second tap on an old board does nothing. */
async function pressMove(context: Context, args: readonly string[]): Promise<Reply> {
  const parsed = moveArguments.safeParse(args);
  if (!parsed.success) throw stale();
  const [id, kind, portions, seen] = parsed.data;
  return onSeen(context, id, seen, (writing) =>
    move(context, { lotId: id, kind: KINDS[kind] ?? "ate", portions }, writing),
  );
}

/** Thrown away, with the reason picked. */
async function pickReason(context: Context, args: readonly string[]): Promise<Reply> {
  const parsed = thrownArguments.safeParse(args);
  if (!parsed.success) throw stale();
  const [id, portions, seen, reason] = parsed.data;
  return onSeen(context, id, seen, (writing) =>
    move(context, { lotId: id, kind: "threw away", portions, reason }, writing),
  );
}

/** So many are really there. */
async function pickCount(context: Context, args: readonly string[]): Promise<Reply> {
  const parsed = countArguments.safeParse(args);
  if (!parsed.success) throw stale();
  const [id, seen, counted] = parsed.data;
  return onSeen(context, id, seen, (writing) => correct(context, { lotId: id, counted }, writing));
}

/** Does it if the lot still holds what the presser saw in it, and shows the board either way. */
async function onSeen(
  context: Context,
  id: LotId,
  seen: number,
  deed: (writing: Parameters<typeof move>[2]) => Promise<string | null>,
): Promise<Reply> {
  const lot = await ownLot(context, await loadStock(context.stores, context.member), id);
  if (lot.portions !== seen) return board(context, OTHER_STOCK);
  const said = await deed({ cause: context.causeId, seen, at: context.now });
  return board(context, said ?? USED);
}

/**
 * A button of a reminder: works once, however often it is pressed. Pressed on a later day, a thaw is
 * dated to the day of its reminder, the safe side: the portion may have been moved when it was told.
 */
async function pressReminder(context: Context, args: readonly string[]): Promise<Reply> {
  const parsed = reminderArguments.safeParse(args);
  if (!parsed.success) throw stale();
  const [id, kind, portions, nonce, row] = parsed.data;
  const { stores, member, now } = context;
  const cause = causeId(`reminder ${nonce} ${row} ${kind}`);
  const done = await stores.stocks.findByCause(cause);
  if (done === null) await ownLot(context, await loadStock(stores, member), id);
  const told = kind === "thaw" ? await stores.reminders.find(row) : null;
  const zone = member.choice.zone;
  const isLater =
    told?.memberId === member.id && isDateBefore(dateIn(told.dueAt, zone), dateIn(now, zone));
  const at = isLater ? told.dueAt : now;
  const wish = { lotId: id, kind: KINDS[kind] ?? "ate", portions };
  const said = await move(context, wish, { cause, seen: null, at });
  return board(context, said ?? USED);
}

async function pressUndo(context: Context, args: readonly string[]): Promise<Reply> {
  const parsed = z.tuple([whole]).safeParse(args);
  if (!parsed.success) throw stale();
  const [version] = parsed.data;
  const { stores, member, now, newId } = context;
  const zone = member.choice.zone;
  const last = await stores.stocks.lastChange(member.id);
  if (last === null) throw new Refusal(sayStockProblem({ code: "nothing to undo" }, zone));
  if (isTooOld(last.change, now)) {
    throw new Refusal(
      `That is more than ${UNDO_HOURS} hours ago and stays. Move the portions with the buttons of /stock.`,
    );
  }
  const changed = await changeStock({
    stores,
    member,
    now,
    causeId: context.causeId,
    newId,
    undoes: last.change.id,
    emptied: last.batches,
    decide: (own) =>
      own.version === version
        ? decideUndo(last.change, last.lots, { at: now, on: dateIn(now, zone) })
        : fail({ code: "nothing to undo" }),
  });
  if (!changed.ok && changed.problem.code === "thawed since") {
    throw new Refusal(sayStockProblem(changed.problem, zone));
  }
  if (!changed.ok)
    return board(
      context,
      "Nothing was undone: something else happened since. Here is the stock as it is.",
    );
  return board(context, `Undone: ${sayChange(last.change)}.`);
}

/** A slip is noticed soon; what is older has other changes built on it in the kitchen. */
const UNDO_HOURS = 48;

function isTooOld(change: StockChange, now: Instant): boolean {
  return isBefore(change.recordedAt.add({ hours: UNDO_HOURS }), now);
}

/** "froze 5", "cooked 8, froze 3". */
function sayChange(change: StockChange): string {
  return change.movements.map((one) => `${one.kind} ${writeHalves(one.portions)}`).join(", ");
}
