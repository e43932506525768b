import { z } from "zod";
import { count } from "../../shared/words/plural.ts";
import { writeWhen } from "../../shared/words/write-when.ts";
import { command } from "../kit/command.ts";
import { type Row, reply, rows, text } from "../kit/reply.ts";
import type { UndeliveredReminder } from "../kit/undelivered.ts";

const DAYS = 30;
const SHOWN = 15;

/**
 * Reminders that reached nobody, so that a coach can speak to the member. It says who, which kind, when
 * and why; the food stays between the bot and the member.
 */
export const groupUndelivered = command({
  path: ["group", "undelivered"],
  description: "Reminders of the last 30 days that could not reach their member, and why",
  who: "coach",
  options: [],
  input: z.object({}),
  handle: async ({ stores, group, member, now }) => {
    const since = now.subtract({ hours: DAYS * 24 });
    const { total, newest } = await stores.undelivered.ofGroup(group.id, since, SHOWN);
    if (total === 0) return reply(`Every reminder of the last ${DAYS} days reached its member.`);
    const { zone } = member.choice;
    const of = total > newest.length ? `The newest ${newest.length}` : null;
    return reply(`${count(total, "reminder")} of the last ${DAYS} days did not reach anybody.`, {
      parts: [
        rows(
          of,
          newest.map((one) => rowFor(one, zone)),
        ),
        text(...remedies(newest)),
      ],
    });
  },
});

function rowFor(one: UndeliveredReminder, zone: string): Row {
  const told = one.isToldSince ? "; told at a command since" : "";
  return {
    label: one.memberName,
    figure: `${one.kind ?? "unknown kind"}, ${writeWhen(one.dueAt, zone)}`,
    note: `${WHY[causeOf(one.reason)]}${told}`,
  };
}

type Cause = "closed" | "closed, channel refused" | "refused" | "gone" | "no answer" | "unreadable";

const WHY: Readonly<Record<Cause, string>> = {
  closed: "direct messages are closed, and the group has no reminder channel",
  "closed, channel refused":
    "direct messages are closed, and the reminder channel does not let me write",
  refused: "Discord did not let me write to them",
  gone: "no longer a member here",
  "no answer": "Discord gave no answer for too long",
  unreadable: "the record of it was damaged",
};

/** The delivery notes codes of the platform and words of its own (`src/discord/messenger.ts`). */
function causeOf(reason: string): Cause {
  if (reason.includes("closed (")) {
    return reason.includes("channel: ") ? "closed, channel refused" : "closed";
  }
  if (reason.includes("refused (")) return "refused";
  if (reason.includes("member is gone")) return "gone";
  return reason.includes("unreadable") ? "unreadable" : "no answer";
}

/** What the coach can do about it, for the causes that there are. */
function remedies(list: readonly UndeliveredReminder[]): readonly string[] {
  const causes = new Set(list.map(({ reason }) => causeOf(reason)));
  const lines: string[] = [];
  if (causes.has("closed")) {
    lines.push(
      "Name a reminder channel with /group setup channel:#reminders: it takes what direct messages cannot.",
    );
  }
  if (causes.has("closed, channel refused")) {
    lines.push(
      "Let me view the reminder channel and send messages in it, or name another with /group setup.",
    );
  }
  if (causes.has("closed") || causes.has("closed, channel refused")) {
    lines.push("A member opens direct messages in the server's menu, under Privacy Settings.");
  }
  lines.push("Ask the members named to look at /stock: it shows what to throw away.");
  return lines;
}
