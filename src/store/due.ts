import { chunks } from "./chunks.ts";
import type { PrismaClient } from "./generated/client.ts";
import type { ReminderColumns as Row } from "./taking.ts";

/** Before every reminder. */
const EVER = new Date(0);

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

/** What is scheduled for these members from one instant to another. */
async function scheduledFor(
  db: PrismaClient,
  members: readonly string[],
  from: Date,
  until: Date,
  take?: number,
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
        ...(take !== undefined && { take }),
      }),
    ),
  );
  return found.flat();
}

/** The first members whose scheduled rows fit in the limit together; at least one. */
async function firstToFit(
  db: PrismaClient,
  members: readonly string[],
  until: Date,
  limit: number,
): Promise<readonly string[]> {
  const counts = new Map<string, number>();
  for (const some of chunks(members)) {
    const found = await db.reminder.groupBy({
      by: ["memberId"],
      where: { memberId: { in: [...some] }, state: "scheduled", dueAt: { lte: until } },
      _count: true,
    });
    for (const { memberId, _count } of found) counts.set(memberId, _count);
  }
  let rows = 0;
  const end = members.findIndex((member) => {
    rows += counts.get(member) ?? 0;
    return rows > limit;
  });
  return end === -1 ? members : members.slice(0, Math.max(1, end));
}

/** As many members as fit in the limit, each with all their rows; of a first one too large, the earliest. */
function wholeMembers(rows: readonly Row[], limit: number): readonly Row[] {
  const byMember = new Map<string, Row[]>();
  const once = new Map(rows.map((row) => [row.id, row]));
  for (const row of [...once.values()].toSorted(byDueAt)) {
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
  const first = (await dueNow(db, now, limit)).toSorted(byDueAt);
  const members = [...new Set(first.map((row) => row.memberId))];
  const end = until > now ? until : now;
  if (first.length < limit) {
    return wholeMembers([...first, ...(await scheduledFor(db, members, now, end))], limit);
  }
  // When the page is full, rows of its members may lie behind its end, due as well.
  const fitting = await firstToFit(db, members, end, limit);
  const abandoned = first.filter((row) => row.state === "claimed");
  const ours = abandoned.filter((row) => fitting.includes(row.memberId));
  const take = fitting.length === 1 ? limit : undefined;
  const scheduled = await scheduledFor(db, fitting, EVER, end, take);
  return wholeMembers([...ours, ...scheduled], limit);
}
