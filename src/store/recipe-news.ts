import type { Member } from "../../commands/kit/ports.ts";
import type { RecipeTelling } from "../../commands/kit/publication.ts";
import type { GroupId, RecipeId } from "../../shared/ids.ts";
import { noticeTimes } from "../../shared/reminder/notice.ts";
import type { DerivedReminder } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";
import { chunks } from "./chunks.ts";
import { toColumn } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { isConflict, patiently } from "./patience.ts";
import { columnsOf } from "./reminder-diff.ts";
import { toMember } from "./rows.ts";

/** Tells every process that its index of the group's recipes no longer holds. */
export const NEXT_VERSION = { recipesVersion: { increment: 1 } } as const;

/** Members who have portions of a recipe or cooked it since then, whichever revision. */
export async function membersWho(
  db: PrismaClient,
  groupId: GroupId,
  id: RecipeId,
  since: Instant,
): Promise<readonly Member[]> {
  const ofIt = { revision: { recipeId: id } };
  const rows = await db.member.findMany({
    where: {
      groupId,
      OR: [
        { lots: { some: { halves: { gt: 0 }, batch: ofIt } } },
        { batches: { some: { ...ofIt, cookedAt: { gte: toColumn(since) } } } },
      ],
    },
    orderBy: { id: "asc" },
    include: { group: true },
  });
  return rows.map(toMember);
}

/**
 * The statements that tell whom a change concerns, for the array transaction of the change itself: nobody
 * is told of what did not happen, and it does not happen without them. The key makes it once per member.
 */
export async function tellRows(
  db: PrismaClient,
  at: { readonly groupId: GroupId; readonly id: RecipeId; readonly now: Instant },
  tell: RecipeTelling,
): Promise<readonly Prisma.PrismaPromise<unknown>[]> {
  const members = await membersWho(db, at.groupId, at.id, tell.since);
  const data = members
    .filter((member) => member.wantsRecipeNews && member.id !== tell.by)
    .map((member) => ({
      id: tell.newId(),
      memberId: member.id,
      key: tell.key,
      ...columnsOf(noticeOf(member, tell, at.now)),
    }));
  return chunks(data).map((some) => db.reminder.createMany({ data: [...some] }));
}

function noticeOf({ choice }: Member, tell: RecipeTelling, now: Instant): DerivedReminder {
  const { kind, key, title, news } = tell;
  const nothing = { lotId: null, portions: 0, date: null, meal: null, mealAt: null };
  return { kind, key, ...noticeTimes(choice, now), about: { ...nothing, title, news } };
}

/** Hides a recipe and tells whom that concerns, both or neither; false when it is hidden already. */
export async function withdraw(
  db: PrismaClient,
  at: { readonly groupId: GroupId; readonly id: RecipeId; readonly now: Instant },
  tell: RecipeTelling | null,
): Promise<boolean> {
  const { groupId, id, now } = at;
  const told = tell === null ? [] : await tellRows(db, at, tell);
  try {
    await patiently(() =>
      db.$transaction([
        // Fails, and all of it, when somebody else was first.
        db.recipe.update({
          where: { id, groupId, withdrawnAt: null },
          data: { withdrawnAt: toColumn(now) },
        }),
        db.group.update({ where: { id: groupId }, data: NEXT_VERSION }),
        ...told,
      ]),
    );
    return true;
  } catch (error) {
    if (!isConflict(error)) throw error;
    return false;
  }
}
