import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { PrismaClient } from "../../../src/store/generated/client.ts";
import { migrateSqlite } from "../../../src/store/migrate.ts";
import { oneAtATime } from "../../../src/store/one-at-a-time.ts";
import type { Place } from "./kit.ts";
import { sqlitePlace } from "./sqlite-place.ts";

let place: Place & { readonly path: string };
beforeEach(async () => {
  place = await sqlitePlace();
  await migrateSqlite(place.path);
});
afterEach(() => place.remove());

function client(): PrismaClient {
  const factory = new PrismaBetterSqlite3({ url: place.path });
  return new PrismaClient({ adapter: oneAtATime(factory, "PRAGMA journal_mode = WAL") });
}

const row = (key: string) => ({ data: { key, value: "" } });

describe("statements on the one connection", () => {
  test("a write during somebody else's transaction survives its rollback and is not seen inside it", async () => {
    const db = client();
    let release: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    let isInside: () => void = () => undefined;
    const inside = new Promise<void>((resolve) => {
      isInside = resolve;
    });
    const failing = db.$transaction(async (tx) => {
      await tx.setting.create(row("mine"));
      isInside();
      await held;
      const seen = await tx.setting.count();
      throw new Error(`rolled back after seeing ${seen}`);
    });
    await inside;
    // Prisma starts a query only when somebody waits for it.
    const write = db.setting.create(row("theirs")).then(() => "written");
    const read = db.setting.findMany().then((rows) => rows);
    // Time enough for both to reach the connection, were they not held back.
    for (let turn = 0; turn < 20; turn++) await new Promise(setImmediate);
    release();
    await expect(failing).rejects.toThrow("rolled back after seeing 1");
    expect(await write).toBe("written");
    expect((await read).map(({ key }) => key)).toEqual(["theirs"]);
    expect((await db.setting.findMany()).map(({ key }) => key)).toEqual(["theirs"]);
    await db.$disconnect();
  });

  test("a failing array transaction takes no write of others with it", async () => {
    const db = client();
    await db.setting.create(row("taken"));
    const work = Array.from({ length: 60 }, (_, i) =>
      i % 2 === 0
        ? db.setting.create(row(`ok ${i}`)).then(() => "written")
        : db
            .$transaction([db.setting.create(row(`lost ${i}`)), db.setting.create(row("taken"))])
            .then(
              () => "wrongly written",
              () => "refused",
            ),
    );
    const results = await Promise.all(work);
    expect(results.filter((result) => result === "written")).toHaveLength(30);
    expect(results.filter((result) => result === "refused")).toHaveLength(30);
    const keys = (await db.setting.findMany()).map(({ key }) => key);
    expect(keys.filter((key) => key.startsWith("ok"))).toHaveLength(30);
    expect(keys).toHaveLength(31);
    await db.$disconnect();
  });

  test("let timers and the network have their turn however many there are", async () => {
    const db = client();
    await db.setting.create(row("one"));
    let turns = 0;
    let isOver = false;
    const count = (): void => {
      turns += 1;
      if (!isOver) setImmediate(count);
    };
    setImmediate(count);
    await Promise.all(Array.from({ length: 500 }, () => db.setting.findMany().then(() => {})));
    isOver = true;
    expect(turns).toBeGreaterThanOrEqual(3);
    await db.$disconnect();
  });
});
