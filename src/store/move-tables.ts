import { cleanText } from "./clean-text.ts";
import type {
  Batch,
  Draft,
  Food,
  Group,
  KeepingWord,
  Lot,
  MealRule,
  Member,
  Movement,
  Prisma,
  Recipe,
  Reminder,
  Revision,
  StockChange,
  Target,
} from "./generated/client.ts";

/** A database, or a transaction on one. */
export type Db = Prisma.TransactionClient;

/** Rows read and written at a time: bounds memory, and how long a file holds the process. */
const PAGE = 250;

/** How the rows of a table that belong to a group are read in order and written. */
interface Table<Row> {
  /** The rows of the group that follow a row in a fixed order; from the first when it is null. */
  readonly page: (db: Db, groupId: string, after: Row | null) => Promise<Row[]>;
  readonly write: (db: Db, rows: Row[]) => Promise<unknown>;
}

/** The rows of one table that belong to a group. */
export interface GroupTable {
  /** Copies them and returns how many there are. */
  copy(from: Db, to: Db, groupId: string): Promise<number>;
  /** Compares them one by one: how many there are, or that they differ. */
  compare(from: Db, to: Db, groupId: string): Promise<number | "differ">;
}

/** A row as text, as it is after a copy: with clean text in it. */
function textOf(row: unknown): string {
  return JSON.stringify(row, (_, value: unknown) =>
    typeof value === "string" ? cleanText(value) : value,
  );
}

function table<Row>({ page, write }: Table<Row>): GroupTable {
  async function* pages(db: Db, groupId: string): AsyncGenerator<Row[]> {
    for (let after: Row | null = null; ; ) {
      const rows: Row[] = await page(db, groupId, after);
      if (rows.length > 0) yield rows;
      after = rows.at(-1) ?? null;
      if (rows.length < PAGE) return;
    }
  }
  return {
    copy: async (from, to, groupId) => {
      let count = 0;
      for await (const rows of pages(from, groupId)) {
        await write(to, rows);
        count += rows.length;
      }
      return count;
    },
    compare: async (from, to, groupId) => {
      let count = 0;
      const others = pages(to, groupId);
      for await (const rows of pages(from, groupId)) {
        const { value = [] } = await others.next();
        if (textOf(rows) !== textOf(value)) return "differ";
        count += rows.length;
      }
      return (await others.next()).done === true ? count : "differ";
    },
  };
}

const byId = { orderBy: { id: "asc" }, take: PAGE } as const;
const beyond = (after: { readonly id: string } | null) =>
  after === null ? {} : { id: { gt: after.id } };

/**
 * Every table that holds something of a group, each after those that it refers to. What a file or a
 * server knows about itself (`Setting`) stays where it is.
 */
export const GROUP_TABLES: ReadonlyMap<Prisma.ModelName, GroupTable> = new Map<
  Prisma.ModelName,
  GroupTable
>([
  [
    "Group",
    table<Group>({
      page: async (db, id, after) => (after === null ? db.group.findMany({ where: { id } }) : []),
      write: (db, data) => db.group.createMany({ data }),
    }),
  ],
  [
    "Member",
    table<Member>({
      page: (db, groupId, after) =>
        db.member.findMany({ where: { groupId, ...beyond(after) }, ...byId }),
      write: (db, data) => db.member.createMany({ data }),
    }),
  ],
  [
    "Recipe",
    table<Recipe>({
      page: (db, groupId, after) =>
        db.recipe.findMany({ where: { groupId, ...beyond(after) }, ...byId }),
      write: (db, data) => db.recipe.createMany({ data }),
    }),
  ],
  [
    "Revision",
    table<Revision>({
      page: (db, groupId, after) =>
        db.revision.findMany({ where: { recipe: { groupId }, ...beyond(after) }, ...byId }),
      write: (db, data) => db.revision.createMany({ data }),
    }),
  ],
  [
    "KeepingWord",
    table<KeepingWord>({
      page: (db, groupId, after) =>
        db.keepingWord.findMany({
          where: { revision: { recipe: { groupId } }, ...beyond(after) },
          ...byId,
        }),
      write: (db, data) => db.keepingWord.createMany({ data }),
    }),
  ],
  [
    "Draft",
    table<Draft>({
      page: (db, groupId, after) =>
        db.draft.findMany({ where: { groupId, ...beyond(after) }, ...byId }),
      write: (db, data) => db.draft.createMany({ data }),
    }),
  ],
  [
    "Food",
    table<Food>({
      page: (db, groupId, after) =>
        db.food.findMany({ where: { groupId, ...beyond(after) }, ...byId }),
      write: (db, data) => db.food.createMany({ data }),
    }),
  ],
  [
    "Batch",
    table<Batch>({
      page: (db, groupId, after) =>
        db.batch.findMany({ where: { member: { groupId }, ...beyond(after) }, ...byId }),
      write: (db, data) => db.batch.createMany({ data }),
    }),
  ],
  [
    "Lot",
    table<Lot>({
      page: (db, groupId, after) =>
        db.lot.findMany({ where: { member: { groupId }, ...beyond(after) }, ...byId }),
      write: (db, data) => db.lot.createMany({ data }),
    }),
  ],
  [
    "StockChange",
    table<StockChange>({
      // In the order in which they were made: an undo refers to an earlier one.
      page: (db, groupId, after) =>
        db.stockChange.findMany({
          where: {
            member: { groupId },
            ...(after !== null && {
              OR: [
                { memberId: { gt: after.memberId } },
                { memberId: after.memberId, version: { gt: after.version } },
              ],
            }),
          },
          orderBy: [{ memberId: "asc" }, { version: "asc" }],
          take: PAGE,
        }),
      write: (db, data) => db.stockChange.createMany({ data }),
    }),
  ],
  [
    "Movement",
    table<Movement>({
      page: (db, groupId, after) =>
        db.movement.findMany({
          where: {
            change: { member: { groupId } },
            ...(after !== null && {
              OR: [
                { changeId: { gt: after.changeId } },
                { changeId: after.changeId, position: { gt: after.position } },
              ],
            }),
          },
          orderBy: [{ changeId: "asc" }, { position: "asc" }],
          take: PAGE,
        }),
      write: (db, data) => db.movement.createMany({ data }),
    }),
  ],
  [
    "Target",
    table<Target>({
      page: (db, groupId, after) =>
        db.target.findMany({ where: { member: { groupId }, ...beyond(after) }, ...byId }),
      write: (db, data) => db.target.createMany({ data }),
    }),
  ],
  [
    "MealRule",
    table<MealRule>({
      page: (db, groupId, after) =>
        db.mealRule.findMany({ where: { member: { groupId }, ...beyond(after) }, ...byId }),
      write: (db, data) => db.mealRule.createMany({ data }),
    }),
  ],
  [
    "Reminder",
    table<Reminder>({
      page: (db, groupId, after) =>
        db.reminder.findMany({ where: { member: { groupId }, ...beyond(after) }, ...byId }),
      write: (db, data) => db.reminder.createMany({ data }),
    }),
  ],
]);
