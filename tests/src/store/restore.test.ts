import { readdir, stat, writeFile } from "node:fs/promises";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { backUp } from "../../../src/store/backup.ts";
import { checkFile } from "../../../src/store/check-file.ts";
import { FileTaken } from "../../../src/store/file-owner.ts";
import { restore } from "../../../src/store/restore.ts";
import { atRest, byHand, lotOf, type Shelf, shelf, stocked } from "./backup-kit.ts";
import { eating, everything, later, NOW, remind, reminder, world } from "./kit.ts";
import { openFile } from "./sqlite-place.ts";

let path: Shelf["path"];
let file: Shelf["file"];
let folder: Shelf["folder"];
let remove: Shelf["remove"];
beforeEach(async () => {
  ({ path, file, folder, remove } = await shelf());
});
afterEach(() => remove());

describe("a backup that is put back", () => {
  it("is what the bot opens next; what was there before is kept beside it", async () => {
    const w = await stocked(path);
    await backUp(path, file("b.db"));
    const before = await everything(w.store, w);
    await w.store.stores.stocks.record(eating(w, await lotOf(w), 3, "after", 1));
    await w.store.close();
    const { report, aside } = await restore(file("b.db"), path, NOW);
    expect(report.faults).toEqual([]);
    const restored = await openFile(path);
    expect(await everything(restored, { ...w, store: restored })).toBe(before);
    await restored.close();
    const old = await checkFile(aside ?? "");
    expect(old.portions).toEqual({ cooked: 6, corrected: 0, inStock: 3, gone: 3 });
  });

  it("does not meet the write-ahead log of the file it replaces", async () => {
    // A process that was killed leaves its log behind; applied to another file it would damage that.
    await atRest(path);
    await backUp(path, file("b.db"));
    for (const part of ["-wal", "-shm"]) await writeFile(`${path}${part}`, "left by a crash");
    const { aside } = await restore(file("b.db"), path, NOW);
    const names = await readdir(folder);
    expect(names.filter((name) => /^clerk\.db-(wal|shm)$/u.test(name))).toEqual([]);
    for (const part of ["", "-wal", "-shm"])
      expect(names).toContain(`${aside?.split("/").at(-1)}${part}`);
    expect((await checkFile(path)).faults).toEqual([]);
  });

  it("can be put where there was nothing", async () => {
    await backUp(await atRest(path), file("b.db"));
    const { aside } = await restore(file("b.db"), file("new/place.db"), NOW);
    expect(aside).toBeNull();
    expect((await checkFile(file("new/place.db"))).portions.cooked).toBe(6);
    expect((await stat(file("new/place.db"))).mode & 0o777).toBe(0o600);
  });

  it("is refused while the bot has the file open, and when it is not sound; then nothing changes", async () => {
    const w = await stocked(path);
    await backUp(path, file("b.db"));
    await expect(restore(file("b.db"), path, NOW)).rejects.toBeInstanceOf(FileTaken);
    await w.store.close();
    byHand(file("b.db"), `UPDATE "Lot" SET halves = halves + 1`);
    const { report } = await restore(file("b.db"), path, NOW);
    expect(report.faults).not.toEqual([]);
    expect((await checkFile(path)).faults).toEqual([]);
    expect((await readdir(folder)).filter((name) => /before|restoring/u.test(name))).toEqual([]);
  });

  it("has the bot look for a reminder that may have gone out since, and not for those to come", async () => {
    const w = await world(await openFile(path));
    const due = [-60, 20, 40].map((minutes) => reminder(`k${minutes}`, { dueAt: later(minutes) }));
    await remind(w, due);
    await backUp(path, file("b.db"));
    await w.store.close();
    await restore(file("b.db"), path, NOW);
    const store = await openFile(path);
    const rows = await store.stores.reminders.coming(w.member.id, 9);
    // From the second attempt on, the messenger reads back what it has sent.
    expect(rows.map(({ key, attempts }) => [key, attempts])).toEqual([
      ["k-60", 1],
      ["k20", 1],
      ["k40", 0],
    ]);
    await store.close();
  });
});
