import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { outgoing } from "./reminders.ts";
import { gate, type Rig, startRig } from "./rig.ts";

let rig: Rig;
beforeEach(async () => {
  rig = await startRig();
});
afterEach(async () => {
  expect(rig.server.platform.refused).toEqual([]);
  await rig.close();
});

const ATE = { id: "stock.ate~lot1", label: "Ate 1", weight: "main" } as const;
const UNDO = { id: "stock.undo~change1", label: "Undo", weight: "plain" } as const;

/** Answers /stock with the buttons given, every press with a reply of that audience. */
function script(audience: "private" | "shown", shownFirst = audience): void {
  rig.bot.answer = (what) =>
    what === "stock"
      ? reply("2 portions of chilli", { buttons: [ATE], audience: shownFirst })
      : reply("1 portion left", { buttons: [UNDO], audience });
}

describe("a press on a private reply", () => {
  it("turns the message into the new reply, without the old buttons", async () => {
    const { server, mika, guild, bot } = rig;
    script("private");
    const stock = await server.slash(mika, guild, ["stock"]);
    const pressed = await server.press(mika, stock.message, "Ate 1");
    expect(pressed.first.type).toBe(7);
    expect(pressed.message.id).toBe(stock.message.id);
    expect(pressed.ephemeral).toBe(true);
    expect(pressed.text).toBe("**1 portion left**");
    expect(pressed.buttons.map((button) => button.label)).toEqual(["Undo"]);
    expect(bot.asked.at(-1)).toMatchObject({ what: "stock.ate~lot1", picked: [] });
  });

  it("shows to the channel what is to be shown, as a message of its own", async () => {
    const { server, mika, guild } = rig;
    script("shown", "private");
    const stock = await server.slash(mika, guild, ["stock"]);
    const pressed = await server.press(mika, stock.message, "Ate 1");
    expect(pressed.first.type).toBe(4);
    expect(pressed.ephemeral).toBe(false);
    expect(pressed.message.id).not.toBe(stock.message.id);
  });

  it("is acknowledged in time when the bot is slow, then the message is updated", async () => {
    const { server, mika, guild, bot } = rig;
    script("private");
    const stock = await server.slash(mika, guild, ["stock"]);
    const slow = gate();
    bot.answer = () => slow.promise.then(() => reply("Slowly done"));
    const asking = server.driver.beginPress(mika, stock.message, "Ate 1");
    expect((await asking.first).type).toBe(6);
    slow.open();
    const pressed = await asking.done;
    expect(pressed.message.id).toBe(stock.message.id);
    expect(pressed.text).toBe("**Slowly done**");
    expect(pressed.buttons).toEqual([]);
  });

  it("files of the reply before are gone from the new one", async () => {
    const { server, mika, guild, bot } = rig;
    bot.answer = (what) =>
      what === "stock"
        ? reply("With a file", { buttons: [ATE], files: [{ name: "ledger.txt", text: "1" }] })
        : reply("Without");
    const stock = await server.slash(mika, guild, ["stock"]);
    expect(stock.files).toEqual([{ name: "ledger.txt", text: "1" }]);
    expect((await server.press(mika, stock.message, "Ate 1")).files).toEqual([]);
  });
});

describe("a press on a message that the whole channel sees", () => {
  it("by somebody else is answered privately and leaves the message alone", async () => {
    const { server, mika, ruben, guild } = rig;
    script("private", "shown");
    const stock = await server.slash(mika, guild, ["stock"]);
    const pressed = await server.press(ruben, stock.message, "Ate 1");
    expect(pressed.ephemeral).toBe(true);
    expect(pressed.message.onlyFor).toBe(ruben.id);
    expect(server.platform.world.messages.get(stock.message.id)).toEqual(stock.message);
  });

  it("stays private also when the bot is slow", async () => {
    const { server, mika, ruben, guild, bot } = rig;
    script("private", "shown");
    const stock = await server.slash(mika, guild, ["stock"]);
    const slow = gate();
    bot.answer = () => slow.promise.then(() => reply("Not yours"));
    const asking = server.driver.beginPress(ruben, stock.message, "Ate 1");
    await asking.first;
    slow.open();
    const pressed = await asking.done;
    expect(pressed.ephemeral).toBe(true);
    expect(server.platform.world.messages.get(stock.message.id)).toEqual(stock.message);
  });

  it("updates the message when the reply is to be shown", async () => {
    const { server, mika, guild } = rig;
    script("shown");
    const stock = await server.slash(mika, guild, ["stock"]);
    const pressed = await server.press(mika, stock.message, "Ate 1");
    expect(pressed.message.id).toBe(stock.message.id);
    expect(pressed.buttons.map((button) => button.label)).toEqual(["Undo"]);
  });
});

describe("a press on a direct message", () => {
  it("updates the reminder, and the bot is told that no group is known", async () => {
    const { server, mika, guild, bot, handle } = rig;
    script("private");
    await handle.messenger.send(
      outgoing(rig, { reply: reply("Thaw tonight", { buttons: [ATE] }) }),
    );
    const [reminder] = server.directMessages(mika);
    if (reminder === undefined) throw new Error("no reminder came");
    const pressed = await server.press(mika, reminder, "Ate 1");
    expect(pressed.first.type).toBe(7);
    expect(pressed.buttons.map((button) => button.label)).toEqual(["Undo"]);
    expect(server.directMessages(mika)).toHaveLength(1);
    expect(bot.asked.at(-1)?.asked).toMatchObject({
      groupId: "",
      groupName: "",
      actor: { userId: mika.id, name: "mika", roleIds: [], isManager: false },
    });
    expect(bot.asked.at(-1)?.asked.groupId).not.toBe(guild.id);
  });
});

describe("a pick from a list", () => {
  it("brings the picked value to the bot", async () => {
    const { server, mika, guild, bot } = rig;
    const options = [
      { value: "fridge", label: "Fridge", hint: "until Sunday" },
      { value: "freezer", label: "Freezer" },
    ];
    const choices = [{ id: "stock.move~lot1", placeholder: "Where to?", options }];
    bot.answer = (what) => (what === "stock" ? reply("Stock", { choices }) : reply("Moved"));
    const stock = await server.slash(mika, guild, ["stock"]);
    const moved = await server.select(mika, stock.message, "stock.move~lot1", ["freezer"]);
    expect(moved.text).toBe("**Moved**");
    expect(bot.asked.at(-1)).toMatchObject({ what: "stock.move~lot1", picked: ["freezer"] });
  });
});
