import { describe, expect, test } from "vitest";
import { batchId, lotId, memberId, revisionId } from "../../../../shared/ids.ts";
import { batch, lot } from "../../../kit/stock.ts";
import type { Given } from "../contract.ts";
import { cooked, cooking, eating, everything, movement, plan, world } from "../kit.ts";

export function ownershipContract({ store }: Given): void {
  describe("whose stock it is", () => {
    test("a plan cannot write another member's lot or batch", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      const kept = await cooked(a);
      const before = await everything(store(), a);
      const { stocks } = store().stores;
      await expect(stocks.record(eating(b, kept, 1, "steal"))).rejects.toThrow();
      const planted = plan(b, {
        version: 1,
        cause: "plant",
        movements: [movement({ batchId: kept.batchId, to: lotId("planted") })],
        lots: [lot({ id: lotId("planted"), batchId: kept.batchId })],
      });
      await expect(stocks.record(planted)).rejects.toThrow();
      const silent = { ...eating(b, kept, 1, "silent"), lots: [] };
      await expect(stocks.record(silent)).rejects.toThrow("does not name");
      const foreign = cooking(b, { version: 1, cause: "foreign" });
      const newBatch = batch({
        id: batchId("f"),
        memberId: a.member.id,
        revisionId: revisionId("r"),
      });
      await expect(stocks.record({ ...foreign, newBatch })).rejects.toThrow("another member");
      expect(await everything(store(), a)).toBe(before);
      expect(await stocks.load(b.member.id)).toMatchObject({ version: 0, lots: [] });
    });

    test("stocks of two members do not touch each other", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      await Promise.all([cooked(a), cooked(b)]);
      const { stocks } = store().stores;
      const { lots, batches } = await stocks.load(a.member.id);
      expect([lots.length, batches.length]).toEqual([1, 1]);
      expect((await stocks.ledger(b.member.id)).changes).toHaveLength(1);
      await expect(stocks.load(memberId("nobody"))).rejects.toThrow();
    });
  });
}
