import { describe, expect, it } from "vitest";
import { writePress } from "../../../commands/kit/press.ts";
import { reply } from "../../../commands/kit/reply.ts";
import type { Asked, Bot } from "../../../src/bot/face.ts";
import { watchBot } from "../../../src/ops/watch-bot.ts";

const asked: Asked = {
  groupId: "g",
  groupName: "g",
  requestId: "r",
  actor: { userId: "u", name: "n", roleIds: [], isManager: false },
};

const plain: Bot = {
  opensForm: () => true,
  form: async () => reply("form"),
  submit: async (_asked, id) => reply(`submit ${id}`),
  command: async (_asked, path) => reply(path.join(" ")),
  press: async (_asked, id, picked) => reply(`${id} ${picked.join()}`),
  complete: async () => [{ label: "a", value: "a" }],
};

describe("a watched bot", () => {
  it("answers as the bot does and tells what was used of which command, and how long that took", async () => {
    const told: [string, string, number][] = [];
    const bot = watchBot(plain, { answered: (...one) => told.push(one) });
    const press = writePress("stock", "undo", "x");
    expect((await bot.command(asked, ["recipe", "card"], {})).heading).toBe("recipe card");
    expect((await bot.press(asked, press, ["2"])).heading).toBe("stock.undo~x 2");
    expect((await bot.submit(asked, press, {})).heading).toBe(`submit ${press}`);
    await bot.form(asked, { path: ["recipe", "publish"], given: [] });
    expect(await bot.complete(asked, ["stock"], "o", "t")).toEqual([{ label: "a", value: "a" }]);
    await bot.press(asked, "what a client made up", []);
    expect(bot.opensForm({ pressId: press })).toBe(true);
    expect(told.map(([command, part]) => `${part} ${command}`)).toEqual([
      "command recipe card",
      "button stock",
      "form stock",
      "form recipe publish",
      "completion stock",
      "button ",
    ]);
    for (const [, , seconds] of told) expect(seconds).toBeGreaterThanOrEqual(0);
  });
});
