import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { copyFile } from "node:fs/promises";
import { text } from "node:stream/consumers";
import { fileURLToPath } from "node:url";
import Database from "better-sqlite3";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { groupId } from "../../../../shared/ids.ts";
import { Prisma } from "../../../../src/store/generated/client.ts";
import { moveGroups } from "../../../../src/store/move.ts";
import { GROUP_TABLES } from "../../../../src/store/move-tables.ts";
import type { Store } from "../../../../src/store/open.ts";
import type { Place, World } from "../kit.ts";
import { allOf, live } from "../lived-in.ts";
import { openUrl, type PostgresRun } from "../postgres-place.ts";
import { openFile, sqlitePlace } from "../sqlite-place.ts";

const SCRIPT = fileURLToPath(new URL("../../../../src/move.ts", import.meta.url));

/** Runs the script as its user does. */
async function run(args: readonly string[], env: Record<string, string> = {}) {
  const child = spawn(process.execPath, ["--import", "tsx", SCRIPT, ...args], {
    env: { ...process.env, DATABASE_URL: "", ...env },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const said = Promise.all([text(child.stdout), text(child.stderr)]);
  const [code] = await once(child, "exit");
  const [out, err] = await said;
  return { code, out, err };
}

export function movingToServer(given: () => PostgresRun): void {
  describe("the move of a group from a file to it", () => {
    /** A file that was lived in, made once and copied for each test. */
    let model: Place & { readonly path: string };
    let file: Place & { readonly path: string };
    let [a, b]: World[] = [];
    let before: unknown[] = [];
    let from = "";
    let to = "";
    beforeAll(async () => {
      model = await sqlitePlace();
      const store = await openFile(model.path);
      [a, b] = [await live(store, "a"), await live(store, "b")];
      before = [await allOf(store, a), await allOf(store, b)];
      await store.close();
    });
    afterAll(() => model.remove());
    beforeEach(async () => {
      ({ url: to } = await given().place());
      file = await sqlitePlace();
      from = `file:${file.path}`;
      await copyFile(model.path, file.path);
    });
    afterEach(() => file.remove());

    /** What a store holds of both groups. */
    const heldBy = async (store: Store): Promise<unknown[]> => {
      if (a === undefined || b === undefined) throw new Error("no groups");
      const held = [await allOf(store, a), await allOf(store, b)];
      await store.close();
      return held;
    };
    const groupsThere = async () =>
      (await given().server.ask(to, `SELECT "id" FROM "Group" ORDER BY 1`)).map(({ id }) => id);

    test("brings everything over, says so in counts and portions, and leaves the file as it was", async () => {
      const { code, out, err } = await run(["--from", from, "--to", to]);
      expect([code, err]).toEqual([0, ""]);
      expect(out).toContain('Group "Kitchen a" (group-a): moved; the same in both.');
      expect(out).toContain("Lot 1, StockChange 4, Movement 4,");
      expect(out).toContain("Reminder 600.");
      expect(out).toContain(
        "6 cooked = 5 in the fridge + 0 in the freezer + 0 thawing + 1 eaten + 0 given + 0 thrown away.",
      );
      expect(await heldBy(await openUrl(to))).toEqual(before);
      expect(await heldBy(await openFile(file.path))).toEqual(before);
    });

    test("takes one group when told to, and names those there are when there is none of that id", async () => {
      const one = await run(["--from", from, "--group", "group-b"], { DATABASE_URL: to });
      expect([one.code, one.err]).toEqual([0, ""]);
      expect(await groupsThere()).toEqual(["group-b"]);
      const none = await run(["--from", from, "--group", "nobody"], { DATABASE_URL: to });
      expect(none.code).toBe(1);
      expect(none.err).toContain("group-a, group-b");
    });

    test("can be repeated: what is there already is compared and left alone", async () => {
      await moveGroups(from, to, "group-a");
      const again = await moveGroups(from, to, null);
      expect(again).toMatchObject({
        ok: true,
        value: [
          { id: "group-a", isNew: false },
          { id: "group-b", isNew: true },
        ],
      });
      expect(await heldBy(await openUrl(to))).toEqual(before);
    });

    test("refuses a group that lives on there, and changes it in neither", async () => {
      await moveGroups(from, to, null);
      const store = await openUrl(to);
      await store.stores.groups.set(groupId("group-a"), { zone: "Asia/Tokyo" });
      await store.close();
      const refused = await moveGroups(from, to, "group-a");
      expect(refused).toMatchObject({
        ok: false,
        problem: { moved: [], sentence: expect.stringContaining("differs there") },
      });
      const [row] = await given().server.ask(
        to,
        `SELECT "zone" FROM "Group" WHERE "id" = 'group-a'`,
      );
      expect(row).toEqual({ zone: "Asia/Tokyo" });
    });

    test("sees one portion too many, though all counts are the same", async () => {
      await moveGroups(from, to, "group-a");
      await given().server.ask(to, `UPDATE "Lot" SET "halves" = "halves" + 1`);
      const refused = await moveGroups(from, to, "group-a");
      expect(refused).toMatchObject({
        ok: false,
        problem: { sentence: expect.stringContaining("the table Lot") },
      });
    });

    test("leaves nothing of a group that cannot be moved whole", async () => {
      // An id that is taken by somebody else, found only near the end of the copy.
      await given().server.ask(
        to,
        `INSERT INTO "Group" ("id", "name", "zone") VALUES ('x', 'X', 'Etc/UTC');
         INSERT INTO "Member" ("id", "groupId", "userId", "name", "zone", "morning", "evening",
           "quietFrom", "quietUntil", "deliverTo") VALUES ('mx', 'x', 'u', 'n', 'z', '', '', '', '', 'channel');
         INSERT INTO "MealRule" ("id", "memberId", "position", "name", "weekdays", "time", "portions")
           VALUES ('meal-b', 'mx', 0, '', '[]', '', 1)`,
      );
      const done = await moveGroups(from, to, null);
      expect(done).toMatchObject({
        ok: false,
        problem: { moved: [{ id: "group-a" }], sentence: expect.stringContaining("group-b") },
      });
      expect(await groupsThere()).toEqual(["group-a", "x"]);
      const left = `SELECT count(*)::int AS n FROM "Reminder" r JOIN "Member" m ON m."id" = r."memberId"`;
      expect(await given().server.ask(to, `${left} WHERE m."groupId" = 'group-b'`)).toEqual([
        { n: 0 },
      ]);
    });

    test("cleans signs that the server refuses", async () => {
      const db = new Database(file.path);
      db.prepare(`UPDATE "Member" SET "name" = ? WHERE "groupId" = 'group-a'`).run("A\0na");
      db.close();
      expect(await moveGroups(from, to, "group-a")).toMatchObject({ ok: true });
      const [row] = await given().server.ask(to, `SELECT "name" FROM "Member"`);
      expect(row).toEqual({ name: "A\uFFFDna" });
    });

    test("is refused while the bot has the file open, without a file, and without a place to go", async () => {
      const store = await openFile(file.path);
      const open = await moveGroups(from, to, null);
      await store.close();
      const missing = `${file.path}.missing`;
      const sentences = [
        open,
        await moveGroups(`file:${missing}`, to, null),
        await moveGroups(from, "file:other.db", null),
      ].map((done) => (done.ok ? "" : done.problem.sentence));
      expect(sentences[0]).toContain("Stop that copy");
      expect(sentences[1]).toContain("--from must be");
      expect(sentences[2]).toContain("--to must be");
      expect(existsSync(missing)).toBe(false);
      expect(await groupsThere()).toEqual([]);
      expect(await run(["--to", to])).toMatchObject({
        code: 2,
        err: expect.stringContaining("--from"),
      });
    });

    test("names batches that do not add up, and moves them as they are", async () => {
      const db = new Database(file.path);
      db.exec(`UPDATE "Lot" SET "halves" = 6`);
      db.close();
      const { out } = await run(["--from", from, "--to", to, "--group", "group-a"]);
      expect(out).toContain("do not add up");
    });

    test("knows every table of the schema but the settings of the bot itself", () => {
      const models = Object.values(Prisma.ModelName).filter((name) => name !== "Setting");
      expect([...GROUP_TABLES.keys()].toSorted()).toEqual(models.toSorted());
    });
  });
}
