import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { readdir, stat, writeFile } from "node:fs/promises";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { backUp, FileThere } from "../../../src/store/backup.ts";
import { checkFile } from "../../../src/store/check-file.ts";
import { atRest, type Shelf, shelf, stocked } from "./backup-kit.ts";
import { everything } from "./kit.ts";
import { openFile } from "./sqlite-place.ts";

const WRITER = fileURLToPath(new URL("./writer.ts", import.meta.url));

let path: Shelf["path"];
let file: Shelf["file"];
let folder: Shelf["folder"];
let remove: Shelf["remove"];
beforeEach(async () => {
  ({ path, file, folder, remove } = await shelf());
});
afterEach(() => remove());

describe("a backup", () => {
  it("holds all that was written, is the owner's alone, and leaves nothing else behind", async () => {
    const w = await stocked(path);
    const report = await backUp(path, file("kept/b.db"));
    const before = await everything(w.store, w);
    await w.store.close();
    expect(report.faults).toEqual([]);
    expect(report.portions).toEqual({ cooked: 6, corrected: 0, inStock: 4, gone: 2 });
    expect(report.rows).toMatchObject({
      Group: 1,
      Member: 1,
      Batch: 1,
      StockChange: 2,
      Reminder: 1,
    });
    expect(await readdir(file("kept"))).toEqual(["b.db"]);
    expect((await stat(file("kept/b.db"))).mode & 0o777).toBe(0o600);
    const copy = await openFile(file("kept/b.db"));
    expect(await everything(copy, { ...w, store: copy })).toBe(before);
    await copy.close();
  });

  it("can be made of a file that no process has open", async () => {
    await backUp(await atRest(path), file("b.db"));
    expect((await checkFile(file("b.db"))).faults).toEqual([]);
  });

  it("is never written over anything", async () => {
    await writeFile(file("mine"), "a letter");
    await expect(backUp(await atRest(path), file("mine"))).rejects.toBeInstanceOf(FileThere);
    expect((await stat(file("mine"))).size).toBe(8);
  });

  it("that cannot be made leaves nothing that could be taken for one", async () => {
    await writeFile(file("noise.db"), "x".repeat(9_000));
    await expect(backUp(file("noise.db"), file("b.db"))).rejects.toThrow();
    await expect(backUp(file("nowhere.db"), file("b.db"))).rejects.toThrow();
    expect((await readdir(folder)).filter((name) => name.startsWith("b.db"))).toEqual([]);
  });

  it("takes the place of the half of one that a crash left", async () => {
    await writeFile(file("b.db.part"), "half");
    await backUp(await atRest(path), file("b.db"));
    expect(await readdir(folder)).not.toContain("b.db.part");
    expect((await checkFile(file("b.db"))).faults).toEqual([]);
  });
});

describe("a backup while another process writes", () => {
  let writer: ChildProcess;
  afterEach(async () => {
    writer.kill("SIGKILL");
    if (writer.exitCode === null && writer.signalCode === null) await once(writer, "exit");
  });

  it("is the file as it was at one instant, and holds up no write", async () => {
    const child = spawn(process.execPath, ["--import", "tsx", WRITER, path], {
      stdio: ["ignore", "pipe", "pipe"],
    });
    writer = child;
    let [written, errors] = [0, ""];
    child.stderr.on("data", (chunk) => {
      errors += String(chunk);
    });
    const lines = createInterface({ input: child.stdout });
    lines.on("line", (line) => {
      written = Number(line);
    });
    const counts: number[] = [];
    for (let n = 0; n < 6; n += 1) {
      const before = written;
      while (written < before + 5) await once(lines, "line");
      const acknowledged = written;
      const report = await backUp(path, file(`b${n}.db`));
      expect(report.faults).toEqual([]);
      const { cooked: made, inStock, gone } = report.portions;
      expect(inStock + gone).toBe(made);
      // All that was acknowledged before it began is in it.
      expect(gone).toBeGreaterThanOrEqual(acknowledged);
      counts.push(gone);
    }
    expect(counts.every((count, n) => n === 0 || count > (counts[n - 1] ?? 0))).toBe(true);
    expect([errors, child.exitCode]).toEqual(["", null]);
  });
});
