import { existsSync } from "node:fs";
import { chmod, stat, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { groupId } from "../../../shared/ids.ts";
import { openStore } from "../../../src/store/open.ts";
import { claimDue } from "./claim-kit.ts";
import { NOW, type Place, remind, reminder, world } from "./kit.ts";
import { openFile, sqlitePlace } from "./sqlite-place.ts";

let place: Place & { readonly path: string };
beforeEach(async () => {
  place = await sqlitePlace();
});
afterEach(() => place.remove());

async function problemOf(url: string): Promise<{ code: string; sentence: string } | null> {
  const opened = await openStore(url);
  if (!opened.ok) return opened.problem;
  await opened.value.close();
  return null;
}

describe("opening a store", () => {
  test("makes the folders and the file, in write-ahead mode", async () => {
    const path = join(place.path, "..", "deep", "er", "clerk.db");
    const store = await openFile(path);
    await store.settings.set("a", "b");
    const db = new Database(path, { readonly: true });
    expect(db.pragma("journal_mode", { simple: true })).toBe("wal");
    db.close();
    await store.close();
  });

  test("another kind of address is a problem with a sentence, not an exception", async () => {
    for (const url of ["postgresql:h", "mysql://h", "clerk.db", "", "file:"]) {
      const problem = await problemOf(url);
      expect(problem?.code).toBe("unsupported database");
      expect(problem?.sentence).toContain("file:./data/batch-clerk.db");
    }
  });

  test("a file that is no database, and a folder, are problems and stay as they are", async () => {
    await writeFile(place.path, "Shopping list: ".repeat(500));
    const problem = await problemOf(`file:${place.path}`);
    expect(problem?.code).toBe("cannot open the file");
    expect(problem?.sentence).toContain(place.path);
    const folder = await problemOf(`file:${join(place.path, "..")}`);
    expect(folder?.code).toBe("cannot open the file");
    expect(folder?.sentence).toContain("it is a folder");
    expect(existsSync(`${dirname(place.path)}-owner`)).toBe(false);
  });

  test("a new file is for its owner only, its log beside it too; of an old one that stays as it was", async () => {
    const mode = async (path: string) => ((await stat(path)).mode & 0o777).toString(8);
    const store = await openFile(place.path);
    await store.settings.set("k", "v");
    expect([await mode(place.path), await mode(`${place.path}-wal`)]).toEqual(["600", "600"]);
    await store.close();
    await chmod(place.path, 0o640);
    await (await openFile(place.path)).close();
    expect(await mode(place.path)).toBe("640");
  });

  test("ids come from the caller when it gives a source of them", async () => {
    const opened = await openStore(`file:${place.path}`, { newId: () => "member000001" });
    if (!opened.ok) throw new Error(opened.problem.sentence);
    const { groups, members } = opened.value.stores;
    await groups.open(groupId("g"), "G");
    expect((await members.open(groupId("g"), "u", "Ana")).id).toBe("member000001");
    await opened.value.close();
  });

  test("a write waits, in tries, for another process that holds the file", async () => {
    const store = await openFile(place.path);
    const other = new Database(place.path);
    other.exec("BEGIN IMMEDIATE");
    const write = store.settings.set("k", "v");
    // The first try blocks this process until its timeout, so the other lets go only after it failed.
    setImmediate(() => other.exec("COMMIT"));
    await write;
    expect(await store.settings.get("k")).toBe("v");
    other.close();
    await store.close();
  });

  test("one unreadable reminder does not hold up the others and is marked failed", async () => {
    const store = await openFile(place.path);
    const w = await world(store);
    await remind(w, [reminder("good", { dueAt: NOW }), reminder("bad", { dueAt: NOW })]);
    const db = new Database(place.path);
    db.exec(`UPDATE "Reminder" SET "about" = '{}' WHERE "key" = 'bad'`);
    const held = await claimDue(store);
    expect(held.map(({ key }) => key)).toEqual(["good"]);
    const bad = db.prepare(`SELECT "state", "reason" FROM "Reminder" WHERE "key" = 'bad'`).get();
    expect(bad).toEqual({ state: "failed", reason: "unreadable" });
    db.close();
    await store.close();
  });

  test.each([
    `UPDATE "Member" SET "allergens" = '{' WHERE "id" = ?`,
    `UPDATE "Member" SET "morning" = 'noon' WHERE "id" = ?`,
    `UPDATE "Group" SET "labelStyle" = 'none' WHERE "id" = (SELECT "groupId" FROM "Member" WHERE "id" = ?)`,
  ])("one unreadable recipient does not hold up the others: %s", async (spoil) => {
    const store = await openFile(place.path);
    const [good, bad] = [await world(store, "good"), await world(store, "bad")];
    const db = new Database(place.path);
    expect(db.prepare(spoil).run(bad.member.id).changes).toBe(1);
    db.close();
    const found = await store.deliveries.recipients([good.member.id, bad.member.id]);
    expect(found.get(good.member.id)).toMatchObject({ member: { id: good.member.id } });
    expect(found.get(bad.member.id)).toBe("unreadable");
    await store.close();
  });
});
