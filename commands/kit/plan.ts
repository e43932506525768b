import { allocate } from "../../shared/allocation/allocate.ts";
import { mealKey, mealsKept, pinsOf } from "../../shared/allocation/exceptions.ts";
import { mealSlots } from "../../shared/allocation/slots.ts";
import type { ThawHours } from "../../shared/allocation/thaw-time.ts";
import type { Allocation, MealSlot, MealWishes, Surplus } from "../../shared/allocation/types.ts";
import { type CauseId, changeId } from "../../shared/ids.ts";
import { countedFor } from "../../shared/keeping/coach-word.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";
import { deriveReminders, nextReplan } from "../../shared/reminder/derive.ts";
import { isQuietTime } from "../../shared/reminder/quiet.ts";
import type { DerivedReminder, ReminderChoice } from "../../shared/reminder/types.ts";
import type { StockStep } from "../../shared/stock/movement.ts";
import type { StockProblem } from "../../shared/stock/problems.ts";
import type { Batch, Stock } from "../../shared/stock/types.ts";
import { dateIn, type Instant, isBefore, isDateBefore, type PlainTime } from "../../shared/time.ts";
import type { Member, Stores } from "./ports.ts";
import type { Replan } from "./reminders.ts";

/** How often a write is decided anew when somebody else was faster. */
const TRIES = 20;

/**
 * A member's stock as it is to be judged: where a move to another zone has made the calendar day of a
 * lot an earlier one, the earlier counts, so that no move makes food keep longer.
 */
export async function loadStock(stores: Pick<Stores, "stocks">, member: Member): Promise<Stock> {
  const stock = await stores.stocks.load(member.id);
  const { zone } = member.choice;
  const lots = stock.lots.map((lot) => {
    const here = dateIn(lot.sinceAt, zone);
    return isDateBefore(here, lot.since) ? { ...lot, since: here } : lot;
  });
  return { ...stock, lots, batches: stock.batches.map((batch) => countedBatch(batch, member)) };
}

/** A batch with the keeping time that counts for the member: the coach's longer one never where somebody vulnerable eats. */
function countedBatch(batch: Batch, { profile }: Member): Batch {
  return { ...batch, keeping: countedFor(batch.keeping, profile.vulnerable) };
}

/** What follows from a stock: the allocation, the reminders, and when to look again. */
export interface MemberPlan {
  readonly allocation: Allocation;
  readonly reminders: readonly DerivedReminder[];
  readonly replanAt: Instant | null;
}

/** How long after a meal its portion may still be marked as eaten before it counts as left over. */
const MEAL_GRACE_HOURS = 2;

/**
 * Derives it all. Without any meals nothing is called surplus: what is eaten when is then unknown. A
 * meal of the last two hours whose portion is not marked yet still has its claim, so that nobody is
 * told to freeze the lunch they are eating; after that, and after a meal eaten early, it is planned
 * anew.
 */
export function planFor(
  stock: Stock,
  wishes: MealWishes,
  choice: ReminderChoice,
  now: Instant,
): MemberPlan {
  const slots = mealsAt(wishes, choice, now);
  const ahead = slots.filter((slot) => !isBefore(slot.at, now));
  const found = allocate(stock, ahead, now, wakingHours(choice), pinsOf(wishes.exceptions));
  const settles = (slot: MealSlot): Instant => slot.at.add({ hours: MEAL_GRACE_HOURS });
  const atTable = slots
    .filter((slot) => isBefore(slot.at, now) && isBefore(now, settles(slot)))
    .reduce((sum, slot) => sum + slot.portions, 0);
  const surplus = wishes.rules.length === 0 ? [] : lessAtTable(found.surplus, atTable);
  const allocation = { ...found, surplus };
  const settledAt = slots.map(settles).find((at) => isBefore(now, at));
  return {
    allocation,
    reminders: deriveReminders(stock, allocation, choice, now),
    replanAt: earlier(nextReplan(stock, choice, now), settledAt),
  };
}

/**
 * The meals eaten from stock: those to come, and those just past whose portion may still be marked as
 * eaten. Not those that are skipped or eaten elsewhere.
 */
export function mealsAt(
  { rules, exceptions }: MealWishes,
  choice: ReminderChoice,
  now: Instant,
): readonly MealSlot[] {
  const all = mealSlots(rules, now.subtract({ hours: MEAL_GRACE_HOURS }), choice.zone);
  return mealsKept(all, exceptions);
}

/** When to be at the freezer: the member's hours, moved out of their quiet hours. */
export function wakingHours(choice: ReminderChoice): ThawHours {
  const { zone, quietFrom, quietUntil } = choice;
  const isQuietAt = (time: PlainTime): boolean => isQuietTime(time, choice);
  return {
    zone,
    morning: isQuietAt(choice.morning) ? quietUntil : choice.morning,
    evening: isQuietAt(choice.evening) ? quietFrom.subtract({ minutes: 1 }) : choice.evening,
  };
}

function lessAtTable(surplus: readonly Surplus[], atTable: number): readonly Surplus[] {
  let left = atTable;
  return surplus.flatMap((spare) => {
    const taken = Math.min(left, spare.portions);
    left -= taken;
    return taken === spare.portions ? [] : [{ ...spare, portions: spare.portions - taken }];
  });
}

function earlier(a: Instant | null, b: Instant | undefined): Instant | null {
  return a === null || b === undefined || isBefore(a, b) ? a : b;
}

/** Other things written together with a member's rewritten reminders. */
export type MemberPatch = Pick<Replan, "choice" | "deliverTo" | "meals" | "exceptions" | "profile">;

/** Derives a member's reminders again, after a change of meals or times, or because a day has passed. */
export async function replanMember(
  stores: Stores,
  member: Member,
  now: Instant,
  patch: MemberPatch = {},
): Promise<MemberPlan> {
  for (let tries = 0; tries < TRIES; tries += 1) {
    // Read anew at each try, and before what it stands for: whatever else changes makes the write fail.
    const asNow = (await stores.members.find(member.id)) ?? member;
    const choice: ReminderChoice = { ...asNow.choice, ...patch.choice };
    const profile = { ...asNow.profile, ...patch.profile };
    const stock = await loadStock(stores, { ...asNow, choice, profile });
    const wishes = wishesAfter(await stores.meals.wishes(member.id), patch);
    const plan = planFor(stock, wishes, choice, now);
    const written = await stores.reminders.replan({
      memberId: member.id,
      version: stock.version,
      planVersion: asNow.planVersion,
      now,
      reminders: plan.reminders,
      replanAt: plan.replanAt,
      ...patch,
    });
    if (written === "recorded") return plan;
  }
  throw new Error("the stock kept changing while its reminders were derived");
}

/** What a member wants of their meals once a patch is written. */
export function wishesAfter(
  { rules, exceptions }: MealWishes,
  { meals, exceptions: change }: Pick<MemberPatch, "meals" | "exceptions">,
): MealWishes {
  const { set, clear } = change ?? { set: [], clear: [] };
  const gone = new Set([...set, ...clear].map(mealKey));
  const stay = exceptions.filter((one) => !gone.has(mealKey(one)));
  return { rules: meals ?? rules, exceptions: [...stay, ...set] };
}

/** What a change to the stock led to. */
export interface Changed {
  /** True when this very request was carried out before: nothing was written again. */
  readonly already: boolean;
  readonly stock: Stock;
  readonly allocation: Allocation;
}

interface StockWrite {
  readonly stores: Stores;
  readonly member: Member;
  readonly now: Instant;
  readonly causeId: CauseId;
  readonly newId: () => string;
  readonly newBatch?: Batch;
  /** Batches that nothing is left of, to which an undo brings portions back. */
  readonly emptied?: readonly Batch[];
  readonly undoes?: Parameters<typeof changeId>[0];
  readonly decide: (
    stock: Stock,
  ) => Promise<Outcome<StockStep, StockProblem>> | Outcome<StockStep, StockProblem>;
}

/**
 * Reads a member's stock, lets `decide` say what changes, and writes all of it on the condition that
 * nobody wrote in between; else decides anew. The same cause twice changes nothing the second time.
 */
export async function changeStock(write: StockWrite): Promise<Outcome<Changed, StockProblem>> {
  for (let tries = 0; tries < TRIES; tries += 1) {
    const tried = await tryChange(write);
    if (tried !== "moved on") return tried;
  }
  throw new Error("the stock kept changing while it was written");
}

async function tryChange(write: StockWrite): Promise<Outcome<Changed, StockProblem> | "moved on"> {
  const { stores, now } = write;
  // Read anew at each try: times, zone and meals may have changed with the stock.
  const member = (await stores.members.find(write.member.id)) ?? write.member;
  const wishes = await stores.meals.wishes(member.id);
  const before = await loadStock(stores, member);
  const allocationOf = (stock: Stock) => planFor(stock, wishes, member.choice, now);
  if ((await stores.stocks.findByCause(write.causeId)) !== null) {
    return ok({ already: true, stock: before, allocation: allocationOf(before).allocation });
  }
  const step = await write.decide(before);
  if (!step.ok) return fail(step.problem);
  const added = write.newBatch === undefined ? [] : [write.newBatch];
  const brought = [...(write.emptied ?? []), ...added].map((one) => countedBatch(one, member));
  const after = applyStep(before, step.value, brought);
  const plan = allocationOf(after);
  const result = await stores.stocks.record({
    change: {
      id: changeId(write.newId()),
      memberId: member.id,
      version: after.version,
      causeId: write.causeId,
      recordedAt: now,
      movements: step.value.movements,
      undoes: write.undoes === undefined ? null : changeId(write.undoes),
    },
    newBatch: write.newBatch ?? null,
    lots: step.value.lots,
    planVersion: member.planVersion,
    reminders: plan.reminders,
    replanAt: plan.replanAt,
  });
  if (result !== "recorded") return "moved on";
  return ok({ already: false, stock: after, allocation: plan.allocation });
}

/** The stock after a step: its lots replaced, empty ones gone, the version one up. */
function applyStep(stock: Stock, step: StockStep, batches: readonly Batch[]): Stock {
  const touched = new Set(step.lots.map((lot) => lot.id));
  return {
    ...stock,
    version: stock.version + 1,
    batches: [
      ...stock.batches,
      ...batches.filter((one) => stock.batches.every((known) => known.id !== one.id)),
    ],
    lots: [...stock.lots.filter((lot) => !touched.has(lot.id)), ...step.lots].filter(
      (lot) => lot.portions > 0,
    ),
  };
}
