import { z } from "zod";
import { reminderId } from "../../shared/ids.ts";
import { helpsAt, LATER, laterAt } from "../../shared/reminder/again.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";
import { writeTime, writeWhen } from "../../shared/words/write-when.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { type Reply, reply, text } from "../kit/reply.ts";
import { currentReminders } from "./current.ts";
import { sayRow } from "./message.ts";

const args = z.tuple([
  z
    .string()
    .regex(/^[0-9a-z]{1,32}$/u)
    .transform(reminderId),
  z.enum(LATER),
]);

/**
 * A button of a reminder that puts its message off: what of it is still true and would still help then
 * comes again, once. Pressed again, it moves what has not come yet.
 */
export async function pressLater(context: Context, raw: readonly string[]): Promise<Reply> {
  const parsed = args.safeParse(raw);
  if (!parsed.success) throw gone();
  const [id, later] = parsed.data;
  const { stores, member, now } = context;
  const { choice } = member;
  const told = await stores.reminders.together(id);
  if (told.some((row) => row.memberId !== member.id)) {
    throw new Refusal("That reminder is not yours. Type /reminders to see your own.");
  }
  if (told.length === 0) throw gone();
  const at = laterAt(later, choice, now);
  if (at === null)
    throw new Refusal(`It is past ${writeTime(choice.evening)} today: use In an hour.`);
  const still = await stillToTell(context, told);
  const rows = still.filter((row) => helpsAt(row, at, choice, now));
  if (rows.length === 0) throw new Refusal(sayTooLate(still, at, choice.zone));
  const waiting = await stores.reminders.again(rows, at);
  return waiting.length === 0
    ? cameAgain()
    : putOff(context, waiting, at, still.length - rows.length);
}

/** What of the message is still true: told once already, so what was dealt with since is left out. */
async function stillToTell(
  { stores, member, now }: Context,
  told: readonly ReminderRow[],
): Promise<readonly ReminderRow[]> {
  const sent = told.filter(({ state }) => state === "sent" || state === "claimed");
  const current = await currentReminders(stores, member, sent, now);
  return current.map(({ row }) => row);
}

function putOff(
  { member, now }: Context,
  waiting: readonly ReminderRow[],
  at: Instant,
  left: number,
): Reply {
  const { zone } = member.choice;
  return reply(`Told again ${writeWhen(at, zone)}.`, {
    parts: [text(...waiting.map((row) => sayRow(row, { member, now })))],
    cautions: left === 0 ? [] : ["Not all of that message can wait until then: do the rest now."],
  });
}

function cameAgain(): Reply {
  return reply("That reminder has come again already. Use the buttons of the newer message.");
}

function sayTooLate(still: readonly ReminderRow[], at: Instant, zone: string): string {
  return still.length === 0
    ? "That is dealt with: there is nothing left to remind you of. Type /stock to see what you have."
    : `That cannot wait until ${writeWhen(at, zone)}: it would no longer help. Do it now, or type /stock to see what is good.`;
}

function gone(): Refusal {
  return new Refusal("That button is too old to work. Type /reminders to see what is coming.");
}
