import { chunks } from "./chunks.ts";
import type { PrismaClient } from "./generated/client.ts";
import type { ReminderColumns as Row } from "./taking.ts";

/** How many times the limit is read to complete the members of a page. */
const COMPLETING = 5;

/** Earliest first, and always the same order among equals. */
export function byDueAt(a: Row, b: Row): number {
  const order = a.dueAt.getTime() - b.dueAt.getTime();
  if (order !== 0) return order;
  if (a.memberId !== b.memberId) return a.memberId < b.memberId ? -1 : 1;
  return a.key < b.key ? -1 : 1;
}

/** Scheduled and due, or claimed with a lease that ran out. One indexed look-up each. */
async function dueNow(db: PrismaClient, now: Date, take: number): Promise<readonly Row[]> {
  const scheduled = await db.reminder.findMany({
    where: { state: "scheduled", dueAt: { lte: now } },
    orderBy: { dueAt: "asc" },
    take,
  });
  const abandoned = await db.reminder.findMany({
    where: { state: "claimed", leaseUntil: { lte: now } },
    orderBy: { leaseUntil: "asc" },
    take,
  });
  return [...scheduled, ...abandoned];
}

/** What else is scheduled for these members from one instant to another and can go with what is due. */
async function alsoDue(
  db: PrismaClient,
  members: readonly string[],
  from: Date,
  until: Date,
  take: number,
): Promise<readonly Row[]> {
  const found = await Promise.all(
    chunks(members).map((some) =>
      db.reminder.findMany({
        where: {
          memberId: { in: [...some] },
          state: "scheduled",
          dueAt: { gte: from, lte: until },
        },
        orderBy: { dueAt: "asc" },
        take,
      }),
    ),
  );
  return found.flat();
}

/** As many members as fit in the limit, each with all their rows; of a first one too large, the earliest. */
function wholeMembers(rows: readonly Row[], limit: number): readonly Row[] {
  const byMember = new Map<string, Row[]>();
  for (const row of rows.toSorted(byDueAt)) {
    const others = byMember.get(row.memberId);
    if (others === undefined) byMember.set(row.memberId, [row]);
    else others.push(row);
  }
  const page: Row[] = [];
  for (const own of byMember.values()) {
    if (page.length > 0 && page.length + own.length > limit) break;
    page.push(...own);
  }
  return page.slice(0, limit).toSorted(byDueAt);
}

/**
 * Rows of members who have something due at `now`, and what is scheduled for the same members by
 * `until`; at most `limit` rows, the earliest first. At seven in the evening thousands are due at the
 * same instant: a page ends between two members, so that no message is parted by it.
 */
export async function dueRows(
  db: PrismaClient,
  now: Date,
  until: Date,
  limit: number,
): Promise<readonly Row[]> {
  const first = await dueNow(db, now, limit);
  const members = [...new Set(first.map((row) => row.memberId))];
  const scheduled = first.filter((row) => row.state === "scheduled");
  // When the page is full, rows of its members may lie behind its end, due as well.
  const isFull = scheduled.length === limit;
  const end = scheduled.at(-1)?.dueAt ?? now;
  const from = isFull ? end : now;
  const more = await alsoDue(db, members, from, until > now ? until : now, limit * COMPLETING);
  const rows = new Map([...first, ...more].map((row) => [row.id, row]));
  return wholeMembers([...rows.values()], limit);
}
