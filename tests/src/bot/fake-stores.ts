import type { Group, Member, Stores } from "../../../commands/kit/ports.ts";
import { batchId, groupId, lotId, memberId, revisionId } from "../../../shared/ids.ts";
import type { NutrientSums } from "../../../shared/nutrition/types.ts";
import type { Batch, Lot } from "../../../shared/stock/types.ts";
import { dateIn } from "../../../shared/time.ts";
import { memberNamed, T0 } from "../jobs/fake-deliveries.ts";

export const COACH_ROLE = "role-coach";

export const groups: Record<string, Group> = Object.fromEntries(
  ["g1", "g2"].map((id) => [
    id,
    {
      id: groupId(id),
      name: `Group ${id}`,
      coachRoleId: COACH_ROLE,
      reminderChannelId: null,
      zone: "UTC",
      labelStyle: "eu",
      foodsVersion: 0,
      recipesVersion: 0,
    },
  ]),
);

/** Ana is in g1 and owns lot-ana; Ben is in g1 too and owns lot-ben. */
export const members: readonly Member[] = ["ana", "ben"].map((name) =>
  memberNamed(name, { groupId: groupId("g1") }),
);

function lotOf(owner: string): { readonly lot: Lot; readonly batch: Batch } {
  const lot: Lot = {
    id: lotId(`lot-${owner}`),
    batchId: batchId(`batch-${owner}`),
    place: "fridge",
    portions: 2,
    since: dateIn(T0, "UTC"),
    sinceAt: T0,
    usedDays: 0,
  };
  const batch: Batch = {
    id: lot.batchId,
    memberId: memberId(owner),
    revisionId: revisionId("revision-1"),
    title: "Bean pot",
    portionWord: "portion",
    portionsCooked: 2,
    cookedAt: T0,
    cookedOn: lot.since,
    cookedWeightG: null,
    portionG: 300,
    keeping: {
      fridgeDays: 3,
      freezerMonths: 3,
      freezes: "well",
      reason: "",
      limitedBy: "whole",
      remarks: [],
      longer: null,
    },
    perPortion: {} as NutrientSums,
  };
  return { lot, batch };
}

const unused = (): never => {
  throw new Error("this store is not part of the test");
};

/** Just enough of the stores for finding out who asks. */
export function fakeStores(): Stores {
  return {
    groups: {
      open: async (id) => groups[id] ?? unused(),
      set: unused,
    },
    members: {
      known: async () => null,
      open: async (group, userId, name) =>
        members.find((member) => member.userId === userId && member.groupId === group) ??
        memberNamed(name, { userId, groupId: group }),
      find: async (id) => members.find((member) => member.id === id) ?? null,
      inGroup: unused,
      setProfile: unused,
      setRecipeNews: unused,
    },
    stocks: {
      findLot: async (id) => {
        const owner = id.replace(/^lot-/u, "");
        return id.startsWith("lot-") && members.some(({ name }) => name === owner)
          ? lotOf(owner)
          : null;
      },
      load: unused,
      everyLot: unused,
      lastChange: unused,
      findByCause: unused,
      record: unused,
      ledger: unused,
    },
    reminders: {
      find: async () => null,
      coming: unused,
      replan: unused,
      together: unused,
      again: unused,
    },
    undelivered: { untold: async () => [], ofGroup: unused, markTold: unused },
    recipes: {
      find: unused,
      search: unused,
      publish: unused,
      publishOf: unused,
      all: unused,
      revision: unused,
      source: unused,
      withdraw: unused,
      whoHas: unused,
    },
    keepingWords: { list: unused, add: unused },
    drafts: { list: unused, find: unused, save: unused, drop: unused },
    meals: { list: unused, wishes: unused },
    foods: { list: unused, put: unused },
    targets: { list: unused, add: unused },
  };
}
