import { afterEach, beforeEach, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { GRIDS } from "../../../shared/container-label/grids.ts";
import { layCard, laySheets } from "../../../shared/container-label/layout.ts";
import type { Print } from "../../../shared/picture/print.ts";
import { list, obj } from "../../discord-server/json.ts";
import { flatten } from "../../discord-server/rules/component-rules.ts";
import { readPdf, readPng, scan } from "../../kit/printed.ts";
import { label } from "../../shared/container-label/samples.ts";
import { type Rig, startRig } from "./rig.ts";

let rig: Rig;
beforeEach(async () => {
  rig = await startRig();
});
afterEach(async () => {
  expect(rig.server.platform.refused).toEqual([]);
  await rig.close();
});

function sheet(copies: number): Print {
  const [grid] = GRIDS;
  if (grid === undefined) throw new Error("no grid");
  const { pages } = laySheets(grid, [{ words: label(), copies }], 1);
  return { name: "labels-7K3QA-a4", format: "pdf", title: "Labels", pages, alt: "8 x Barley" };
}

const card: Print = {
  name: "label-7K3QA",
  format: "png",
  title: "Label",
  pages: [layCard(label()).page],
  alt: "Label, code 7K3QA: Barley and lamb pot Eat by Wed 14 Oct",
};

it("brings a sheet as a file to open and a card as a picture with its text", async () => {
  const { server, mika, guild, bot } = rig;
  bot.answer = () => reply("8 labels", { prints: [sheet(8), card] });
  const { message } = await server.slash(mika, guild, ["stock"]);
  const [pdf, png] = message.files;
  expect([pdf?.name, png?.name]).toEqual(["labels-7K3QA-a4.pdf", "label-7K3QA.png"]);
  expect(await readPdf(pdf?.bytes ?? new Uint8Array())).toHaveLength(1);
  const [scanned] = await scan(await readPng(png?.bytes ?? new Uint8Array()));
  expect(scanned?.text).toBe("7K3QA");
  const parts = flatten(message.components);
  const [file] = parts.filter((part) => part["type"] === 13);
  expect(obj(file?.["file"])["url"]).toBe("attachment://labels-7K3QA-a4.pdf");
  const [gallery] = parts.filter((part) => part["type"] === 12);
  expect(obj(list(gallery?.["items"])[0])["description"]).toBe(card.alt);
});

it("brings 200 labels well inside three seconds, and small enough to send", async () => {
  const { server, mika, guild, bot } = rig;
  bot.answer = () => reply("200 labels", { prints: [sheet(200)] });
  const answered = await server.slash(mika, guild, ["stock"]);
  expect(answered.first.afterMs).toBeLessThan(1_500);
  const [pdf] = answered.message.files;
  expect(pdf?.bytes.length).toBeLessThan(1_000_000);
  expect(await readPdf(pdf?.bytes ?? new Uint8Array())).toHaveLength(25);
});

it("says in words what could not be made", async () => {
  const { server, mika, guild, bot } = rig;
  bot.answer = () => reply("8 labels", { prints: [{ ...card, pages: [] }] });
  const answered = await server.slash(mika, guild, ["stock"]);
  expect(answered.files).toEqual([]);
  expect(answered.text).toContain("Eat by Wed 14 Oct");
});
