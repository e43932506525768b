import { Temporal } from "temporal-polyfill";
import type { Member, PublishedRecipe, StockPlan } from "../../../commands/kit/ports.ts";
import type { Publication, RecipeTelling } from "../../../commands/kit/publication.ts";
import {
  type BatchId,
  batchId,
  causeId,
  changeId,
  foodId,
  groupId,
  type LotId,
  lotId,
  memberId,
} from "../../../shared/ids.ts";
import type { Recipe } from "../../../shared/recipe/types.ts";
import type { DerivedReminder } from "../../../shared/reminder/types.ts";
import type { Lot, Movement, StockChange } from "../../../shared/stock/types.ts";
import type { Store } from "../../../src/store/open.ts";
import { batch, counter, instant, lot } from "../../kit/stock.ts";

/** Somewhere a store can be opened, closed and opened again. */
export interface Place {
  open(): Promise<Store>;
  remove(): Promise<void>;
}
/** Makes an empty place: a new file, a new database. */
export type MakePlace = () => Promise<Place>;

export const NOW = instant("2026-10-11T18:00:00Z");

export const later = (minutes: number): Temporal.Instant => NOW.add({ minutes });

const NOTHING = { fridgeDays: null, freezerMonths: null, freezes: null, reason: "" } as const;

export function recipe(rest: Partial<Recipe> = {}): Recipe {
  const amount = { value: 1.5, to: 2, unit: "cup" } as const;
  const main = {
    amount,
    foodText: "oats",
    foodId: null,
    preparation: "",
    grams: 120.5,
    uptake: 0.75,
    tableGPerG: 1,
  };
  const line = { key: "0.0", text: "1½–2 cups oats", main, swaps: [main], optional: false };
  return {
    title: "Barley pot",
    portions: 6,
    portionWord: "portion",
    yieldG: 2400,
    tags: ["lunch", "one pot"],
    components: [{ name: "Base", optional: false, lines: [line], keeping: NOTHING }],
    steps: [{ text: "Bake at 200 °C for 25 min.", temperaturesC: [200], minutes: [25] }],
    keeping: { fridgeDays: 3, freezerMonths: 3, freezes: "well", reason: "" },
    reheating: ["Until steaming."],
    notes: [],
    ...rest,
  };
}

export interface World {
  readonly store: Store;
  readonly member: Member;
  readonly published: PublishedRecipe;
  readonly newId: () => string;
}

/** A member of a group that has one recipe. */
export async function world(store: Store, name = "a"): Promise<World> {
  const { stores } = store;
  const group = await stores.groups.open(groupId(`group-${name}`), `Kitchen ${name}`);
  const member = await stores.members.open(group.id, "user1", "Ana");
  const newId = counter(name);
  const { published } = await publish({ store, member, newId }, recipe(), `publish-${name}`);
  return { store, member, published, newId };
}

/** The version of the recipes of the world's group by now. */
export async function versionOf({ store, member }: World): Promise<number> {
  const known = await store.stores.members.known(member.groupId, member.userId);
  return known?.group.recipesVersion ?? Number.NaN;
}

export function publish(w: Pick<World, "store" | "member" | "newId">, what: Recipe, cause: string) {
  return w.store.stores.recipes.publish(publication(w, what, cause));
}

export function publication(
  { member, newId }: Pick<World, "member" | "newId">,
  what: Recipe,
  cause: string,
): Publication {
  return {
    groupId: member.groupId,
    by: member.id,
    causeId: causeId(cause),
    now: NOW,
    recipe: what,
    sourceText: `text of ${what.title}`,
    takenFor: { "odd barley": foodId("pearl-barley-dry") },
    newId,
  };
}

/** What is told of the world's recipe, by somebody who is no member. */
export function telling(w: World, rest: Partial<RecipeTelling> = {}): RecipeTelling {
  return {
    kind: "recipe changed",
    key: "recipe news/1",
    title: "Barley pot",
    news: { recipeId: w.published.id, revision: 2, grave: [], changes: ["barley 100 → 120 g"] },
    since: later(-60),
    by: memberId("nobody"),
    newId: w.newId,
    ...rest,
  };
}

export function reminder(key: string, rest: Partial<DerivedReminder> = {}): DerivedReminder {
  return {
    kind: "thaw tonight",
    key,
    dueAt: later(60),
    helpsUntil: later(600),
    about: {
      lotId: lotId("lot"),
      title: "Barley pot",
      portions: 2,
      date: "2026-10-14",
      meal: "Lunch",
      mealAt: "2026-10-12T12:00:00Z",
    },
    ...rest,
  };
}

export function movement(
  ids: { readonly batchId: BatchId; readonly from?: LotId; readonly to?: LotId },
  rest: Partial<Movement> = {},
): Movement {
  return {
    kind: "cooked",
    batchId: ids.batchId,
    portions: 6,
    from: ids.from ?? null,
    to: ids.to ?? null,
    at: NOW,
    on: Temporal.PlainDate.from("2026-10-11"),
    undoes: null,
    reason: null,
    ...rest,
  };
}

type PlanParts = Partial<Omit<StockPlan, "change">> & {
  readonly version: number;
  readonly cause: string;
  readonly movements: readonly Movement[];
  readonly undoes?: StockChange["undoes"];
};

export function plan(w: World, parts: PlanParts): StockPlan {
  const { version, cause, movements, undoes = null, ...rest } = parts;
  const change: StockChange = {
    id: changeId(w.newId()),
    memberId: w.member.id,
    version,
    causeId: causeId(cause),
    recordedAt: NOW,
    movements,
    undoes,
  };
  return { change, newBatch: null, lots: [], reminders: [], replanAt: later(600), ...rest };
}

/** A cooking of six portions, all to the fridge. */
export function cooking(
  w: World,
  parts: { readonly version: number; readonly cause: string; readonly rest?: Partial<StockPlan> },
): StockPlan & { readonly lots: readonly [Lot] } {
  const { version, cause } = parts;
  const id = batchId(w.newId());
  const made = batch({ id, memberId: w.member.id, revisionId: w.published.revisionId });
  const kept = lot({ id: lotId(w.newId()), batchId: id });
  const movements = [movement({ batchId: id, to: kept.id })];
  const whole = plan(w, { version, cause, movements, newBatch: made, ...parts.rest });
  return { ...whole, lots: [kept] };
}

/** Records a cooking of six portions as the member's first change. */
export async function cooked(w: World, rest: Partial<StockPlan> = {}): Promise<Lot> {
  const first = cooking(w, { version: 1, cause: `cook-${w.member.id}`, rest });
  const result = await w.store.stores.stocks.record(first);
  if (result !== "recorded") throw new Error(`the cooking was not recorded: ${result}`);
  return first.lots[0];
}

/** Replaces the scheduled reminders of a member whose stock is empty. */
export function remind(w: World, reminders: readonly DerivedReminder[], version = 0) {
  const { id: memberId } = w.member;
  return w.store.stores.reminders.replan({
    memberId,
    version,
    now: NOW,
    reminders,
    replanAt: null,
  });
}

/** Everything a record could have touched, as one comparable value. */
export async function everything(store: Store, w: World): Promise<string> {
  const { stocks, reminders } = store.stores;
  const [stock, ledger, coming, replan] = [
    await stocks.load(w.member.id),
    await stocks.ledger(w.member.id),
    await reminders.coming(w.member.id, 1000),
    await store.deliveries.nextDue(),
  ];
  return JSON.stringify({ stock, ledger, coming, replan });
}

/** Takes some portions out of the lot. */
export function eating(
  w: World,
  from: Lot,
  version: number,
  cause: string,
  portions = 1,
): StockPlan {
  return plan(w, {
    version,
    cause,
    movements: [movement({ batchId: from.batchId, from: from.id }, { kind: "ate", portions })],
    lots: [{ ...from, portions: from.portions - portions }],
    reminders: [reminder(`after ${cause}`)],
  });
}
