import type { Members } from "../../commands/kit/ports.ts";
import type { Profile } from "../../shared/people/types.ts";
import { fold } from "../../shared/words/fold.ts";
import { allergensDocument, toText, vulnerableDocument } from "./documents.ts";
import type { PrismaClient } from "./generated/client.ts";
import { patiently } from "./patience.ts";
import { toGroup, toMember } from "./rows.ts";

/** How a member is reminded until they choose: twice a day, and not at night. */
const DEFAULT_CHOICE = {
  morning: "08:00",
  evening: "19:00",
  quietFrom: "22:00",
  quietUntil: "07:00",
  deliverTo: "direct message",
} as const;

/** The columns of a profile; what is not named stays. */
export function profileColumns({ allergens, vulnerable, coachMaySetTargets }: Partial<Profile>) {
  return {
    ...(allergens !== undefined && { allergens: toText(allergensDocument, allergens) }),
    ...(vulnerable !== undefined && { vulnerable: toText(vulnerableDocument, vulnerable) }),
    ...(coachMaySetTargets !== undefined && { coachMaySetTargets }),
  };
}

export function prismaMembers(db: PrismaClient, newId: () => string): Members {
  const include = { group: true } as const;
  return {
    known: async (groupId, userId) => {
      const where = { groupId_userId: { groupId, userId } };
      const row = await db.member.findUnique({ where, include });
      return row === null ? null : { group: toGroup(row.group), member: toMember(row) };
    },

    open: async (groupId, userId, name) => {
      const where = { groupId_userId: { groupId, userId } };
      const known = await db.member.findUnique({ where, include });
      if (known?.name === name) return toMember(known);
      const { zone } = await db.group.findUniqueOrThrow({ where: { id: groupId } });
      const create = { id: newId(), groupId, userId, name, zone, ...DEFAULT_CHOICE };
      // Without its relations, so that it is one statement and two first requests cannot collide.
      await patiently(() => db.member.upsert({ where, create, update: { name } }));
      return toMember(await db.member.findUniqueOrThrow({ where, include }));
    },

    find: async (id) => {
      const row = await db.member.findUnique({ where: { id }, include });
      return row === null ? null : toMember(row);
    },

    inGroup: async (groupId, userIdOrName) => {
      const where = { groupId_userId: { groupId, userId: userIdOrName } };
      const byId = await db.member.findUnique({ where, include });
      if (byId !== null) return toMember(byId);
      // Names are matched here: SQLite folds the case of A to Z only.
      const named = await db.member.findMany({ where: { groupId }, include });
      const same = named.filter(({ name }) => fold(name) === fold(userIdOrName));
      const [only] = same;
      return only === undefined || same.length > 1 ? null : toMember(only);
    },

    setProfile: async (id, patch) => {
      const data = profileColumns(patch);
      await patiently(() => db.member.update({ where: { id }, data }));
      return toMember(await db.member.findUniqueOrThrow({ where: { id }, include }));
    },

    setRecipeNews: async (id, isWanted) => {
      const data = { wantsRecipeNews: isWanted };
      await patiently(() => db.member.update({ where: { id }, data, select: { id: true } }));
    },
  };
}
