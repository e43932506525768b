import { describe, expect, test } from "vitest";
import type { Member } from "../../../../commands/kit/ports.ts";
import { instant, time } from "../../../kit/stock.ts";
import type { Given } from "../contract.ts";
import {
  cooked,
  later,
  NOW,
  publication,
  recipe,
  remind,
  reminder,
  telling,
  type World,
  world,
} from "../kit.ts";

async function newsOf(w: World, { id }: Member = w.member) {
  const coming = await w.store.stores.reminders.coming(id, 100);
  return coming.filter(({ kind }) => kind.startsWith("recipe"));
}

/** Another member of the world's group, with portions of its recipe. */
async function another(w: World, name: string): Promise<Member> {
  const member = await w.store.stores.members.open(w.member.groupId, name, name);
  await cooked({ ...w, member });
  return member;
}

export function newsContract({ store, restart }: Given): void {
  describe("news of a recipe", () => {
    test("are written with the revision, for who has the recipe and wants them, but for who did it", async () => {
      const w = await world(store());
      await cooked(w);
      const [coach, ben, cleo] = [
        await another(w, "coach"),
        await another(w, "ben"),
        await another(w, "cleo"),
      ];
      const dora = await store().stores.members.open(w.member.groupId, "dora", "Dora");
      await store().stores.members.setRecipeNews(cleo.id, false);
      const tell = telling(w, { by: coach.id });
      const input = { ...publication(w, recipe({ portions: 8 }), "c2"), tell };
      const done = await store().stores.recipes.publishOf(w.published.id, input);
      expect(await store().stores.recipes.publishOf(w.published.id, input)).toEqual(done);
      const again = await restart();
      const rows = await newsOf({ ...w, store: again });
      expect(rows).toMatchObject([
        {
          kind: "recipe changed",
          key: "recipe news/1",
          dueAt: NOW,
          state: "scheduled",
          about: { lotId: null, title: "Barley pot", news: tell.news },
        },
      ]);
      expect(await newsOf({ ...w, store: again }, ben)).toHaveLength(1);
      for (const none of [coach, cleo, dora]) {
        expect(await newsOf({ ...w, store: again }, none)).toEqual([]);
      }
      expect((await again.stores.members.find(cleo.id))?.wantsRecipeNews).toBe(false);
    });

    test("wait for the end of the quiet hours of each", async () => {
      const w = await world(store());
      await cooked(w);
      const choice = { quietFrom: time("17:00"), quietUntil: time("20:00"), zone: "Etc/UTC" };
      const base = { memberId: w.member.id, version: 1, now: NOW, reminders: [], replanAt: null };
      await store().stores.reminders.replan({ ...base, choice });
      const input = { ...publication(w, recipe({ portions: 8 }), "c2"), tell: telling(w) };
      await store().stores.recipes.publish(input);
      const [row] = await newsOf(w);
      expect(row?.dueAt).toEqual(instant("2026-10-11T20:00:00Z"));
    });

    test("stay when the reminders are derived anew, and are not told twice under one key", async () => {
      const w = await world(store());
      await cooked(w);
      const { recipes } = store().stores;
      const publish = (cause: string, portions: number) =>
        recipes.publish({ ...publication(w, recipe({ portions }), cause), tell: telling(w) });
      await publish("c2", 8);
      await remind(w, [reminder("a")], 1);
      await remind(w, [], 1);
      expect(await newsOf(w)).toHaveLength(1);
      // The same key again can only be a fault: then nothing of it is written.
      await expect(publish("c3", 9)).rejects.toThrow();
      expect(await newsOf(w)).toHaveLength(1);
      expect((await recipes.find(w.member.groupId, w.published.id))?.revisionNumber).toBe(2);
    });

    test("of a withdrawal are told by one of two who withdraw at once, and not of what is gone", async () => {
      const w = await world(store());
      await cooked(w);
      const { recipes } = store().stores;
      const tell = telling(w, { kind: "recipe withdrawn", key: "recipe news/gone" });
      const withdraw = () => recipes.withdraw(w.member.groupId, w.published.id, later(1), tell);
      const both = await Promise.all([withdraw(), withdraw()]);
      expect(both.toSorted()).toEqual([false, true]);
      expect(await withdraw()).toBe(false);
      expect(await newsOf(w)).toHaveLength(1);
    });
  });
}
