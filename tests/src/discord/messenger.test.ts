import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { textOf } from "../../discord-server/view.ts";
import { outgoing } from "./reminders.ts";
import { type Rig, startRig } from "./rig.ts";

const POST = /^\/channels\/\d+\/messages$/u;

let rig: Rig;
let channelId: string;
beforeEach(async () => {
  rig = await startRig();
  channelId = rig.guild.channels[1]?.id ?? "";
});
afterEach(async () => {
  expect(rig.server.platform.refused).toEqual([]);
  await rig.close();
});

describe("a reminder", () => {
  it("comes as a direct message that pings nobody, under its nonce", async () => {
    const { server, handle, mika } = rig;
    const result = await handle.messenger.send(outgoing(rig));
    const [message] = server.directMessages(mika);
    expect(result).toEqual({
      kind: "sent",
      messageId: message?.id,
      where: "direct message",
      directClosed: false,
    });
    expect(message && textOf(message)).toBe("**Move 2 portions of chilli to the fridge tonight**");
    expect(server.requests("POST", POST)[0]?.body).toMatchObject({
      nonce: "r-2026-11-25-abc",
      enforce_nonce: true,
      allowed_mentions: { parse: [], users: [] },
    });
  });

  it("opens the direct channel once for many reminders", async () => {
    const { server, handle, mika } = rig;
    await handle.messenger.send(outgoing(rig, { nonce: "r1" }));
    await handle.messenger.send(outgoing(rig, { nonce: "r2" }));
    expect(server.directMessages(mika)).toHaveLength(2);
    expect(server.requests("POST", /^\/users\/@me\/channels$/u)).toHaveLength(1);
  });

  it("goes straight to the channel when the member chose it, with a ping for them alone", async () => {
    const { server, handle, mika } = rig;
    const result = await handle.messenger.send(outgoing(rig, { deliverTo: "channel" }));
    expect(result).toMatchObject({ kind: "sent", where: "channel", directClosed: false });
    expect(server.directMessages(mika)).toEqual([]);
    expect(server.messagesIn(channelId).map((m) => m.pinged)).toEqual([[mika.id]]);
  });
});

describe("closed direct messages", () => {
  it.each([50007, 50278])(
    "(%i) send the reminder to the group's channel, pinging only its member",
    async (code) => {
      const { server, handle, mika } = rig;
      server.fault({ kind: "refuse", status: 403, code, method: "POST", path: POST });
      const result = await handle.messenger.send(outgoing(rig));
      expect(result).toMatchObject({ kind: "sent", where: "channel", directClosed: true });
      const [message] = server.messagesIn(channelId);
      expect(message?.pinged).toEqual([mika.id]);
      const shown = message === undefined ? "" : textOf(message);
      expect(shown).toContain(`<@${mika.id}> **Move 2 portions`);
      expect(shown).toContain("-# Your direct messages are closed to this bot");
    },
  );

  it("with no reminder channel leave no way, and say why", async () => {
    const { server, handle, mika } = rig;
    server.platform.closedDirect.add(mika.id);
    expect(await handle.messenger.send(outgoing(rig, { channelId: null }))).toEqual({
      kind: "impossible",
      reason: "direct message: closed (50007)",
      directClosed: true,
    });
  });

  it.each([50001, 50013, 10003])("with a channel that refuses (%i) leave no way", async (code) => {
    const { server, handle, mika } = rig;
    server.platform.closedDirect.add(mika.id);
    server.platform.barredChannels.set(channelId, code);
    const result = await handle.messenger.send(outgoing(rig));
    expect(result).toMatchObject({ kind: "impossible", directClosed: true });
  });

  it("do not matter while the channel takes the message", async () => {
    const { server, handle, mika } = rig;
    server.platform.closedDirect.add(mika.id);
    const result = await handle.messenger.send(outgoing(rig, { deliverTo: "channel" }));
    expect(result).toMatchObject({ kind: "sent", where: "channel", directClosed: false });
  });
});

describe("a member's channel that refuses", () => {
  it("is replaced by a direct message, for the reminder is about safety", async () => {
    const { server, handle } = rig;
    server.platform.barredChannels.set(channelId, 50013);
    const result = await handle.messenger.send(outgoing(rig, { deliverTo: "channel" }));
    expect(result).toMatchObject({ kind: "sent", where: "direct message" });
  });
});

describe("told to wait", () => {
  it("a long wait goes back to the caller with its length", async () => {
    const { server, handle, mika } = rig;
    server.fault({ kind: "429", retryAfterS: 30, method: "POST", path: POST });
    const result = await handle.messenger.send(outgoing(rig));
    expect(result).toMatchObject({ kind: "unknown", reason: "told to wait" });
    const waitMs = result.kind === "unknown" ? result.retryAfterMs : null;
    expect(waitMs).toBeGreaterThanOrEqual(29_000);
    expect(waitMs).toBeLessThan(32_000);
    expect(server.directMessages(mika)).toEqual([]);
  });

  it("a short wait is sat out, and the message comes once", async () => {
    const { server, handle, mika } = rig;
    server.fault({ kind: "429", retryAfterS: 0.05, method: "POST", path: POST });
    expect(await handle.messenger.send(outgoing(rig))).toMatchObject({ kind: "sent" });
    expect(server.directMessages(mika)).toHaveLength(1);
  });

  it("a burst of reminders does not delay the answer to a command", async () => {
    const { server, handle, mika, guild } = rig;
    const burst = Array.from({ length: 32 }, (_, n) =>
      handle.messenger.send(outgoing(rig, { nonce: `burst-${n}` })),
    );
    const answered = await server.slash(mika, guild, ["stock"]);
    expect(answered.first.afterMs).toBeLessThan(1_000);
    expect(server.directMessages(mika).length).toBeLessThan(32);
    await Promise.all(burst);
    expect(server.directMessages(mika)).toHaveLength(32);
  });
});

describe("a refused token", () => {
  it("ends the process: the handle says that it is closed", async () => {
    const { server, handle } = rig;
    server.fault({ kind: "refuse", status: 401, code: 0, method: "POST", path: POST });
    expect(await handle.messenger.send(outgoing(rig))).toMatchObject({ kind: "unknown" });
    expect(await handle.closed).toContain("no longer takes the token");
  });
});
