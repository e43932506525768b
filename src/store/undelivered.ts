import type { Undelivered } from "../../commands/kit/undelivered.ts";
import { memberId } from "../../shared/ids.ts";
import { UNTOLD } from "../jobs/ports.ts";
import { reminderKindWord, toColumn, toInstant } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { patiently } from "./patience.ts";
import { toReminder } from "./rows.ts";

/** Written in the place of where it was delivered, once the member has been told at a command. */
const AT_A_COMMAND = "command";

/** Failed for good, or come too late with nobody told. */
function reachedNobody(since: Date): Prisma.ReminderWhereInput {
  return {
    dueAt: { gte: since },
    OR: [{ state: "failed" }, { state: "expired", reason: { startsWith: UNTOLD } }],
  };
}

export function prismaUndelivered(db: PrismaClient): Undelivered {
  return {
    ofGroup: async (groupId, since, limit) => {
      const where = { ...reachedNobody(toColumn(since)), member: { groupId } };
      const rows = await db.reminder.findMany({
        where,
        orderBy: [{ dueAt: "desc" }, { id: "asc" }],
        take: limit,
        select: {
          kind: true,
          dueAt: true,
          reason: true,
          deliveredTo: true,
          member: { select: { id: true, name: true } },
        },
      });
      return {
        total: rows.length < limit ? rows.length : await db.reminder.count({ where }),
        newest: rows.map(({ member, kind, dueAt, reason, deliveredTo }) => ({
          memberId: memberId(member.id),
          memberName: member.name,
          kind: reminderKindWord.safeParse(kind).data ?? null,
          dueAt: toInstant(dueAt),
          reason: reason ?? "",
          isToldSince: deliveredTo === AT_A_COMMAND,
        })),
      };
    },

    untold: async (id, since, limit) => {
      const rows = await db.reminder.findMany({
        where: { memberId: id, deliveredTo: null, ...reachedNobody(toColumn(since)) },
        orderBy: [{ dueAt: "asc" }, { id: "asc" }],
        take: limit,
      });
      return rows.flatMap((row) => {
        try {
          return [toReminder(row)];
        } catch {
          // One that cannot be read cannot be told either; the coach sees that it failed.
          return [];
        }
      });
    },

    markTold: async (ids) => {
      await patiently(() =>
        db.reminder.updateMany({
          where: { id: { in: [...ids] }, state: { in: ["failed", "expired"] } },
          data: { deliveredTo: AT_A_COMMAND },
        }),
      );
    },
  };
}
