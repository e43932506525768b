import type { Meals } from "../../commands/kit/ports.ts";
import type { Reminders, Replan } from "../../commands/kit/reminders.ts";
import { againKey } from "../../shared/reminder/again.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";
import { chunks } from "./chunks.ts";
import { timeText, toColumn, toColumnOrNull, toText, weekdaysDocument } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { toMealException, toMealRule } from "./meal-rows.ts";
import { profileColumns } from "./members.ts";
import { isConflict, patiently } from "./patience.ts";
import { columnsOf } from "./reminder-diff.ts";
import {
  isAsPlanned,
  moveOn,
  readStanding,
  rewriteReminders,
  type Standing,
} from "./reminder-rewrite.ts";
import { toReminder } from "./rows.ts";

/** How often a rewrite is tried again when another got in between. */
const TRIES = 20;

/** The columns of a choice; what is not named stays. Choosing a zone makes it the member's own. */
function choiceColumns(choice: NonNullable<Replan["choice"]>) {
  const { zone, zoneIsOwn, morning, evening, quietFrom, quietUntil, pausedUntil } = choice;
  const { pausesSafety } = choice;
  return {
    ...(zone !== undefined && { zone, zoneIsOwn: true }),
    ...(zoneIsOwn !== undefined && { zoneIsOwn }),
    ...(morning !== undefined && { morning: timeText(morning) }),
    ...(evening !== undefined && { evening: timeText(evening) }),
    ...(quietFrom !== undefined && { quietFrom: timeText(quietFrom) }),
    ...(quietUntil !== undefined && { quietUntil: timeText(quietUntil) }),
    ...(pausedUntil !== undefined && { pausedUntil: toColumnOrNull(pausedUntil) }),
    ...(pausesSafety !== undefined && { pausesSafety }),
  };
}

function rewriteMeals(db: PrismaClient, plan: Replan): Prisma.PrismaPromise<unknown>[] {
  const { memberId, meals } = plan;
  if (meals === undefined) return [];
  return [
    db.mealRule.deleteMany({ where: { memberId } }),
    db.mealRule.createMany({
      data: meals.map((meal, position) => ({
        id: meal.id,
        memberId,
        position,
        name: meal.name,
        weekdays: toText(weekdaysDocument, meal.weekdays),
        time: timeText(meal.time),
        portions: meal.portions,
      })),
    }),
  ];
}

/** What was said of the same meals goes, whoever wrote it meanwhile. */
function rewriteExceptions(
  db: PrismaClient,
  { memberId, exceptions }: Replan,
  newId: () => string,
): Prisma.PrismaPromise<unknown>[] {
  if (exceptions === undefined) return [];
  const { set, clear } = exceptions;
  const named = [...set, ...clear].map(({ mealId, date }) => ({ mealId, date: date.toString() }));
  return [
    ...chunks(named).map((some) =>
      db.mealException.deleteMany({ where: { memberId, OR: [...some] } }),
    ),
    ...chunks(set).map((some) =>
      db.mealException.createMany({
        data: some.map((one) => ({
          id: newId(),
          memberId,
          mealId: one.mealId,
          date: one.date.toString(),
          kind: one.kind,
          batchId: one.kind === "pin" ? one.batchId : null,
        })),
      }),
    ),
  ];
}

function write(
  db: PrismaClient,
  plan: Replan,
  standing: Standing,
  newId: () => string,
): Promise<unknown> {
  const { memberId, deliverTo } = plan;
  return db.$transaction([
    moveOn(db, memberId, standing, {
      ...choiceColumns(plan.choice ?? {}),
      ...profileColumns(plan.profile ?? {}),
      ...(deliverTo !== undefined && { deliverTo }),
    }),
    ...rewriteMeals(db, plan),
    ...rewriteExceptions(db, plan, newId),
    ...rewriteReminders(db, memberId, { ...plan, known: standing.known }, newId),
  ]);
}

async function replan(
  db: PrismaClient,
  plan: Replan,
  newId: () => string,
): Promise<"recorded" | "moved on"> {
  for (let tries = 1; ; tries++) {
    const standing = await readStanding(db, plan.memberId, plan.reminders);
    if (standing.stockVersion !== plan.version || !isAsPlanned(standing, plan)) return "moved on";
    try {
      await patiently(() => write(db, plan, standing, newId));
      return "recorded";
    } catch (error) {
      if (!isConflict(error) || tries === TRIES) throw error;
    }
  }
}

export function prismaReminders(db: PrismaClient, newId: () => string): Reminders {
  return {
    coming: async (memberId, limit) => {
      const rows = await db.reminder.findMany({
        where: { memberId, state: { in: ["scheduled", "claimed"] } },
        orderBy: [{ dueAt: "asc" }, { key: "asc" }],
        take: limit,
      });
      return rows.map(toReminder);
    },

    replan: (plan) => replan(db, plan, newId),

    find: async (id) => {
      const row = await db.reminder.findUnique({ where: { id } });
      return row === null ? null : toReminder(row);
    },

    together: (id) => together(db, id),

    again: async (rows, at) => {
      const waiting: ReminderRow[] = [];
      for (const row of rows) {
        const again = await patiently(() => comeAgain(db, row, at, newId));
        if (again !== null) waiting.push(again);
      }
      return waiting;
    },
  };
}

async function together(db: PrismaClient, id: string): Promise<readonly ReminderRow[]> {
  const row = await db.reminder.findUnique({
    where: { id },
    select: { memberId: true, nonce: true },
  });
  if (row?.nonce == null) return [];
  const { memberId, nonce } = row;
  const rows = await db.reminder.findMany({
    where: { memberId, nonce },
    orderBy: [{ dueAt: "asc" }, { key: "asc" }],
  });
  return rows.map(toReminder);
}

/** The unique key lets two presses at once make one row; what was told again is not touched. */
async function comeAgain(
  db: PrismaClient,
  row: ReminderRow,
  at: Instant,
  newId: () => string,
): Promise<ReminderRow | null> {
  const { memberId } = row;
  const key = againKey(row);
  const dueAt = toColumn(at);
  try {
    const data = { ...columnsOf(row), id: newId(), memberId, key, dueAt };
    await db.reminder.create({ data, select: { id: true } });
  } catch (error) {
    if (!isConflict(error)) throw error;
  }
  await db.reminder.updateMany({ where: { memberId, key, state: "scheduled" }, data: { dueAt } });
  const waiting = await db.reminder.findFirst({ where: { memberId, key, state: "scheduled" } });
  return waiting === null ? null : toReminder(waiting);
}

export function prismaMeals(db: PrismaClient): Meals {
  const list: Meals["list"] = async (memberId) => {
    const rows = await db.mealRule.findMany({
      where: { memberId },
      orderBy: { position: "asc" },
    });
    return rows.map(toMealRule);
  };
  return {
    list,
    wishes: async (memberId) => {
      const rules = await list(memberId);
      const rows = await db.mealException.findMany({
        where: { memberId },
        orderBy: [{ date: "asc" }, { mealId: "asc" }],
      });
      return { rules, exceptions: rows.map(toMealException) };
    },
  };
}
