import type { GroupFoods } from "../../commands/kit/ports.ts";
import type { Food } from "../../shared/food/types.ts";
import { foodId } from "../../shared/ids.ts";
import { fold } from "../../shared/words/fold.ts";
import { foodDocument, fromText, toColumn, toText } from "./documents.ts";
import type { PrismaClient } from "./generated/client.ts";
import { isConflict, patiently } from "./patience.ts";

type Putting = Parameters<GroupFoods["put"]>[0];
type Put = Awaited<ReturnType<GroupFoods["put"]>>;

/** How often a food is put when others of the group get in between. */
const TRIES = 20;

async function write(db: PrismaClient, input: Putting): Promise<Put> {
  const { groupId, food } = input;
  const nameFold = fold(food.name);
  // The version first: whatever changes while the foods are read makes the write fail.
  const { foodsVersion } = await db.group.findUniqueOrThrow({
    where: { id: groupId },
    select: { foodsVersion: true },
  });
  const known = await db.food.findUnique({ where: { groupId_nameFold: { groupId, nameFold } } });
  const last = await db.food.findFirst({ where: { groupId }, orderBy: { position: "desc" } });
  const kept: Food = known === null ? food : { ...food, id: foodId(known.id) };
  const said = {
    document: toText(foodDocument, kept),
    causeId: input.causeId,
    putById: input.by,
    putAt: toColumn(input.now),
  };
  const place = { id: food.id, groupId, nameFold, position: (last?.position ?? 0) + 1 };
  // The first statement holds the group's row and fails when another food came in between; then all of
  // it is tried anew.
  await db.$transaction([
    db.group.update({
      where: { id: groupId, foodsVersion },
      data: { foodsVersion: foodsVersion + 1 },
      select: { id: true },
    }),
    known === null
      ? db.food.create({ data: { ...place, ...said } })
      : db.food.update({ where: { id: known.id }, data: said }),
  ]);
  return { food: kept, isNew: known === null };
}

async function put(db: PrismaClient, input: Putting): Promise<Put> {
  const { causeId, groupId } = input;
  for (let tries = 1; ; tries++) {
    const before = await db.food.findFirst({ where: { causeId, groupId } });
    if (before !== null) return { food: fromText(foodDocument, before.document), isNew: false };
    try {
      return await patiently(() => write(db, input));
    } catch (error) {
      if (!isConflict(error) || tries === TRIES) throw error;
    }
  }
}

export function prismaGroupFoods(db: PrismaClient): GroupFoods {
  return {
    list: async (groupId) => {
      const rows = await db.food.findMany({ where: { groupId }, orderBy: { position: "asc" } });
      return rows.map((row) => fromText(foodDocument, row.document));
    },

    put: (input) => put(db, input),
  };
}
