import { describe, expect, it } from "vitest";
import { startDiscord } from "../../../src/discord/start.ts";
import { startDiscordServer } from "../../discord-server/server.ts";
import { partsFor, ScriptedBot, startRig } from "./rig.ts";

// A file of its own, to run beside the others: the client waits 5 s before it identifies again.
describe.concurrent("a session that became invalid", () => {
  it("is replaced by a new one", async () => {
    const { server, mika, guild, close } = await startRig();
    server.gateway.invalidate(false);
    await server.until("the new session", () => server.gateway.identifies === 2);
    expect((await server.slash(mika, guild, ["stock"])).text).toBe("**Answer to stock**");
    await close();
  });
});

describe.concurrent("a connection that stops acknowledging heartbeats", () => {
  it("is taken for dead and resumed", async () => {
    const server = await startDiscordServer();
    server.gateway.heartbeatMs = 60;
    const started = await startDiscord(partsFor(server, new ScriptedBot()));
    if (!started.ok) throw new Error(started.problem.sentence);
    await server.until("three heartbeats", () => server.gateway.heartbeats >= 3);
    expect(server.gateway.resumes).toBe(0);
    server.gateway.answersHeartbeats = false;
    await server.until("the resumption", () => server.gateway.resumes > 0);
    server.gateway.answersHeartbeats = true;
    await started.value.stop();
    await server.close();
  });
});
