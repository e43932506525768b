import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { memberId } from "../../../shared/ids.ts";
import { PrismaClient } from "../../../src/store/generated/client.ts";
import type { Store } from "../../../src/store/open.ts";
import { moveOn, readStanding, rewriteReminders } from "../../../src/store/reminder-rewrite.ts";
import { claimDue } from "./claim-kit.ts";
import { later, NOW, type Place, remind, reminder, type World, world } from "./kit.ts";
import { openFile, sqlitePlace } from "./sqlite-place.ts";

let place: Place & { readonly path: string };
let store: Store;
let db: PrismaClient;
let w: World;
beforeEach(async () => {
  place = await sqlitePlace();
  store = await openFile(place.path);
  w = await world(store);
  db = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url: place.path }) });
});
afterEach(async () => {
  await db.$disconnect();
  await store.close();
  await place.remove();
});

const newId = (): string => "reminder0new";

describe("a rewrite decided before somebody else came in between", () => {
  test("neither moves nor removes a row that a delivery claimed meanwhile", async () => {
    const free = reminder("free", { dueAt: later(61) });
    await remind(w, [reminder("moved"), reminder("removed"), free]);
    const wanted = [reminder("moved", { dueAt: later(500) })];
    const standing = await readStanding(db, w.member.id, wanted);
    const held = await claimDue(store, { due: later(60) });
    await db.$transaction([
      moveOn(db, w.member.id, standing, {}),
      ...rewriteReminders(
        db,
        w.member.id,
        { known: standing.known, reminders: wanted, now: NOW, replanAt: null },
        newId,
      ),
    ]);
    expect(await store.stores.reminders.coming(w.member.id, 10)).toEqual(held);
  });

  test("fails whole when the reminders were rewritten meanwhile", async () => {
    await remind(w, [reminder("a")]);
    const wanted = [reminder("b")];
    const standing = await readStanding(db, w.member.id, wanted);
    await remind(w, [reminder("c")]);
    const stale = db.$transaction([
      moveOn(db, w.member.id, standing, { replanAt: new Date(0) }),
      ...rewriteReminders(
        db,
        w.member.id,
        { known: standing.known, reminders: wanted, now: NOW, replanAt: null },
        newId,
      ),
    ]);
    await expect(stale).rejects.toMatchObject({ code: "P2025" });
    const coming = await store.stores.reminders.coming(w.member.id, 10);
    expect(coming.map(({ key }) => key)).toEqual(["c"]);
    expect(await store.deliveries.toReplan(NOW, 10)).toEqual([]);
  });

  test("cannot move on a member that is not there", async () => {
    await expect(readStanding(db, memberId("nobody"), [])).rejects.toMatchObject({ code: "P2025" });
  });
});
