import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { openStore } from "../../../src/store/open.ts";
import type { Place } from "./kit.ts";
import { openFile, sqlitePlace } from "./sqlite-place.ts";

const OPENER = fileURLToPath(new URL("./opener.ts", import.meta.url));

let place: Place & { readonly path: string };
let children: ChildProcess[] = [];
beforeEach(async () => {
  place = await sqlitePlace();
});
afterEach(async () => {
  for (const child of children) await end(child);
  children = [];
  await place.remove();
});

/** Opens the file in another process and returns what that says. */
async function elsewhere(): Promise<{ readonly child: ChildProcess; readonly said: unknown }> {
  const child = spawn(process.execPath, ["--import", "tsx", OPENER, `file:${place.path}`], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  children.push(child);
  const [line] = await once(createInterface({ input: child.stdout }), "line");
  return { child, said: JSON.parse(String(line)) };
}

async function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  child.kill("SIGKILL");
  await once(child, "exit");
}

const IN_USE = { ok: false, problem: { code: "the file is in use" } };

describe("a file that a process has open", () => {
  test("is refused to a second process, with a sentence, and serves the first on", async () => {
    const store = await openFile(place.path);
    const { said } = await elsewhere();
    expect(said).toMatchObject(IN_USE);
    expect(said).toMatchObject({ problem: { sentence: expect.stringContaining(place.path) } });
    expect(said).toMatchObject({
      problem: { sentence: expect.stringContaining("Stop that copy") },
    });
    await store.settings.set("k", "v");
    expect(await store.settings.get("k")).toBe("v");
    await store.close();
  });

  test("is free again when that process closed it, and when it was killed", async () => {
    const store = await openFile(place.path);
    await store.settings.set("k", "kept");
    await store.close();
    const { child, said } = await elsewhere();
    expect(said).toEqual({ ok: true });
    expect(await openStore(`file:${place.path}`)).toMatchObject(IN_USE);
    await end(child);
    const again = await openFile(place.path);
    expect(await again.settings.get("k")).toBe("kept");
    await again.close();
  });

  test("goes to exactly one of several processes that start at once, also when it is new", async () => {
    const all = await Promise.all([elsewhere(), elsewhere(), elsewhere()]);
    const codes = all.map(({ said }) => JSON.stringify(said).includes("in use"));
    expect(codes.toSorted()).toEqual([false, true, true]);
  });

  test("is refused to a second store of the same process", async () => {
    const store = await openFile(place.path);
    expect(await openStore(`file:${place.path}`)).toMatchObject(IN_USE);
    await store.close();
  });
});
