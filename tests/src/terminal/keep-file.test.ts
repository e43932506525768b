import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { keepFilesIn } from "../../../src/terminal/keep-file.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "clerk-files-"));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const file = (name: string, text: string) => ({ name, text, mediaType: "text/plain" });

describe("keeping a file on disk", () => {
  it("makes the folder, and never overwrites what is there", () => {
    const keep = keepFilesIn(join(folder, "new", "files"));
    expect(keep(file("pot.txt", "one"))).toBe(join(folder, "new", "files", "pot.txt"));
    expect(keep(file("pot.txt", "two"))).toBe(join(folder, "new", "files", "pot-2.txt"));
    expect(readFileSync(join(folder, "new", "files", "pot.txt"), "utf8")).toBe("one");
  });

  it("writes bytes as they are", () => {
    const bytes = Uint8Array.from([0, 255, 37]);
    const path = keepFilesIn(folder)({ name: "a.pdf", bytes, mediaType: "application/pdf" });
    expect(Uint8Array.from(readFileSync(path ?? ""))).toEqual(bytes);
  });

  it("stays inside its folder, whatever the name", () => {
    const inner = join(folder, "in");
    const keep = keepFilesIn(inner);
    for (const name of [
      "../../x.txt",
      "/etc/x",
      "..",
      ".",
      "",
      "a/../../b",
      "\u0000",
      "x".repeat(900),
    ]) {
      expect(keep(file(name, "text"))).toMatch(/in.[\w-][\w.-]{0,85}$/u);
    }
    expect(readdirSync(folder)).toEqual(["in"]);
    expect(readdirSync(inner)).toHaveLength(8);
  });

  it("gives no path where nothing can be written", () => {
    writeFileSync(join(folder, "taken"), "");
    expect(keepFilesIn(join(folder, "taken"))(file("a.txt", "text"))).toBe(null);
  });
});
