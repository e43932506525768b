import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { layCard } from "../../../shared/container-label/layout.ts";
import type { Print } from "../../../shared/picture/print.ts";
import { withSavedPrints } from "../../../src/terminal/save-prints.ts";
import { wordsOf } from "../../kit/bot.ts";
import { readPng, scan } from "../../kit/printed.ts";
import { label } from "../../shared/container-label/samples.ts";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "batch-clerk-prints-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const card: Print = {
  name: "label-7K3QA",
  format: "png",
  title: "Label 7K3QA for a phone",
  pages: [layCard(label()).page],
  alt: "Label, code 7K3QA",
};

it("writes a print to a file and says where", async () => {
  const place = join(folder, "new", "prints");
  const shown = await withSavedPrints(reply("1 label", { prints: [card] }), place);
  const path = join(place, "label-7K3QA.png");
  expect(wordsOf(shown)).toContain(`Label 7K3QA for a phone: ${path}`);
  const [scanned] = await scan(await readPng(await readFile(path)));
  expect(scanned?.text).toBe("7K3QA");
});

it("says so when the file cannot be written, and goes on", async () => {
  const place = join(folder, "taken");
  await writeFile(place, "a file where a folder should be");
  const shown = await withSavedPrints(reply("1 label", { prints: [card] }), place);
  expect(wordsOf(shown)).toContain("cannot be written");
});
