import type { Deliveries } from "../jobs/ports.ts";
import { chunks } from "./chunks.ts";
import { toColumn } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";

export type ReminderColumns = Prisma.ReminderGetPayload<object>;
type Claim = Parameters<Deliveries["claim"]>[0];
type ClaimNew = Parameters<Deliveries["claimNew"]>[0];

/** A row that is held now, and the plan of its member that it followed from. */
export interface TakenNew {
  readonly id: string;
  readonly planVersion: number;
}

/**
 * Taking work that several workers may want at once, so that each piece is taken by one of them. The
 * only thing that is said differently to the two databases.
 */
export interface Taking {
  /** See `Deliveries.claim`. */
  claim(claim: Claim): Promise<readonly ReminderColumns[]>;
  /** See `Deliveries.claimNew`. */
  claimNew(claim: ClaimNew): Promise<readonly TakenNew[]>;
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

/** When a member taken now is taken again if nothing comes of it. */
function replanLease(now: Date): Date {
  return new Date(now.getTime() + REPLAN_LEASE_MS);
}

/** On a file, which one process has for itself and one connection writes to: statement after statement. */
export function takingFromFile(db: PrismaClient): Taking {
  return {
    claim: ({ ids, nonce, worker, now, leaseUntil }) =>
      db.reminder.updateManyAndReturn({
        where: {
          OR: [
            { id: { in: [...ids] }, state: "scheduled" },
            // All rows of an abandoned delivery, named or not: they are one message.
            { nonce, state: "claimed", leaseUntil: { lte: toColumn(now) } },
          ],
        },
        data: {
          state: "claimed",
          nonce,
          claimedBy: worker,
          leaseUntil: toColumn(leaseUntil),
          attempts: { increment: 1 },
        },
      }),

    claimNew: ({ fresh, worker, leaseUntil }) => {
      const wanted = fresh.flatMap(({ nonce, ids }) => ids.map((id) => [id, nonce]));
      return db.$queryRaw<TakenNew[]>`
        UPDATE "Reminder"
           SET "state" = 'claimed', "nonce" = w."nonce", "claimedBy" = ${worker},
               "leaseUntil" = ${toColumn(leaseUntil)}, "attempts" = "attempts" + 1
          FROM (SELECT json_extract("value", '$[0]') AS "id", json_extract("value", '$[1]') AS "nonce"
                  FROM json_each(${JSON.stringify(wanted)})) AS w
         WHERE "Reminder"."id" = w."id" AND "state" = 'scheduled'
        RETURNING "id", (SELECT m."planVersion" FROM "Member" AS m WHERE m."id" = "memberId")
                        AS "planVersion"`;
    },

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

/** Sets the locks on deliveries apart from the others that the bot takes. */
const DELIVERY_LOCK = 6_212_012;

/**
 * On a server, where any number of processes take work. Two workers at one delivery (the same rows, and
 * so the same nonce) do not wait for each other: the second gets nothing and goes on to the next. Who
 * goes ahead locks the member before the rows, as every change of a member's reminders does, so no two
 * statements can hold a part each and wait for the other's, and the rows of one message are never
 * parted between two workers.
 */
export function takingFromServer(db: PrismaClient): Taking {
  return {
    claim: ({ ids, nonce, worker, now, leaseUntil }) => {
      const [at, until] = [toColumn(now), toColumn(leaseUntil)];
      return db.$queryRaw<ReminderColumns[]>`
        WITH "turn" AS MATERIALIZED (
          SELECT pg_try_advisory_xact_lock(${DELIVERY_LOCK}::int, hashtext(${nonce})) AS "mine"
        ), "wanted" AS MATERIALIZED (
          SELECT "id", "memberId" FROM "Reminder"
           WHERE ("id" = ANY(${[...ids]}) AND "state" = 'scheduled')
              OR ("nonce" = ${nonce} AND "state" = 'claimed' AND "leaseUntil" <= ${at})
        ), "owner" AS MATERIALIZED (
          SELECT "id" FROM "Member"
           WHERE (SELECT "mine" FROM "turn") AND "id" IN (SELECT "memberId" FROM "wanted")
           ORDER BY "id" FOR NO KEY UPDATE
        )
        UPDATE "Reminder" AS r
           SET "state" = 'claimed', "nonce" = ${nonce}, "claimedBy" = ${worker},
               "leaseUntil" = ${until}, "attempts" = r."attempts" + 1
          FROM "wanted" JOIN "owner" ON "owner"."id" = "wanted"."memberId"
         WHERE r."id" = "wanted"."id"
           AND (r."state" = 'scheduled'
                OR (r."nonce" = ${nonce} AND r."state" = 'claimed' AND r."leaseUntil" <= ${at}))
        RETURNING r.*`;
    },

    claimNew: ({ fresh, worker, leaseUntil }) => {
      const wanted = fresh.flatMap(({ nonce, ids }) => ids.map((id) => ({ id, nonce })));
      return db.$queryRaw<TakenNew[]>`
        WITH "asked" AS MATERIALIZED (
          SELECT * FROM unnest(${wanted.map(({ id }) => id)}::text[],
                               ${wanted.map(({ nonce }) => nonce)}::text[]) AS a ("id", "nonce")
        ), "turn" AS MATERIALIZED (
          SELECT "nonce", pg_try_advisory_xact_lock(${DELIVERY_LOCK}::int, hashtext("nonce")) AS "mine"
            FROM (SELECT DISTINCT "nonce" FROM "asked") AS n
        ), "wanted" AS MATERIALIZED (
          SELECT r."id", r."memberId", a."nonce"
            FROM "Reminder" AS r JOIN "asked" AS a ON a."id" = r."id"
            JOIN "turn" AS t ON t."nonce" = a."nonce" AND t."mine"
           WHERE r."state" = 'scheduled'
        ), "owner" AS MATERIALIZED (
          SELECT "id", "planVersion" FROM "Member"
           WHERE "id" IN (SELECT "memberId" FROM "wanted")
           ORDER BY "id" FOR NO KEY UPDATE
        )
        UPDATE "Reminder" AS r
           SET "state" = 'claimed', "nonce" = w."nonce", "claimedBy" = ${worker},
               "leaseUntil" = ${toColumn(leaseUntil)}, "attempts" = r."attempts" + 1
          FROM "wanted" AS w JOIN "owner" AS o ON o."id" = w."memberId"
         WHERE r."id" = w."id" AND r."state" = 'scheduled'
        RETURNING r."id", o."planVersion"`;
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
