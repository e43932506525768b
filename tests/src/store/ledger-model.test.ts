import fc from "fast-check";
import { afterEach, beforeEach, describe, test } from "vitest";
import type { Store } from "../../../src/store/open.ts";
import { NOW, type Place, world } from "./kit.ts";
import { ledgerCommands } from "./ledger-commands.ts";
import { emptyModel } from "./ledger-model.ts";
import { sqlitePlace } from "./sqlite-place.ts";

let place: Place;
let store: Store;
beforeEach(async () => {
  place = await sqlitePlace();
  store = await place.open();
});
afterEach(async () => {
  await store.close();
  await place.remove();
});

describe("the ledger on a SQLite file against a model of it", () => {
  test("any sequence of logs, moves, corrections, undos, repeats and two at once conserves portions", async () => {
    let run = 0;
    await fc.assert(
      fc.asyncProperty(ledgerCommands, async (commands) => {
        run += 1;
        const own = await world(store, `m${run}x`);
        await fc.asyncModelRun(
          () => ({
            model: emptyModel(),
            real: { stores: [store, store] as const, world: own, now: NOW, lastCause: null },
          }),
          commands,
        );
      }),
      { numRuns: 40, endOnFailure: false },
    );
  }, 120_000);
});
