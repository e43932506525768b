import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { reply, text } from "../../../commands/kit/reply.ts";
import { gate, type Rig, startRig } from "./rig.ts";

let rig: Rig;
beforeEach(async () => {
  rig = await startRig();
});
afterEach(async () => {
  expect(rig.server.platform.refused).toEqual([]);
  await rig.close();
});

describe("a slash command", () => {
  it("is answered at once, and only the asker sees it", async () => {
    const { server, mika, guild } = rig;
    const answered = await server.slash(mika, guild, ["stock"]);
    expect(answered.text).toBe("**Answer to stock**");
    expect(answered.ephemeral).toBe(true);
    expect(answered.first.type).toBe(4);
    expect(answered.first.afterMs).toBeLessThan(1_000);
    expect(server.messagesIn(guild.channels[0]?.id ?? "")).toEqual([]);
  });

  it("is shown to the channel when the reply is to be shown", async () => {
    const { server, mika, guild, bot } = rig;
    bot.answer = () => reply("For all", { audience: "shown" });
    const answered = await server.slash(mika, guild, ["stock"]);
    expect(answered.ephemeral).toBe(false);
    expect(server.messagesIn(guild.channels[0]?.id ?? "")).toHaveLength(1);
  });

  it("tells the bot who asks, by their name in the server, with roles and the manage permission", async () => {
    const { server, mika, ruben, guild, bot } = rig;
    const first = await server.slash(mika, guild, ["stock"]);
    await server.slash(ruben, guild, ["stock"]);
    expect(bot.asked.map((call) => call.asked)).toEqual([
      {
        groupId: guild.id,
        groupName: "Sunday Prep",
        requestId: first.interactionId,
        actor: { userId: mika.id, name: "Mika of the Pots", roleIds: [], isManager: false },
      },
      expect.objectContaining({
        actor: { userId: ruben.id, name: "ruben", roleIds: [guild.roles[0]?.id], isManager: true },
      }),
    ]);
  });

  it("hands over options by name: text as typed, ids of roles and channels, yes and no", async () => {
    const { server, ruben, guild, bot } = rig;
    const coach = guild.roles[0]?.id ?? "";
    const channel = guild.channels[1]?.id ?? "";
    await server.slash(ruben, guild, ["group", "setup"], { coach, channel, quiet: false });
    await server.slash(ruben, guild, ["recipe", "card"], { recipe: " Chilli  ", units: "us" });
    expect(bot.asked.map(({ what, raw }) => [what, raw])).toEqual([
      ["group setup", { coach, channel, quiet: "no" }],
      ["recipe card", { recipe: " Chilli  ", units: "us" }],
    ]);
  });

  it("hands over an attached file with its bytes", async () => {
    const { server, ruben, guild, bot } = rig;
    const bytes = new TextEncoder().encode("Bean chilli\nMakes 6 portions\n");
    await server.slash(ruben, guild, ["recipe", "publish"], {
      file: { name: "chilli.txt", bytes },
    });
    expect(bot.asked[0]?.raw["file"]).toEqual({ name: "chilli.txt", bytes });
  });

  it("refuses an attached file above 64 KiB without asking the bot", async () => {
    const { server, ruben, guild, bot } = rig;
    const bytes = new Uint8Array(64 * 1_024 + 1);
    const answered = await server.slash(ruben, guild, ["recipe", "publish"], {
      file: { name: "big.txt", bytes },
    });
    expect(answered.text).toContain("larger than 64 KB");
    expect(answered.ephemeral).toBe(true);
    expect(bot.asked).toEqual([]);
  });

  it("is acknowledged while a slow bot works, and the answer stays private", async () => {
    const { server, mika, guild, bot } = rig;
    const slow = gate();
    bot.answer = () => slow.promise.then(() => reply("Done at last"));
    const asking = server.driver.beginSlash(mika, guild, ["stock"]);
    const first = await asking.first;
    expect(first).toMatchObject({ type: 5, ephemeral: true });
    expect(first.afterMs).toBeLessThan(1_500);
    slow.open();
    const answered = await asking.done;
    expect(answered.text).toBe("**Done at last**");
    expect(answered.ephemeral).toBe(true);
  });

  it("shows a slow answer to the channel when the reply is to be shown", async () => {
    const { server, mika, guild, bot } = rig;
    const slow = gate();
    bot.answer = () => slow.promise.then(() => reply("For all", { audience: "shown" }));
    const asking = server.driver.beginSlash(mika, guild, ["stock"]);
    await asking.first;
    slow.open();
    const shown = await server.until("the shown message", () =>
      server.messagesIn(guild.channels[0]?.id ?? "").at(0),
    );
    expect(shown.onlyFor).toBeNull();
    expect(JSON.stringify(shown.components)).toContain("For all");
  });

  it("delivered twice is carried out once", async () => {
    const { server, mika, guild, bot } = rig;
    await server.driver.beginSlash(mika, guild, ["stock"], {}, { deliveries: 2 }).done;
    await server.slash(mika, guild, ["stock"]);
    expect(bot.asked).toHaveLength(2);
  });

  it("that comes too late to be answered is not carried out", async () => {
    const { server, mika, guild, bot, log } = rig;
    server.driver.beginSlash(mika, guild, ["stock"], {}, { ageMs: 4_000 });
    await server.until("the refused acknowledgement", () =>
      server.requests("POST", /\/callback$/u).find((r) => r.status === 404),
    );
    await server.slash(mika, guild, ["stock"]);
    expect(bot.asked).toHaveLength(1);
    expect(log.map((line) => line.message)).toContain(
      "an old interaction could not be answered any more: not carried out",
    );
  });

  it("that comes late but in time is acknowledged before it is carried out", async () => {
    const { server, mika, guild } = rig;
    const asking = server.driver.beginSlash(mika, guild, ["stock"], {}, { ageMs: 2_000 });
    expect((await asking.first).type).toBe(5);
    expect((await asking.done).text).toBe("**Answer to stock**");
  });
});

describe("when something breaks", () => {
  it("an error that escapes from the bot is logged and answered with one apology", async () => {
    const { server, mika, guild, bot, log } = rig;
    bot.answer = () => {
      throw new Error("secret detail");
    };
    const answered = await server.slash(mika, guild, ["stock"]);
    expect(answered.text).toContain("Something went wrong on our side");
    expect(answered.text).not.toContain("secret detail");
    expect(answered.ephemeral).toBe(true);
    expect(answered.followUps).toEqual([]);
    expect(log.filter((line) => line.level === "error")).toHaveLength(1);
  });

  it("a server error before the answer was stored is repeated", async () => {
    const { server, mika, guild } = rig;
    server.fault({ kind: "500", method: "POST", path: /\/callback$/u });
    expect((await server.slash(mika, guild, ["stock"])).text).toBe("**Answer to stock**");
  });

  it.each(["500 after storing", "reset after storing"] as const)(
    "%s leaves one answer and no second carrying out",
    async (kind) => {
      const { server, mika, guild, bot } = rig;
      server.fault({ kind, method: "POST", path: /\/callback$/u });
      const answered = await server.slash(mika, guild, ["stock"]);
      await server.until("the repair", () => server.requests("PATCH", /original$/u).at(0));
      expect(answered.text).toBe("**Answer to stock**");
      expect(bot.asked).toHaveLength(1);
      expect(server.platform.world.messages.size).toBe(1);
    },
  );

  it("no secret reaches the log: neither token nor interaction tokens", async () => {
    const { server, mika, guild, log } = rig;
    server.fault({
      kind: "refuse",
      status: 400,
      code: 50035,
      method: "POST",
      path: /\/callback$/u,
    });
    await server.slash(mika, guild, ["stock"]);
    const written = JSON.stringify(log);
    expect(log.some((line) => line.level === "error")).toBe(true);
    expect(written).not.toContain(server.platform.token);
    expect(written).not.toContain("token-of-interaction");
  });
});

describe("completion", () => {
  it("offers the bot's suggestions", async () => {
    const { server, mika, guild, bot } = rig;
    bot.suggestions = (typed) => [{ label: `${typed}lli con beans`, value: "r1" }];
    const choices = await server.autocomplete(mika, guild, ["recipe", "card"], "recipe", "chi");
    expect(choices).toEqual([{ name: "chilli con beans", value: "r1" }]);
  });

  it("never offers more than the platform takes, nor a value it would refuse", async () => {
    const { server, mika, guild, bot } = rig;
    bot.suggestions = () => [
      { label: "x".repeat(300), value: "long label" },
      { label: "value too long", value: "v".repeat(101) },
      { label: "", value: " " },
      ...Array.from({ length: 40 }, (_, n) => ({ label: `r${n}`, value: `r${n}` })),
    ];
    const choices = await server.autocomplete(mika, guild, ["recipe", "card"], "recipe", "");
    expect(choices).toHaveLength(25);
    expect(choices[0]?.name).toHaveLength(100);
    expect(choices.map((choice) => choice.value)).not.toContain("v".repeat(101));
  });

  it("offers nothing when the bot fails", async () => {
    const { server, mika, guild, bot } = rig;
    bot.suggestions = () => Promise.reject(new Error("no"));
    expect(await server.autocomplete(mika, guild, ["recipe", "card"], "recipe", "c")).toEqual([]);
  });
});

describe("hostile text", () => {
  it("in a reply neither formats, links nor mentions", async () => {
    const { server, mika, guild, bot } = rig;
    const evil = "**@everyone** <@&123> <#5> [here](https://evil.example) `x` ||s|| ~~s~~";
    bot.answer = () =>
      reply(evil, { audience: "shown", parts: [text(evil, `# ${evil}`)], cautions: [evil] });
    const answered = await server.slash(mika, guild, ["stock"]);
    const bare = answered.text.replace(/\\[^0-9A-Za-z\s]/gu, "");
    expect(bare).not.toMatch(/@everyone|<[@#]|\[|:\/\/|`|\|\||~~|^#/mu);
    expect(answered.message.pinged).toEqual([]);
  });

  it("longer than a message moves to a file, with a line that says so", async () => {
    const { server, mika, guild, bot } = rig;
    const lines = Array.from({ length: 400 }, (_, n) => `Step ${n}: stir, taste, @here, wait`);
    bot.answer = () =>
      reply("Long card", { parts: [text(...lines)], cautions: ["Reheat to 74 °C."] });
    const answered = await server.slash(mika, guild, ["stock"]);
    expect(answered.text).toContain("The whole answer is in the attached file.");
    expect(answered.text).toContain("-# Reheat to 74 °C.");
    expect(answered.files).toHaveLength(1);
    expect(answered.files[0]?.name).toBe("whole-answer.txt");
    expect(answered.files[0]?.text).toContain("Step 399: stir, taste, @here, wait");
  });
});
