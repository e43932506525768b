import { createHash } from "node:crypto";
import { setTimeout as pause } from "node:timers/promises";
import type { Deliveries } from "../jobs/ports.ts";
import { chunks } from "./chunks.ts";
import { toColumn } from "./documents.ts";
import type { PrismaClient } from "./generated/client.ts";
import type { ReminderColumns } from "./rows.ts";

type ClaimNext = Parameters<Deliveries["claimNext"]>[0];
type ClaimAgain = Parameters<Deliveries["claimAgain"]>[0];

/** A row that is held now, and the plan of its member that it followed from. */
export type TakenRow = ReminderColumns & { readonly planVersion: number };

/**
 * Taking work that several workers may want at once, so that each piece is taken by one of them. The
 * only thing that is said differently to the two databases.
 */
export interface Taking {
  /** See `Deliveries.claimNext`. */
  claimNext(claim: ClaimNext): Promise<readonly TakenRow[]>;
  /** See `Deliveries.claimAgain`. */
  claimAgain(claim: ClaimAgain): Promise<readonly ReminderColumns[]>;
  /** See `Deliveries.others`. */
  others(worker: string, now: Date): Promise<number>;
  /**
   * Ids of members to derive anew, at most `limit`, earliest first. They come again after two minutes
   * unless the deriving sets another time, so that a worker that dies loses nobody. See
   * `Deliveries.toReplan`.
   */
  replans(now: Date, limit: number): Promise<readonly string[]>;
}

/** How long a member whose reminders are to be derived anew is left to the worker that took them. */
const REPLAN_LEASE_MS = 120_000;

/** The platform takes a nonce of 25 characters (resources/message). */
const NONCE_LENGTH = 25;
/** Rows of one message; of a member with more, the rest make the next one. */
const ROWS_MAX = 200;
/** Due rows that are looked at, however few messages are wanted: a member may have several, others be at them. */
const SEEN_LEAST = 200;
/** How often a worker looks again where others were at all it saw, and the longest first pause, ms. */
const ROUNDS = 6;
const ROUND_MS = 10;

/** When a member taken now is taken again if nothing comes of it. */
function replanLease(now: Date): Date {
  return new Date(now.getTime() + REPLAN_LEASE_MS);
}

/** On a file, which one process has for itself and one connection writes to: statement after statement. */
export function takingFromFile(db: PrismaClient): Taking {
  return {
    claimNext: async ({ worker, now, until, leaseUntil, limit }) => {
      const wanted = await nextFromFile(db, toColumn(now), toColumn(until), limit);
      if (wanted.length === 0) return [];
      const pairs = wanted.flatMap((ids) => ids.map((id) => [id, nonceOf(ids)]));
      const taken = await db.$queryRaw<{ id: string; planVersion: number }[]>`
        UPDATE "Reminder"
           SET "state" = 'claimed', "nonce" = w."nonce", "claimedBy" = ${worker},
               "leaseUntil" = ${toColumn(leaseUntil)}, "attempts" = "attempts" + 1
          FROM (SELECT json_extract("value", '$[0]') AS "id", json_extract("value", '$[1]') AS "nonce"
                  FROM json_each(${JSON.stringify(pairs)})) AS w
         WHERE "Reminder"."id" = w."id" AND "state" = 'scheduled' AND "dueAt" <= ${toColumn(until)}
        RETURNING "id", (SELECT m."planVersion" FROM "Member" AS m WHERE m."id" = "memberId")
                        AS "planVersion"`;
      const versions = new Map(taken.map(({ id, planVersion }) => [id, Number(planVersion)]));
      const rows: TakenRow[] = [];
      for (const ids of chunks([...versions.keys()])) {
        const found = await db.reminder.findMany({ where: { id: { in: [...ids] } } });
        for (const row of found) rows.push({ ...row, planVersion: versions.get(row.id) ?? 0 });
      }
      return rows;
    },

    claimAgain: ({ memberId, nonce, worker, now, leaseUntil }) =>
      db.reminder.updateManyAndReturn({
        where: { memberId, nonce, state: "claimed", leaseUntil: { lte: toColumn(now) } },
        data: {
          claimedBy: worker,
          leaseUntil: toColumn(leaseUntil),
          attempts: { increment: 1 },
        },
      }),

    others: async () => 0,

    replans: async (now, limit) => {
      const due = await db.member.findMany({
        where: { replanAt: { lte: now } },
        orderBy: [{ replanAt: "asc" }, { id: "asc" }],
        take: limit,
        select: { id: true },
      });
      const ids = due.map(({ id }) => id);
      for (const some of chunks(ids)) {
        await db.member.updateMany({
          where: { id: { in: [...some] }, replanAt: { lte: now } },
          data: { replanAt: replanLease(now) },
        });
      }
      return ids;
    },
  };
}

/**
 * On a server, where any number of processes take work, without waiting for each other. Who takes new
 * messages locks their members first, passing by those that are locked: as every rewriting of a member's
 * reminders does, so no two statements can hold a part each and wait for the other's, and the rows of one
 * message are never parted between two workers. What another one took or moved in the meantime fails the
 * condition of the update, which is asked of the rows as they are by then.
 */
export function takingFromServer(db: PrismaClient): Taking {
  return {
    claimNext: async (claim) => {
      for (let round = 1; ; round += 1) {
        const taken = await nextFromServer(db, claim);
        if (taken.length > 0 || round === ROUNDS) return taken;
        // Nothing is due, or all that was seen is being taken by others, who are through in a moment.
        const one = await db.reminder.findFirst({
          where: { state: "scheduled", dueAt: { lte: toColumn(claim.now) } },
          // In this order the index is walked; in none the planner may read the whole table.
          orderBy: { dueAt: "asc" },
          select: { id: true },
        });
        if (one === null) return [];
        await pause(Math.random() * ROUND_MS * round);
      }
    },

    claimAgain: ({ memberId, nonce, worker, now, leaseUntil }) => {
      const at = toColumn(now);
      return db.$queryRaw<ReminderColumns[]>`
        WITH "owner" AS MATERIALIZED (
          SELECT "id" FROM "Member" WHERE "id" = ${memberId} FOR NO KEY UPDATE SKIP LOCKED
        )
        UPDATE "Reminder" AS r
           SET "claimedBy" = ${worker}, "leaseUntil" = ${toColumn(leaseUntil)},
               "attempts" = r."attempts" + 1
          FROM "owner" AS o
         WHERE r."memberId" = o."id"
           AND r."nonce" = ${nonce} AND r."state" = 'claimed' AND r."leaseUntil" <= ${at}
        RETURNING r.*`;
    },

    others: async (worker, now) => {
      const found = await db.reminder.findMany({
        where: { state: "claimed", leaseUntil: { gt: now }, claimedBy: { not: worker } },
        distinct: ["claimedBy"],
        select: { claimedBy: true },
      });
      return found.length;
    },

    replans: async (now, limit) => {
      const taken = await db.$queryRaw<{ id: string }[]>`
        WITH "free" AS MATERIALIZED (
          SELECT "id", "replanAt" FROM "Member" WHERE "replanAt" <= ${now}
           ORDER BY "replanAt", "id" LIMIT ${limit} FOR NO KEY UPDATE SKIP LOCKED
        ), "taken" AS (
          UPDATE "Member" AS m SET "replanAt" = ${replanLease(now)}
            FROM "free" WHERE m."id" = "free"."id" RETURNING m."id"
        )
        SELECT "id" FROM "taken" JOIN "free" USING ("id") ORDER BY "free"."replanAt", "id"`;
      return taken.map(({ id }) => id);
    },
  };
}

/**
 * The next messages, in one statement. See `Deliveries.claimNext`. Rows are found again by their place in
 * the table, which saves a walk through an index; of one that was changed since, the conditions are asked
 * again.
 */
function nextFromServer(
  db: PrismaClient,
  { worker, now, until, leaseUntil, limit }: ClaimNext,
): Promise<TakenRow[]> {
  const by = toColumn(until);
  const seen = Math.max(limit, SEEN_LEAST);
  return db.$queryRaw<TakenRow[]>`
    WITH "due" AS MATERIALIZED (
      SELECT "memberId", min("dueAt") AS "dueAt"
        FROM (SELECT "memberId", "dueAt" FROM "Reminder"
               WHERE "state" = 'scheduled' AND "dueAt" <= ${toColumn(now)}
               ORDER BY "dueAt" LIMIT ${seen}) AS d
       GROUP BY "memberId"
    ), "owner" AS MATERIALIZED (
      SELECT o.* FROM (SELECT "memberId" FROM "due" ORDER BY "dueAt", "memberId") AS d
       CROSS JOIN LATERAL (
         SELECT "id", "planVersion" FROM "Member" AS m WHERE m."id" = d."memberId"
            FOR NO KEY UPDATE SKIP LOCKED
       ) AS o
       LIMIT ${limit}
    ), "wanted" AS MATERIALIZED (
      SELECT r.ctid AS "at", o."planVersion", row_number() OVER "own" AS "place",
             string_agg(r."id", ' ') OVER ("own" ROWS BETWEEN UNBOUNDED PRECEDING
                                                          AND UNBOUNDED FOLLOWING) AS "ids"
        FROM "owner" AS o JOIN "Reminder" AS r ON r."memberId" = o."id"
       WHERE r."state" = 'scheduled' AND r."dueAt" <= ${by}
      WINDOW "own" AS (PARTITION BY r."memberId" ORDER BY r."dueAt", r."id")
    )
    UPDATE "Reminder" AS r
       SET "state" = 'claimed', "claimedBy" = ${worker}, "leaseUntil" = ${toColumn(leaseUntil)},
           "nonce" = left('r' || encode(sha256(convert_to(w."ids", 'UTF8')), 'hex'), ${NONCE_LENGTH}),
           "attempts" = r."attempts" + 1
      FROM "wanted" AS w
     WHERE r.ctid = w."at" AND w."place" <= ${ROWS_MAX}
       AND r."state" = 'scheduled' AND r."dueAt" <= ${by}
    RETURNING r."id", r."memberId", r."kind", r."key", r."dueAt", r."helpsUntil", r."about",
              r."state", r."attempts", r."nonce", r."reason", w."planVersion"`;
}

/** Ids of the rows of the next messages, message by message. */
async function nextFromFile(
  db: PrismaClient,
  now: Date,
  until: Date,
  limit: number,
): Promise<readonly (readonly string[])[]> {
  const due = await db.reminder.findMany({
    where: { state: "scheduled", dueAt: { lte: now } },
    orderBy: { dueAt: "asc" },
    take: Math.max(limit, SEEN_LEAST),
    select: { memberId: true },
  });
  const members = [...new Set(due.map(({ memberId }) => memberId))].slice(0, limit);
  const byMember = new Map(members.map((id): [string, string[]] => [id, []]));
  for (const some of chunks(members)) {
    const found = await db.reminder.findMany({
      where: { memberId: { in: [...some] }, state: "scheduled", dueAt: { lte: until } },
      orderBy: [{ dueAt: "asc" }, { id: "asc" }],
      select: { id: true, memberId: true },
    });
    for (const { id, memberId } of found) byMember.get(memberId)?.push(id);
  }
  return [...byMember.values()].map((ids) => ids.slice(0, ROWS_MAX)).filter(({ length }) => length);
}

/**
 * The nonce of a message follows from all of its rows: of two workers that saw different rows of a member,
 * neither message can pass for the other, and nothing is taken for told that was not.
 */
function nonceOf(ids: readonly string[]): string {
  const all = createHash("sha256").update(ids.toSorted().join(" ")).digest("hex");
  return `r${all}`.slice(0, NONCE_LENGTH);
}
