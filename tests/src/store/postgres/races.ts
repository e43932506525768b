import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { causeId, foodId, groupId, targetId } from "../../../../shared/ids.ts";
import { connect, type Store } from "../../../../src/store/open.ts";
import { date } from "../../../kit/stock.ts";
import {
  cooked,
  eating,
  later,
  NOW,
  publish,
  recipe,
  remind,
  reminder,
  type World,
  world,
} from "../kit.ts";
import { ledgerCommands } from "../ledger-commands.ts";
import { emptyModel } from "../ledger-model.ts";
import { packed } from "../packed.ts";
import { openUrl, type PostgresRun } from "../postgres-place.ts";

/** Two stores on one database, as two processes have them. */
interface Pair {
  readonly one: Store;
  readonly other: Store;
  readonly w: World;
}

/** Eats one portion after another through this store, deciding anew whenever somebody was faster. */
async function eatUp(store: Store, w: World, who: string): Promise<number> {
  for (let eaten = 0; ; ) {
    const { version, lots } = await store.stores.stocks.load(w.member.id);
    const [lot] = lots;
    if (lot === undefined) return eaten;
    const cause = `${who} ${version}`;
    const result = await store.stores.stocks.record(eating(w, lot, version + 1, cause));
    if (result === "recorded") eaten += 1;
  }
}

export function racesOnServer(given: () => PostgresRun): void {
  let pair: Pair;
  beforeEach(async () => {
    const { url } = await given().place();
    const [one, other] = await Promise.all([openUrl(url), openUrl(url)]);
    pair = { one, other, w: await world(one) };
  });
  afterEach(async () => {
    await Promise.all([pair.one.close(), pair.other.close()]);
  });
  const both = <T>(work: (store: Store, i: number) => Promise<T>, times: number): Promise<T[]> =>
    Promise.all(
      Array.from({ length: times }, (_, i) => work(i % 2 === 0 ? pair.one : pair.other, i)),
    );

  describe("two processes at the same rows", () => {
    test("any sequence of stock commands, two at once among them, conserves portions as the model does", async () => {
      let run = 0;
      await fc.assert(
        fc.asyncProperty(ledgerCommands, async (commands) => {
          run += 1;
          const own = await world(pair.one, `m${run}x`);
          const stores = [pair.one, pair.other] as const;
          const real = { stores, world: own, now: NOW, lastCause: null };
          await fc.asyncModelRun(() => ({ model: emptyModel(), real }), commands);
        }),
        { numRuns: 12, endOnFailure: false },
      );
    }, 120_000);

    test("eat six portions between them, each once, and the ledger says so", async () => {
      const { w, one } = pair;
      await cooked(w);
      const eaten = await both((store, i) => eatUp(store, w, `p${i}`), 4);
      expect(eaten.reduce((sum, count) => sum + count, 0)).toBe(6);
      const { changes } = await one.stores.stocks.ledger(w.member.id);
      expect(changes.map(({ version }) => version)).toEqual([1, 2, 3, 4, 5, 6, 7]);
      const [last] = (await one.stores.reminders.coming(w.member.id, 10)).map(({ key }) => key);
      expect(last).toBe(`after ${changes.at(-1)?.causeId}`);
    });

    test("record one cause once", async () => {
      const { w } = pair;
      const lot = await cooked(w);
      const results = await both(
        (store) => store.stores.stocks.record(eating(w, lot, 2, "press")),
        6,
      );
      expect(results.toSorted()).toEqual([...Array(5).fill("already"), "recorded"]);
    });

    test("publish twelve revisions of one title without a gap", async () => {
      const { w } = pair;
      const results = await both(
        (store, i) => publish({ ...w, store }, recipe({ title: "Soup", portions: i + 1 }), `s${i}`),
        12,
      );
      const numbers = results.map(({ published }) => published.revisionNumber);
      expect(numbers.toSorted((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
      const newest = results.find(({ published }) => published.revisionNumber === 12);
      const [summary] = await pair.one.stores.recipes.search(w.member.groupId, "soup", 5);
      expect(summary?.portions).toBe(newest?.published.recipe.portions);
    });

    test("put ten foods, of two names, and count every one", async () => {
      const { groupId: id, id: by } = pair.w.member;
      await both((store, i) => {
        const food = { ...packed, id: foodId(`own${i}`), name: i % 5 === 0 ? "Same" : `Name ${i}` };
        return store.stores.foods.put({
          groupId: id,
          by,
          causeId: causeId(`f${i}`),
          now: NOW,
          food,
        });
      }, 10);
      expect(await pair.one.stores.foods.list(id)).toHaveLength(9);
      expect((await pair.other.stores.groups.open(id, "x")).foodsVersion).toBe(10);
    });

    test("open one new group, one new member and one setting at the same time", async () => {
      const ids = await both(async ({ stores, settings }, i) => {
        const group = await stores.groups.open(groupId("new"), `Kitchen ${i % 3}`);
        const member = await stores.members.open(group.id, "u", `Ana ${i % 3}`);
        await settings.set("k", `${i}`);
        return member.id;
      }, 20);
      expect(new Set(ids).size).toBe(1);
    });

    test("take one target for one cause", async () => {
      const { w, one } = pair;
      const rule = {
        memberId: w.member.id,
        from: date("2026-10-12"),
        weekdays: [1],
        figures: { proteinG: 100 },
        setBy: null,
        setAt: NOW,
      };
      await both(
        (store, i) => store.stores.targets.add({ ...rule, id: targetId(`t${i}`) }, causeId("once")),
        8,
      );
      expect(await one.stores.targets.list(w.member.id)).toHaveLength(1);
    });

    test("rewrite, claim, settle and withdraw one member's reminders without an error or a double", async () => {
      const { w, one } = pair;
      const keys = Array.from({ length: 12 }, (_, i) => `k${i}`);
      const sent: string[] = [];
      const rewrite = (store: Store, i: number) =>
        // In another order each time, and each row moved: the rows are locked in that order.
        remind(
          { ...w, store },
          (i % 2 === 0 ? keys : keys.toReversed()).map((key) =>
            reminder(key, { dueAt: later(-1 - (i % 7)) }),
          ),
        );
      const deliver = async ({ deliveries }: Store, i: number) => {
        const lease = { worker: `w${i}`, now: NOW, leaseUntil: later(2) };
        const { rows: held } = await deliveries.claimNext({ ...lease, until: NOW, limit: 4 });
        const result = { state: "sent", messageId: "m", where: "channel" } as const;
        const holding = { nonce: held[0]?.nonce ?? "", worker: `w${i}`, at: NOW };
        const [gone, told] = [held.slice(0, 1), held.slice(1, 4)];
        await deliveries.withdraw({ ...holding, rows: gone, reason: "gone" });
        const ids = told.map(({ id }) => id);
        const settled = await deliveries.settle({ ...holding, ids, result });
        if (settled) sent.push(...told.map(({ key }) => key));
        const retry = { state: "retry", retryAt: NOW, reason: "unknown" } as const;
        const rest = held.slice(4).map(({ id }) => id);
        await deliveries.settle({ ...holding, ids: rest, result: retry });
      };
      await rewrite(one, 0);
      const [rewritten] = await Promise.all([both(rewrite, 10), both(deliver, 10)]);
      expect(new Set(rewritten)).toEqual(new Set(["recorded"]));
      expect(new Set(sent).size).toBe(sent.length);
      const coming = await one.stores.reminders.coming(w.member.id, 50);
      expect(coming.filter(({ key }) => sent.includes(key))).toEqual([]);
    });
  });

  test("a server that isolates transactions more by default changes nothing", async () => {
    const { server } = given();
    const url = await server.database();
    const name = new URL(url).pathname.slice(1);
    await server.ask(
      url,
      `ALTER DATABASE "${name}" SET default_transaction_isolation = serializable`,
    );
    const stores = await Promise.all([openUrl(url), openUrl(url)]);
    const [one] = stores;
    if (one === undefined) throw new Error("no store");
    const w = await world(one);
    await cooked(w);
    const eaten = await Promise.all(stores.map((store, i) => eatUp(store, w, `p${i}`)));
    expect(eaten.reduce((sum, count) => sum + count, 0)).toBe(6);
    await Promise.all(stores.map((store) => store.close()));
    const connected = await connect(url);
    if (!connected.ok) throw new Error(connected.problem.sentence);
    const { db, close } = connected.value;
    const level = await db.$queryRaw`SELECT current_setting('transaction_isolation') AS level`;
    expect(level).toEqual([{ level: "read committed" }]);
    await close();
  });
}
