import { causeId, draftId, foodId, slotRuleId, targetId } from "../../../shared/ids.ts";
import type { Store } from "../../../src/store/open.ts";
import { date, time } from "../../kit/stock.ts";
import { claimDue, messageOf } from "./claim-kit.ts";
import {
  cooked,
  eating,
  later,
  movement,
  NOW,
  plan,
  recipe,
  remind,
  reminder,
  type World,
  world,
} from "./kit.ts";
import { packed } from "./packed.ts";

/** Something in every table: portions in all places, an undo, reminders in all states. */
export async function live(store: Store, name: string): Promise<World> {
  const w = await world(store, name);
  const { stores, deliveries } = store;
  const { id: memberId, groupId } = w.member;
  const lot = await cooked(w);
  const ate = eating(w, lot, 2, `eat-${name}`, 2);
  await stores.stocks.record(ate);
  const back = movement(
    { batchId: lot.batchId, to: lot.id },
    { kind: "undone", portions: 2, undoes: "ate" },
  );
  const undo = { version: 3, cause: `undo-${name}`, undoes: ate.change.id, lots: [lot] };
  await stores.stocks.record(plan(w, { ...undo, movements: [back] }));
  await stores.stocks.record(eating(w, lot, 4, `eat-again-${name}`, 1));
  await stores.keepingWords.add({
    id: `word-${name}`,
    groupId,
    revisionId: w.published.revisionId,
    position: 1,
    causeId: causeId(`word-${name}`),
    kind: "given",
    parts: [{ part: "Base", coachDays: 5, chartDays: 3, source: "½ a chart" }],
    by: memberId,
    at: NOW,
  });
  await stores.drafts.save({
    id: draftId(`draft-${name}`),
    groupId,
    by: memberId,
    title: "Bean pot",
    text: "Bean pot\n½ cup beans",
    takenFor: {},
    changedAt: NOW,
  });
  const food = { ...packed, id: foodId(`own-${name}`) };
  await stores.foods.put({ groupId, by: memberId, causeId: causeId(`f-${name}`), now: NOW, food });
  await stores.targets.add(
    {
      id: targetId(`t-${name}`),
      memberId,
      from: date("2026-10-12"),
      weekdays: [1],
      figures: { proteinG: 100.25 },
      setBy: memberId,
      setAt: NOW,
    },
    causeId(`t-${name}`),
  );
  // More than one page of the copy.
  const many = Array.from({ length: 600 }, (_, i) => reminder(`k${i}`, { dueAt: later(i) }));
  await remind(w, many, 4);
  // One message is told, another was claimed and is still under way.
  const told = messageOf(await claimDue(w.store, { due: later(2), at: later(5) }));
  const result = { state: "sent", messageId: "m", where: "channel" } as const;
  await deliveries.settle({ ...told, worker: "w", at: later(6), result });
  await claimDue(w.store, { due: later(4), at: later(5) });
  const meal = {
    id: slotRuleId(`meal-${name}`),
    name: "Lunch",
    weekdays: [1, 2],
    time: time("12:30"),
    portions: 1,
  };
  await stores.reminders.replan({
    memberId,
    version: 4,
    now: later(5),
    reminders: many,
    replanAt: later(9),
    meals: [meal],
    exceptions: {
      set: [
        { mealId: meal.id, date: date("2026-10-27"), kind: "pin", batchId: lot.batchId },
        { mealId: meal.id, date: date("2026-10-28"), kind: "out" },
      ],
      clear: [],
    },
  });
  return w;
}

/** All that the bot can know of a member and the group, by way of the ports. */
export async function allOf(store: Store, w: World): Promise<unknown> {
  const { stores, deliveries, upkeep } = store;
  const { id, groupId } = w.member;
  return {
    group: await stores.groups.open(groupId, `Kitchen ${groupId.slice(-1)}`),
    member: await stores.members.find(id),
    stock: await stores.stocks.load(id),
    ledger: await stores.stocks.ledger(id),
    last: await stores.stocks.lastChange(id),
    recipe: await stores.recipes.find(groupId, recipe().title),
    source: await stores.recipes.source(groupId, w.published.id),
    words: await stores.keepingWords.list(groupId, w.published.revisionId),
    drafts: await stores.drafts.list(id),
    foods: await stores.foods.list(groupId),
    targets: await stores.targets.list(id),
    meals: await stores.meals.wishes(id),
    coming: await stores.reminders.coming(id, 1000),
    abandoned: await deliveries.abandoned(later(8), 1000),
    backlog: await upkeep.backlog(later(8)),
  };
}
