import type { MemberId } from "../../shared/ids.ts";
import type { DerivedReminder } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";
import { chunks } from "./chunks.ts";
import { toColumnOrNull } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { columnsOf, diffReminders, type KnownReminder, type Rewrite } from "./reminder-diff.ts";

/** What a write to a member's stock or reminders was decided on. */
export interface Standing {
  readonly stockVersion: number;
  readonly planVersion: number;
  /** The scheduled rows, and the rows of the keys asked for whatever their state. */
  readonly known: readonly KnownReminder[];
}

/** Whether times and meals still are those that a plan was derived from. */
export function isAsPlanned(
  { planVersion }: Standing,
  plan: { readonly planVersion?: number },
): boolean {
  return plan.planVersion === undefined || plan.planVersion === planVersion;
}

/**
 * Reads what a rewrite compares with. The versions are read first: whatever changes while the rows are
 * read makes the write fail rather than go by a mixture.
 */
export async function readStanding(
  db: PrismaClient,
  memberId: MemberId,
  desired: readonly DerivedReminder[],
): Promise<Standing> {
  const versions = await db.member.findUniqueOrThrow({
    where: { id: memberId },
    select: { stockVersion: true, planVersion: true },
  });
  const scheduled = await db.reminder.findMany({ where: { memberId, state: "scheduled" } });
  const keys = desired.map((reminder) => reminder.key);
  const others = await Promise.all(
    chunks(keys).map((some) =>
      db.reminder.findMany({
        where: { memberId, key: { in: [...some] }, state: { not: "scheduled" } },
      }),
    ),
  );
  return { ...versions, known: [...scheduled, ...others.flat()] };
}

/** A derived set of reminders, to take the place of those that are kept. */
interface NewSet extends Rewrite {
  /** When they are to be derived anew. */
  readonly replanAt: Instant | null;
}

/**
 * The statements that turn the known rows into the derived set, for an array transaction that is
 * conditional on the standing. A delivery may claim a row meanwhile: each statement touches a row only
 * while it is still scheduled. Where rows are left because they are due, all is derived anew at once:
 * until then nobody takes them for certain, since what they say may have changed.
 */
export function rewriteReminders(
  db: PrismaClient,
  memberId: MemberId,
  set: NewSet,
  newId: () => string,
): Prisma.PrismaPromise<unknown>[] {
  const { insert, update, remove, leavesDue } = diffReminders(set);
  return [
    replanLater(db, memberId, toColumnOrNull(leavesDue ? set.now : set.replanAt)),
    ...chunks(remove).map((ids) =>
      db.reminder.deleteMany({ where: { id: { in: [...ids] }, state: "scheduled" } }),
    ),
    ...update.map(({ id, columns }) =>
      db.reminder.updateMany({ where: { id, state: "scheduled" }, data: columns }),
    ),
    ...chunks(insert).map((some) =>
      db.reminder.createMany({
        data: some.map((reminder) => ({
          id: newId(),
          memberId,
          key: reminder.key,
          ...columnsOf(reminder),
        })),
      }),
    ),
  ];
}

/**
 * The guard: moves the member's versions on if they still are what the write was decided on, and fails
 * the transaction it is in when they are not.
 */
export function moveOn(
  db: PrismaClient,
  memberId: MemberId,
  standing: Standing,
  data: Prisma.MemberUpdateInput,
): Prisma.PrismaPromise<unknown> {
  const { stockVersion, planVersion } = standing;
  return db.member.update({
    where: { id: memberId, stockVersion, planVersion },
    data: { ...data, planVersion: planVersion + 1 },
    select: { id: true },
  });
}

/** A replan that was asked for: due at once, whatever the clock says. */
export const AT_ONCE = new Date(0);

/**
 * Sets when a member's reminders are derived anew, for the same array transaction. Not when that was
 * asked for meanwhile (the group's zone changed, say): what is being written may come from before.
 */
function replanLater(
  db: PrismaClient,
  memberId: MemberId,
  replanAt: Date | null,
): Prisma.PrismaPromise<unknown> {
  const notAsked = { OR: [{ replanAt: null }, { replanAt: { not: AT_ONCE } }] };
  return db.member.updateMany({ where: { id: memberId, ...notAsked }, data: { replanAt } });
}
