import { existsSync } from "node:fs";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";
import { type Balance, balanceOf, balances } from "../../shared/stock/ledger.ts";
import type { Connection } from "./connection.ts";
import { type Db, GROUP_TABLES } from "./move-tables.ts";
import { connect } from "./open.ts";
import { toBatch, toChange, toLot, WITH_MOVEMENTS } from "./rows.ts";

/** Portions of a whole group, by where they are or went. */
export type Portions = Omit<Balance, "batchId">;

/** A group that is on the server now, the same as in the file. */
export interface MovedGroup {
  readonly id: string;
  readonly name: string;
  /** False when an earlier move had brought it over already. */
  readonly isNew: boolean;
  /** Rows by table; equal in both. */
  readonly rows: Readonly<Record<string, number>>;
  readonly portions: Portions;
  /** Batches whose portions do not add up, in the file as on the server. None, if the bot did its work. */
  readonly unbalanced: readonly string[];
}

/** Why a move was refused, with what to do about it. The groups moved before it stay moved. */
export interface MoveRefusal {
  readonly moved: readonly MovedGroup[];
  readonly sentence: string;
}

/** Thrown inside the transaction, so that nothing of the group stays on the server. */
class Refused extends Error {}

/** A large group takes minutes. */
const ONE_GROUP = { maxWait: 30_000, timeout: 3_600_000 } as const;

const NONE: Portions = {
  cooked: 0,
  corrected: 0,
  fridge: 0,
  freezer: 0,
  thawing: 0,
  ate: 0,
  gave: 0,
  threwAway: 0,
};

function plus(a: Portions, b: Portions): Portions {
  return {
    cooked: a.cooked + b.cooked,
    corrected: a.corrected + b.corrected,
    fridge: a.fridge + b.fridge,
    freezer: a.freezer + b.freezer,
    thawing: a.thawing + b.thawing,
    ate: a.ate + b.ate,
    gave: a.gave + b.gave,
    threwAway: a.threwAway + b.threwAway,
  };
}

/** The balance of every batch of a member, by the lots and the ledger as they are kept. */
async function memberBalances(db: Db, memberId: string): Promise<readonly Balance[]> {
  const where = { memberId };
  const batches = await db.batch.findMany({ where, orderBy: { id: "asc" } });
  const lots = (await db.lot.findMany({ where })).map(toLot);
  const changes = await db.stockChange.findMany({
    where,
    orderBy: { version: "asc" },
    include: WITH_MOVEMENTS,
  });
  const ledger = changes.map(toChange);
  return batches.map((row) => balanceOf(toBatch(row), ledger, lots));
}

async function groupBalances(db: Db, groupId: string): Promise<readonly Balance[]> {
  const members = await db.member.findMany({
    where: { groupId },
    orderBy: { id: "asc" },
    select: { id: true },
  });
  const found: Balance[] = [];
  for (const { id } of members) found.push(...(await memberBalances(db, id)));
  return found;
}

/** Compares all that both hold of a group, row by row and portion by portion. Refuses a difference. */
async function compare(
  from: Db,
  to: Db,
  group: { readonly id: string; readonly name: string },
): Promise<Omit<MovedGroup, "isNew">> {
  const rows: Record<string, number> = {};
  for (const [name, table] of GROUP_TABLES) {
    const count = await table.compare(from, to, group.id);
    if (count === "differ") throw new Refused(`in what the table ${name} holds`);
    rows[name] = count;
  }
  const [here, there] = [await groupBalances(from, group.id), await groupBalances(to, group.id)];
  if (JSON.stringify(here) !== JSON.stringify(there)) throw new Refused("in portions");
  return {
    ...group,
    rows,
    portions: there.map(({ batchId: _, ...portions }) => portions).reduce(plus, NONE),
    unbalanced: there.filter((balance) => !balances(balance)).map(({ batchId }) => batchId),
  };
}

type GroupName = { readonly id: string; readonly name: string };

/** Copies and compares in one transaction: all of the group is on the server afterwards, or nothing. */
async function moveGroup(from: Db, to: Connection, group: GroupName): Promise<MovedGroup> {
  const known = await to.db.group.findUnique({ where: { id: group.id } });
  if (known !== null) return { ...(await compare(from, to.db, group)), isNew: false };
  return to.db.$transaction(async (tx) => {
    for (const table of GROUP_TABLES.values()) await table.copy(from, tx, group.id);
    return { ...(await compare(from, tx, group)), isNew: true };
  }, ONE_GROUP);
}

function refusal({ id, name }: GroupName, error: unknown): string {
  const group = `The group "${name}" (${id})`;
  if (error instanceof Refused) {
    return `${group} is on the server already, and differs there ${error.message}. It was left as it is in both. If what is there may go, erase it there (DELETE FROM "Group" WHERE "id" = '${id}') and move again.`;
  }
  const said = error instanceof Error ? error.message.trim().split("\n").at(-1) : String(error);
  return `${group} was not moved (${said}); nothing of it is on the server. Check that no copy of the bot runs on that server with the same group, and move again.`;
}

async function moveAll(
  from: Db,
  to: Connection,
  groups: readonly GroupName[],
): Promise<Outcome<readonly MovedGroup[], MoveRefusal>> {
  const moved: MovedGroup[] = [];
  for (const group of groups) {
    try {
      moved.push(await moveGroup(from, to, group));
    } catch (error) {
      return fail({ moved, sentence: refusal(group, error) });
    }
  }
  return ok(moved);
}

function refuse(sentence: string): Outcome<never, MoveRefusal> {
  return fail({ moved: [], sentence });
}

/**
 * Copies one group, or all, from a file to a server and compares both. The file stays as it is (but for
 * migrations that it lacks), and no bot may have it open. A group that is on the server already is
 * compared only, so a move that was cut off can be repeated; one that differs is refused.
 */
export async function moveGroups(
  fileUrl: string,
  serverUrl: string,
  groupId: string | null,
): Promise<Outcome<readonly MovedGroup[], MoveRefusal>> {
  const path = /^file:(?<path>[^?#]+)$/u.exec(fileUrl)?.groups?.["path"];
  if (path === undefined || !existsSync(path)) {
    return refuse("--from must be file: and the path of the bot's database file.");
  }
  if (!/^postgres(ql)?:\/\//iu.test(serverUrl)) {
    return refuse("--to must be postgresql:// with user, host and database.");
  }
  const from = await connect(fileUrl);
  if (!from.ok) return refuse(from.problem.sentence);
  try {
    const to = await connect(serverUrl);
    if (!to.ok) return refuse(to.problem.sentence);
    try {
      const groups = await from.value.db.group.findMany({
        where: groupId === null ? {} : { id: groupId },
        orderBy: { id: "asc" },
        select: { id: true, name: true },
      });
      if (groups.length === 0) return refuse(await noGroup(from.value, groupId));
      return await moveAll(from.value.db, to.value, groups);
    } finally {
      await to.value.close();
    }
  } finally {
    await from.value.close();
  }
}

async function noGroup(from: Connection, groupId: string | null): Promise<string> {
  if (groupId === null) return "The file holds no group; there is nothing to move.";
  const ids = (await from.db.group.findMany({ select: { id: true } })).map(({ id }) => id);
  return `The file holds no group with the id ${groupId}. It holds: ${ids.join(", ") || "none"}.`;
}
