import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { unhurried } from "../../../src/discord/turns.ts";
import { gate, type Rig, ScriptedBot, startRig } from "./rig.ts";

const ASKED = {
  groupId: "g",
  groupName: "Kitchen",
  requestId: "1",
  actor: { userId: "u", name: "Mika", roleIds: [], isManager: false },
};

/** A bot whose answers come when the test opens the door, and what it has begun by then. */
function slowBot() {
  const bot = new ScriptedBot();
  const door = gate();
  bot.answer = async (what) => {
    await door.promise;
    return reply(what);
  };
  bot.suggestions = () => [{ label: "Pot", value: "Pot" }];
  return { bot, door, begun: () => bot.asked.map(({ what }) => what) };
}

describe("a bot in a rush", () => {
  it("works on so many commands at once, and on the others in the order of asking", async () => {
    const { bot, door, begun } = slowBot();
    const calm = unhurried(bot, 2);
    const answers = ["a", "b", "c", "d"].map((name) => calm.command(ASKED, [name], {}));
    await Promise.resolve();
    expect(begun()).toEqual(["a", "b"]);
    door.open();
    expect((await Promise.all(answers)).map(({ heading }) => heading)).toEqual([
      "a",
      "b",
      "c",
      "d",
    ]);
    expect(begun()).toEqual(["a", "b", "c", "d"]);
  });

  it("lets completions past, which cannot be put off", async () => {
    const { bot, door } = slowBot();
    const calm = unhurried(bot, 1);
    const answers = [calm.command(ASKED, ["a"], {}), calm.press(ASKED, "b", [])];
    expect(await calm.complete(ASKED, ["a"], "recipe", "po", {})).toEqual([
      { label: "Pot", value: "Pot" },
    ]);
    door.open();
    await Promise.all(answers);
  });

  it("gives the turn on when a command fails", async () => {
    const bot = new ScriptedBot();
    bot.answer = (what) => (what === "a" ? Promise.reject(new Error("spilt")) : reply(what));
    const calm = unhurried(bot, 1);
    const failing = calm.command(ASKED, ["a"], {});
    const next = calm.command(ASKED, ["b"], {});
    await expect(failing).rejects.toThrow("spilt");
    expect((await next).heading).toBe("b");
  });
});

describe("members of a bot in a rush", () => {
  let rig: Rig;
  beforeEach(async () => {
    rig = await startRig();
  });
  afterEach(() => rig.close());

  it("all hear in time that it thinks, and get their answers", async () => {
    const door = gate();
    rig.bot.answer = async (what) => {
      await door.promise;
      return reply(`Answer to ${what}`);
    };
    const asking = Array.from({ length: 40 }, () =>
      rig.server.driver.beginSlash(rig.mika, rig.guild, ["stock"]),
    );
    for (const one of asking) expect(await one.first).toMatchObject({ type: 5 });
    // Most of them have not even been begun.
    expect(rig.bot.asked.length).toBeLessThan(20);
    door.open();
    for (const one of asking) expect((await one.done).text).toBe("**Answer to stock**");
  });
});
