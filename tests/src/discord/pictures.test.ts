import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { NOTHING, sumsBy } from "../../../shared/nutrition/sum.ts";
import { macroPicture } from "../../../shared/picture/macro-picture.ts";
import { list, obj } from "../../discord-server/json.ts";
import { flatten } from "../../discord-server/rules/component-rules.ts";
import { type Rig, startRig } from "./rig.ts";

let rig: Rig;
beforeEach(async () => {
  rig = await startRig();
});
afterEach(async () => {
  expect(rig.server.platform.refused).toEqual([]);
  await rig.close();
});

const picture = macroPicture({
  title: "Taco bowl",
  rows: [
    { label: "one bowl, as on the card", sums: sumsBy(() => ({ amount: 40, atLeast: false })) },
    { label: "without rice", sums: NOTHING },
  ],
  target: { proteinG: 150 },
  style: "eu",
});

describe("a reply with a picture", () => {
  it("arrives as an attached PNG that the message shows with its text", async () => {
    const { server, mika, guild, bot } = rig;
    bot.answer = () => reply("Taco bowl: 1 bowl", { pictures: [picture] });
    const { message } = await server.slash(mika, guild, ["stock"]);
    const [file] = message.files;
    expect(file?.name).toBe("macros.png");
    expect([...(file?.bytes.subarray(0, 4) ?? [])]).toEqual([0x89, 0x50, 0x4e, 0x47]);
    const [gallery] = flatten(message.components).filter((c) => c["type"] === 12);
    const [item] = list(gallery?.["items"]);
    expect(obj(item)["description"]).toBe(picture.alt);
    expect(obj(obj(item)["media"])["url"]).toBe("attachment://macros.png");
  });

  it("arrives in words when it cannot be drawn", async () => {
    const { server, mika, guild, bot } = rig;
    const broken = { ...picture, svg: "<svg" };
    bot.answer = () => reply("Taco bowl: 1 bowl", { pictures: [broken] });
    const answered = await server.slash(mika, guild, ["stock"]);
    expect(answered.files).toEqual([]);
    expect(answered.text).toContain("protein 40 g (27 %)");
  });
});
