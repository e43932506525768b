import { describe, expect, test } from "vitest";
import { batchId, causeId, lotId, memberId, revisionId } from "../../../../shared/ids.ts";
import { batch, keeping, lot } from "../../../kit/stock.ts";
import type { Given } from "../contract.ts";
import {
  cooked,
  cooking,
  eating,
  everything,
  later,
  movement,
  NOW,
  plan,
  remind,
  reminder,
  world,
} from "../kit.ts";

export function stockContract({ store, restart }: Given): void {
  describe("stock", () => {
    test("what is recorded is read back the same, also after a restart", async () => {
      const w = await world(store());
      const id = batchId("b");
      const made = batch({
        id,
        memberId: w.member.id,
        revisionId: w.published.revisionId,
        title: "Barley pot",
        cookedWeightG: 2412.5,
        portionG: 402.08333333333331,
        keeping: keeping({ freezes: "poorly", reason: "splits", remarks: ["Cool at once."] }),
      });
      const lots = [
        lot({ id: lotId("l1"), batchId: id, portions: 4 }),
        lot({ id: lotId("l2"), batchId: id, portions: 2, place: "freezer", usedDays: 1 }),
      ];
      const movements = [
        movement({ batchId: id, to: lotId("l1") }),
        movement({ batchId: id, from: lotId("l1"), to: lotId("l2") }, { kind: "froze" }),
      ];
      const first = plan(w, { version: 1, cause: "c1", movements, newBatch: made, lots });
      expect(await store().stores.stocks.record(first)).toBe("recorded");
      const { stocks } = (await restart()).stores;
      expect(await stocks.load(w.member.id)).toEqual({
        memberId: w.member.id,
        version: 1,
        batches: [made],
        lots,
      });
      expect(await stocks.ledger(w.member.id)).toEqual({
        batches: [made],
        changes: [first.change],
      });
      expect(await stocks.findLot(lotId("l2"))).toEqual({ lot: lots[1], batch: made });
      expect(await stocks.findLot(lotId("none"))).toBeNull();
      expect(await stocks.findByCause(causeId("c1"))).toEqual(first.change);
      expect(await stocks.findByCause(causeId("c2"))).toBeNull();
    });

    test("an empty lot leaves the stock and can still be found", async () => {
      const w = await world(store());
      const kept = await cooked(w);
      const { stocks } = store().stores;
      expect(await stocks.record(eating(w, kept, 2, "eat", 6))).toBe("recorded");
      expect(await stocks.load(w.member.id)).toMatchObject({ version: 2, batches: [], lots: [] });
      expect((await stocks.findLot(kept.id))?.lot.portions).toBe(0);
      expect(await stocks.everyLot(w.member.id)).toEqual([{ id: kept.id, batchId: kept.batchId }]);
      expect(await stocks.everyLot(memberId("nobody"))).toEqual([]);
    });

    test("the same cause twice changes nothing the second time", async () => {
      const w = await world(store());
      const kept = await cooked(w);
      const { stocks } = store().stores;
      await stocks.record(eating(w, kept, 2, "press"));
      const before = await everything(store(), w);
      expect(await stocks.record(eating(w, kept, 2, "press"))).toBe("already");
      expect(await stocks.record(eating(w, kept, 3, "press"))).toBe("already");
      expect(await everything(store(), w)).toBe(before);
    });

    test("a plan made on another version writes nothing at all", async () => {
      const w = await world(store());
      const kept = await cooked(w);
      const before = await everything(store(), w);
      const { stocks } = store().stores;
      for (const version of [1, 3, 100]) {
        const late = cooking(w, { version, cause: `late ${version}` });
        expect(await stocks.record({ ...late, reminders: [reminder("late")] })).toBe("moved on");
        expect(await stocks.record(eating(w, kept, version, `eat ${version}`))).toBe("moved on");
      }
      expect(await everything(store(), w)).toBe(before);
    });

    test("of many plans on one version exactly one is recorded, and whole", async () => {
      const w = await world(store());
      const kept = await cooked(w);
      const { stocks, reminders } = store().stores;
      const plans = Array.from({ length: 8 }, (_, i) =>
        eating(w, kept, 2, `press ${i}`, (i % 3) + 1),
      );
      const results = await Promise.all(plans.map((each) => stocks.record(each)));
      expect(results.toSorted()).toEqual([...Array(7).fill("moved on"), "recorded"]);
      const winner = plans[results.indexOf("recorded")];
      const { changes } = await stocks.ledger(w.member.id);
      expect(changes.slice(1)).toEqual([winner?.change]);
      expect((await stocks.load(w.member.id)).lots).toEqual(winner?.lots);
      const coming = await reminders.coming(w.member.id, 10);
      expect(coming.map(({ key }) => key)).toEqual(winner?.reminders.map(({ key }) => key));
    });

    test("one cause delivered twice at once is recorded once", async () => {
      const w = await world(store());
      const kept = await cooked(w);
      const { stocks } = store().stores;
      const twice = [eating(w, kept, 2, "press"), eating(w, kept, 2, "press")];
      const results = await Promise.all(twice.map((each) => stocks.record(each)));
      expect(results.toSorted()).toEqual(["already", "recorded"]);
      expect((await stocks.ledger(w.member.id)).changes).toHaveLength(2);
    });

    test("a record that fails half way leaves nothing behind", async () => {
      const w = await world(store());
      await cooked(w);
      const { stocks } = store().stores;
      const before = await everything(store(), w);
      const whole = cooking(w, { version: 2, cause: "c2", rest: { reminders: [reminder("r")] } });
      const newBatch = batch({ ...whole.newBatch, revisionId: revisionId("nowhere") });
      await expect(stocks.record({ ...whole, newBatch })).rejects.toThrow();
      expect(await everything(store(), w)).toBe(before);
      expect(await stocks.record(whole)).toBe("recorded");
    });

    test("a plan that would leave less than nothing, or a part of a half, is refused", async () => {
      const w = await world(store());
      const kept = await cooked(w);
      const before = await everything(store(), w);
      for (const portions of [7, 0.25]) {
        await expect(
          store().stores.stocks.record(eating(w, kept, 2, "bad", portions)),
        ).rejects.toThrow("halves");
      }
      expect(await everything(store(), w)).toBe(before);
    });

    test("half a portion, and why one was thrown away, come back as they were written", async () => {
      const w = await world(store());
      const { stocks } = store().stores;
      const kept = await cooked(w);
      await stocks.record(eating(w, kept, 2, "half", 0.5));
      const threw = movement(
        { batchId: kept.batchId, from: kept.id },
        { kind: "threw away", portions: 1.5, reason: "did not like" },
      );
      const lots = [{ ...kept, portions: 4 }];
      await stocks.record(plan(w, { version: 3, cause: "threw", lots, movements: [threw] }));
      expect((await stocks.load(w.member.id)).lots.map((lot) => lot.portions)).toEqual([4]);
      const { changes } = await stocks.ledger(w.member.id);
      expect(changes.flatMap((one) => one.movements)).toMatchObject([
        { kind: "cooked", portions: 6, reason: null },
        { kind: "ate", portions: 0.5, reason: null },
        { kind: "threw away", portions: 1.5, reason: "did not like" },
      ]);
    });

    test("the last change is the newest that is neither undone nor an undo, with its lots as they are now", async () => {
      const w = await world(store());
      const { stocks } = store().stores;
      expect(await stocks.lastChange(w.member.id)).toBeNull();
      const kept = await cooked(w);
      const ate = eating(w, kept, 2, "eat", 2);
      await stocks.record(ate);
      expect((await stocks.lastChange(w.member.id))?.change).toEqual(ate.change);
      const back = movement(
        { batchId: kept.batchId, to: kept.id },
        { kind: "undone", undoes: "ate" },
      );
      const undo = {
        version: 3,
        cause: "undo",
        movements: [back],
        lots: [kept],
        undoes: ate.change.id,
      };
      expect(await stocks.record(plan(w, undo))).toBe("recorded");
      const last = await stocks.lastChange(w.member.id);
      expect(last?.change.version).toBe(1);
      expect(last?.lots).toEqual([kept]);
      const again = plan(w, { ...undo, version: 4, cause: "undo again" });
      await expect(stocks.record(again)).rejects.toThrow();
      expect((await stocks.load(w.member.id)).version).toBe(3);
    });

    test("recording rewrites the reminders and the next replan with it", async () => {
      const w = await world(store());
      await remind(w, [reminder("old"), reminder("kept")]);
      const replanAt = later(45);
      await cooked(w, {
        reminders: [reminder("kept", { dueAt: later(90) }), reminder("new")],
        replanAt,
      });
      const coming = await store().stores.reminders.coming(w.member.id, 10);
      expect(coming.map(({ key, dueAt }) => [key, String(dueAt)])).toEqual([
        ["new", String(later(60))],
        ["kept", String(later(90))],
      ]);
      expect(await store().deliveries.toReplan(later(44), 10)).toEqual([]);
      expect(await store().deliveries.toReplan(replanAt, 10)).toEqual([w.member.id]);
      expect(await store().deliveries.toReplan(NOW, 10)).toEqual([]);
    });
  });
}
