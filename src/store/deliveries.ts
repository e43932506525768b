import { type MemberId, memberId } from "../../shared/ids.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";
import type { Deliveries, Recipient } from "../jobs/ports.ts";
import { chunks } from "./chunks.ts";
import { toColumn, toColumnOrNull, toInstant, toInstantOrNull } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { patiently } from "./patience.ts";
import { type ReminderColumns as Row, toGroup, toMember, toReminder } from "./rows.ts";
import type { Taking } from "./taking.ts";

type Result = Parameters<Deliveries["settle"]>[0]["result"];

/**
 * Rows as values. One that cannot be read (edited by hand, say) must not hold up everybody else's: it is
 * marked failed, with the reason, where it shows.
 */
async function readable(
  db: PrismaClient,
  rows: readonly Row[],
  now: Date,
): Promise<readonly ReminderRow[]> {
  const read: ReminderRow[] = [];
  const unreadable: string[] = [];
  for (const row of rows) {
    try {
      read.push(toReminder(row));
    } catch {
      unreadable.push(row.id);
    }
  }
  for (const ids of chunks(unreadable)) {
    await patiently(() =>
      db.reminder.updateMany({
        where: { id: { in: [...ids] }, state: { in: ["scheduled", "claimed"] } },
        data: { state: "failed", reason: "unreadable", settledAt: now, leaseUntil: null },
      }),
    );
  }
  return read;
}

/** One that cannot be read (edited by hand, say) must not hold up those that are looked up with it. */
function toRecipient(
  row: Prisma.MemberGetPayload<{ include: { group: true } }>,
): Recipient | "unreadable" {
  try {
    const replanAt = toInstantOrNull(row.replanAt);
    return { member: toMember(row), group: toGroup(row.group), replanAt };
  } catch {
    return "unreadable";
  }
}

/** Earliest first, and always the same order among equals. */
function byDueAt(a: Row, b: Row): number {
  const order = a.dueAt.getTime() - b.dueAt.getTime();
  if (order !== 0) return order;
  if (a.memberId !== b.memberId) return a.memberId < b.memberId ? -1 : 1;
  return a.key < b.key ? -1 : 1;
}

/** The reason of rows that are due and not sent because their member is away, or asleep. */
export const WAITS_FOR_MEMBER = "away or quiet hours";

/** What becomes of the rows of a delivery. Whoever held them holds them no longer. */
function settledColumns(result: Result, at: Instant) {
  const settledAt = toColumn(at);
  const letGo = { claimedBy: null, leaseUntil: null };
  switch (result.state) {
    case "sent": {
      const { state, messageId, where } = result;
      return { ...letGo, state, messageId, deliveredTo: where, settledAt, reason: null };
    }
    case "failed":
    case "expired":
      return { ...letGo, state: result.state, reason: result.reason, settledAt };
    case "retry":
      return { ...letGo, leaseUntil: toColumn(result.retryAt), reason: result.reason };
    case "waits":
      return {
        ...letGo,
        leaseUntil: toColumn(result.until),
        reason: WAITS_FOR_MEMBER,
        attempts: { decrement: 1 },
      };
  }
}

export function prismaDeliveries(db: PrismaClient, taking: Taking): Deliveries {
  return {
    claimNext: async (claim) => {
      const planVersions = new Map<MemberId, number>();
      for (;;) {
        const taken = await patiently(() => taking.claimNext(claim));
        const rows = await readable(db, taken.toSorted(byDueAt), toColumn(claim.now));
        for (const { memberId: id, planVersion } of taken) {
          planVersions.set(memberId(id), Number(planVersion));
        }
        // Where none of them could be read, the next ones are claimed instead.
        if (rows.length > 0 || taken.length === 0) return { rows, planVersions };
      }
    },

    abandoned: async (now, limit) => {
      const rows = await db.reminder.findMany({
        where: { state: "claimed", leaseUntil: { lte: toColumn(now) } },
        orderBy: [{ leaseUntil: "asc" }, { id: "asc" }],
        take: limit,
      });
      return readable(db, rows, toColumn(now));
    },

    claimAgain: async (claim) => {
      const rows = await patiently(() => taking.claimAgain(claim));
      return readable(db, rows.toSorted(byDueAt), toColumn(claim.now));
    },

    others: (worker, now) => patiently(() => taking.others(worker, toColumn(now))),

    recipients: async (ids) => {
      const found = await Promise.all(
        chunks([...new Set(ids)]).map((some) =>
          db.member.findMany({ where: { id: { in: [...some] } }, include: { group: true } }),
        ),
      );
      return new Map(found.flat().map((row) => [memberId(row.id), toRecipient(row)]));
    },

    settle: async ({ nonce, ids, worker, at, result }) => {
      const { count } = await patiently(() =>
        db.reminder.updateMany({
          where: { id: { in: [...ids] }, nonce, claimedBy: worker, state: "claimed" },
          data: settledColumns(result, at),
        }),
      );
      return count > 0;
    },

    withdraw: async ({ rows, nonce, worker, at, reason }) => {
      let withdrawn = 0;
      for (const { id, key } of rows) {
        const { count } = await patiently(() =>
          db.reminder.updateMany({
            where: { id, nonce, claimedBy: worker, state: "claimed" },
            data: { ...settledColumns({ state: "expired", reason }, at), key: `${key}/gone/${id}` },
          }),
        );
        withdrawn += count;
      }
      return withdrawn;
    },

    nextDue: async () => {
      const scheduled = await db.reminder.findFirst({
        where: { state: "scheduled" },
        orderBy: { dueAt: "asc" },
        select: { dueAt: true },
      });
      const claimed = await db.reminder.findFirst({
        where: { state: "claimed" },
        orderBy: { leaseUntil: "asc" },
        select: { leaseUntil: true },
      });
      const member = await db.member.findFirst({
        where: { replanAt: { not: null } },
        orderBy: { replanAt: "asc" },
        select: { replanAt: true },
      });
      const times = [scheduled?.dueAt, claimed?.leaseUntil, member?.replanAt]
        .filter((time) => time instanceof Date)
        .toSorted((a, b) => a.getTime() - b.getTime());
      return times[0] === undefined ? null : toInstant(times[0]);
    },

    toReplan: async (now, limit) => {
      const ids = await patiently(() => taking.replans(toColumn(now), limit));
      return ids.map(memberId);
    },

    setDirectClosed: async (id, at) => {
      await patiently(() =>
        db.member.updateMany({ where: { id }, data: { directClosedAt: toColumnOrNull(at) } }),
      );
    },

    group: async (id) => {
      const row = await db.member.findUnique({ where: { id }, include: { group: true } });
      return row === null ? null : toGroup(row.group);
    },
  };
}
