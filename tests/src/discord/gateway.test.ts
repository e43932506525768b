import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { startDiscord } from "../../../src/discord/start.ts";
import { startDiscordServer } from "../../discord-server/server.ts";
import { COMMANDS, partsFor, type Rig, ScriptedBot, startRig } from "./rig.ts";

const PUT_COMMANDS = /\/commands$/u;

describe("the start", () => {
  it("with a wrong token ends in a sentence that says what to do", async () => {
    const server = await startDiscordServer();
    const parts = { ...partsFor(server, new ScriptedBot()), token: "wrong.token.altogether" };
    const started = await startDiscord(parts);
    expect(started).toMatchObject({ ok: false, problem: { code: "token refused" } });
    await server.close();
  });

  it("with the id of another application ends in a sentence", async () => {
    const server = await startDiscordServer();
    const parts = { ...partsFor(server, new ScriptedBot()), applicationId: "1000000000000000009" };
    const started = await startDiscord(parts);
    expect(started).toMatchObject({ ok: false, problem: { code: "another application" } });
    await server.close();
  });

  it.each([4004, 4014])("does not hang when the gateway closes for good (%i)", async (code) => {
    const server = await startDiscordServer();
    server.gateway.closeOnIdentify = code;
    const started = await startDiscord(partsFor(server, new ScriptedBot()));
    expect(started).toMatchObject({ ok: false, problem: { code: "gateway refused" } });
    await server.close();
  });

  it("without a network ends in a sentence", async () => {
    const server = await startDiscordServer();
    const parts = partsFor(server, new ScriptedBot());
    await server.close();
    const started = await startDiscord(parts);
    expect(started).toMatchObject({ ok: false, problem: { code: "unreachable" } });
  });

  it("registers the commands once, and again only when they changed", async () => {
    const server = await startDiscordServer();
    server.guild("Sunday Prep");
    const parts = partsFor(server, new ScriptedBot());
    const run = async (commands = COMMANDS) => {
      const started = await startDiscord({ ...parts, commands });
      if (started.ok) await started.value.stop();
      return server.requests("PUT", PUT_COMMANDS).length;
    };
    expect([
      await run(),
      await run(),
      await run(COMMANDS.slice(1)),
      await run(COMMANDS.slice(1)),
    ]).toEqual([1, 1, 2, 2]);
    expect(server.platform.refused).toEqual([]);
    await server.close();
  });

  it("goes on when the commands cannot be registered for a while, and registers at the next start", async () => {
    const server = await startDiscordServer();
    const parts = partsFor(server, new ScriptedBot());
    server.fault({ kind: "500", method: "PUT", path: PUT_COMMANDS, times: 4 });
    for (const expected of [4, 5]) {
      const started = await startDiscord(parts);
      if (!started.ok) throw new Error(started.problem.sentence);
      expect(server.requests("PUT", PUT_COMMANDS)).toHaveLength(expected);
      await started.value.stop();
    }
    await server.close();
  });

  it("for one server registers there and turns others away", async () => {
    const server = await startDiscordServer();
    const trial = server.guild("Trial");
    const other = server.guild("Other");
    const visitor = server.join(other, "visitor");
    const bot = new ScriptedBot();
    const started = await startDiscord({ ...partsFor(server, bot), onlyServer: trial.id });
    if (!started.ok) throw new Error(started.problem.sentence);
    expect([...server.platform.commands.keys()]).toEqual([trial.id]);
    server.platform.commands.set(other.id, server.platform.commands.get(trial.id) ?? []);
    expect((await server.slash(visitor, other, ["stock"])).text).toContain("serves another server");
    expect(bot.asked).toEqual([]);
    await started.value.stop();
    await server.close();
  });
});

describe("the registered commands", () => {
  it("are subcommands for two words, required options first, for servers only", async () => {
    const rig = await startRig();
    const registered = rig.server.platform.commands.get("global") ?? [];
    expect(registered.map((command) => command["name"])).toEqual(["stock", "recipe", "group"]);
    const recipe = registered[1];
    expect(recipe).toMatchObject({ contexts: [0], integration_types: [0] });
    expect(recipe?.["options"]).toMatchObject([
      {
        type: 1,
        name: "card",
        options: [
          { name: "recipe", type: 3, required: true, autocomplete: true },
          {
            name: "units",
            type: 3,
            choices: [{ name: "metric", value: "metric" }, { name: "us" }],
          },
        ],
      },
      { type: 1, name: "publish", options: [{ name: "file", type: 11, required: true }] },
    ]);
    expect(registered[2]).not.toHaveProperty("default_member_permissions");
    await rig.close();
  });
});

describe("a live connection", () => {
  let rig: Rig;
  beforeEach(async () => {
    rig = await startRig();
  });
  afterEach(async () => {
    await rig.close();
  });

  it("that drops is resumed, and a command sent meanwhile is answered", async () => {
    const { server, mika, guild } = rig;
    server.gateway.cutAll();
    await server.until("the drop", () => server.gateway.connected === 0);
    const asking = server.driver.beginSlash(mika, guild, ["stock"]);
    const answered = await asking.done;
    expect(answered.text).toBe("**Answer to stock**");
    expect(answered.first.afterMs).toBeLessThan(3_000);
    expect([server.gateway.identifies, server.gateway.resumes]).toEqual([1, 1]);
  });

  it("that resumes too late carries nothing out behind the asker's back", async () => {
    const { server, mika, guild, bot } = rig;
    server.gateway.cutAll();
    await server.until("the drop", () => server.gateway.connected === 0);
    server.driver.beginSlash(mika, guild, ["stock"], {}, { ageMs: 60_000 });
    await server.until("the refused acknowledgement", () =>
      server.requests("POST", /\/callback$/u).find((r) => r.status === 404),
    );
    await server.slash(mika, guild, ["recipe", "card"], { recipe: "chilli" });
    expect(bot.asked.map((call) => call.what)).toEqual(["recipe card"]);
  });

  it("that is told to reconnect resumes", async () => {
    const { server, mika, guild } = rig;
    server.gateway.askToReconnect();
    await server.until("the resumption", () => server.gateway.resumes === 1);
    expect((await server.slash(mika, guild, ["stock"])).text).toBe("**Answer to stock**");
  });

  it.each([4004, 4014])(
    "that closes for good (%i) is reported, so that the process can end",
    async (code) => {
      rig.server.gateway.closeAll(code);
      expect(await rig.handle.closed).toContain(String(code));
    },
  );

  it("finishes the answers under way before it stops", async () => {
    const { server, mika, guild, bot, handle } = rig;
    let finish: () => void = () => undefined;
    bot.answer = () =>
      new Promise((resolve) => {
        finish = () => resolve(reply("Finished"));
      });
    const asking = server.driver.beginSlash(mika, guild, ["stock"]);
    await asking.first;
    const stopping = handle.stop();
    finish();
    await stopping;
    expect((await asking.done).text).toBe("**Finished**");
  });
});
