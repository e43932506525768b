import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Form } from "../../../commands/kit/form.ts";
import { reply } from "../../../commands/kit/reply.ts";
import { type Rig, startRig } from "./rig.ts";

let rig: Rig;
beforeEach(async () => {
  rig = await startRig();
});
afterEach(async () => {
  await rig.close();
});

const FORM: Form = {
  id: "recipe publish.send~draft1",
  title: "Your recipe",
  fields: [
    {
      name: "text",
      label: "Text",
      hint: "as you wrote it",
      value: "",
      required: true,
      isLong: true,
    },
    { name: "more", label: "More", value: "kept", required: false, isLong: false },
  ],
};

const file = { name: "a.txt", bytes: new Uint8Array([65]) };

describe("a form", () => {
  it("is opened by a command, filled in, and answered privately", async () => {
    const { server, guild, ruben, bot } = rig;
    bot.scriptedForm = FORM;
    const asking = server.driver.beginSlash(ruben, guild, ["recipe", "publish"], { file });
    const form = await server.driver.formOf(asking);
    expect((await asking.first).type).toBe(9);
    expect(form).toMatchObject({ title: "Your recipe", values: { text: "", more: "kept" } });
    const text = "Bean pot\n\nMakes 2 portions";
    const sent = await server.driver.submit(ruben, guild, form, { text }).done;
    expect(bot.filled).toEqual([{ text, more: "kept" }]);
    expect(sent.ephemeral).toBe(true);
    expect(sent.text).toBe("**Answer to recipe publish.send~draft1**");
    expect(server.platform.refused).toEqual([]);
  });

  it("opened by a button takes the place of the message it came from", async () => {
    const { server, guild, ruben, bot } = rig;
    bot.answer = () =>
      reply("Draft", {
        buttons: [{ id: "recipe publish.edit~1", label: "Edit", weight: "plain" }],
      });
    const draft = await server.slash(ruben, guild, ["stock"]);
    bot.scriptedForm = FORM;
    const form = await server.driver.formOf(server.driver.beginPress(ruben, draft.message, "Edit"));
    bot.answer = () => reply("Read anew");
    const sent = await server.driver.submit(ruben, guild, form, { text: "x" }).done;
    expect(sent.message.id).toBe(draft.message.id);
    expect(sent.text).toBe("**Read anew**");
    expect(server.platform.refused).toEqual([]);
  });

  it("keeps within the platform's limits whatever it is asked to show", async () => {
    const { server, guild, ruben, bot } = rig;
    const long = "ü".repeat(9000);
    const field = { label: long, hint: long, value: long, required: true, isLong: true };
    const fields = ["a", "b", "c", "d", "e", "f"].map((name) => ({ ...field, name }));
    bot.scriptedForm = { ...FORM, title: `${long}\n`, fields };
    const asking = server.driver.beginSlash(ruben, guild, ["recipe", "publish"], { file });
    expect((await asking.first).type).toBe(9);
    expect(server.platform.refused).toEqual([]);
  });
});
