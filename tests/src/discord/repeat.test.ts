import { SnowflakeUtil } from "discord.js";
import { Temporal } from "temporal-polyfill";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { reply, text } from "../../../commands/kit/reply.ts";
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

describe("when nobody knows whether it arrived", () => {
  it.each(["500 after storing", "reset after storing"] as const)(
    "%s is reported as unknown, and the repeat under the same nonce makes no double",
    async (kind) => {
      const { server, handle, mika } = rig;
      server.fault({ kind, method: "POST", path: POST });
      expect(await handle.messenger.send(outgoing(rig))).toMatchObject({ kind: "unknown" });
      expect(server.requests("POST", POST)).toHaveLength(1);
      const again = await handle.messenger.send(outgoing(rig, { attempt: 2 }));
      const [message] = server.directMessages(mika);
      expect(again).toMatchObject({ kind: "sent", messageId: message?.id });
      expect(server.directMessages(mika)).toHaveLength(1);
    },
  );

  it("a repeat long after the nonce was forgotten finds the message by its marker", async () => {
    const { server, handle, mika } = rig;
    server.fault({ kind: "500 after storing", method: "POST", path: POST });
    await handle.messenger.send(outgoing(rig));
    server.platform.nonces.clear();
    const again = await handle.messenger.send(outgoing(rig, { attempt: 2 }));
    expect(again).toMatchObject({ kind: "sent", where: "direct message" });
    expect(server.directMessages(mika)).toHaveLength(1);
    expect(server.requests("POST", POST)).toHaveLength(1);
  });

  it("a repeat finds an earlier try in the channel although direct messages are open again", async () => {
    const { server, handle, mika } = rig;
    server.fault({ kind: "refuse", status: 403, code: 50007, method: "POST", path: POST });
    server.fault({ kind: "reset after storing", method: "POST", path: POST });
    expect(await handle.messenger.send(outgoing(rig))).toMatchObject({ kind: "unknown" });
    server.platform.nonces.clear();
    const again = await handle.messenger.send(outgoing(rig, { attempt: 2 }));
    expect(again).toMatchObject({ kind: "sent", where: "channel" });
    expect(server.directMessages(mika)).toEqual([]);
    expect(server.messagesIn(channelId)).toHaveLength(1);
  });

  it("a repeat finds an earlier try behind many later messages, and looks no further back than need be", async () => {
    const { server, handle } = rig;
    const toChannel = { deliverTo: "channel" } as const;
    server.fault({ kind: "500 after storing", method: "POST", path: POST });
    await handle.messenger.send(outgoing(rig, toChannel));
    const [first] = server.messagesIn(channelId);
    if (first === undefined) throw new Error("it was stored");
    for (let n = 0; n < 250; n += 1) {
      const id = server.platform.world.nextId();
      server.platform.world.store({ ...first, id, components: [], nonce: null });
    }
    server.platform.nonces.clear();
    const again = await handle.messenger.send(outgoing(rig, { ...toChannel, attempt: 2 }));
    expect(again).toMatchObject({ kind: "sent", messageId: first.id });
    expect(server.requests("GET", POST)).toHaveLength(3);
    const since = Temporal.Now.instant().add({ minutes: 1 });
    const other = outgoing(rig, { ...toChannel, attempt: 2, nonce: "other", since });
    expect(await handle.messenger.send(other)).toMatchObject({ kind: "sent" });
    // Nothing so old can be this one: one page in the channel, one of the direct messages.
    expect(server.requests("GET", POST)).toHaveLength(5);
  });

  it.each([
    { how: "the platform knows the nonce", attempt: 1, isForgotten: false },
    { how: "it is found by its mark", attempt: 2, isForgotten: true },
  ])("a repeat says when what arrived was worded: $how", async ({ attempt, isForgotten }) => {
    const { server, handle, mika } = rig;
    const wordedAt = Temporal.Instant.from("2026-10-23T12:00:03Z");
    const two = reply("Throw it away", { parts: [text("The stew too.")] });
    const first = await handle.messenger.send(outgoing(rig, { wordedAt, reply: two }));
    if (isForgotten) server.platform.nonces.clear();
    const one = reply("You missed a reminder");
    const later = { wordedAt: wordedAt.add({ minutes: 16 }), reply: one, attempt };
    const again = await handle.messenger.send(outgoing(rig, later));
    expect(first).not.toHaveProperty("wordedAt");
    expect(again).toMatchObject({ kind: "sent", wordedAt });
    expect(server.directMessages(mika)).toHaveLength(1);
  });

  it("of a message of one line, which has no room for the time, the repeat says when it was stored", async () => {
    const { server, handle, mika } = rig;
    await handle.messenger.send(outgoing(rig));
    const [message] = server.directMessages(mika);
    const again = await handle.messenger.send(outgoing(rig, { attempt: 2 }));
    const wordedAt = again.kind === "sent" ? again.wordedAt : undefined;
    expect(wordedAt?.epochMilliseconds).toBe(SnowflakeUtil.timestampFrom(message?.id ?? "0"));
  });

  it("begins no request once its claim is over, also not one that waited for the rate limit", async () => {
    const { server, handle, mika } = rig;
    server.fault({ kind: "429", retryAfterS: 0.05, method: "POST", path: POST });
    const toldToWait = (): boolean => server.requests("POST", POST).length > 0;
    const isOurs = (): boolean => !toldToWait();
    const reason = "no answer in time, and the claim was over";
    const result = await handle.messenger.send(outgoing(rig, { isOurs }));
    expect(result).toEqual({ kind: "unknown", reason, retryAfterMs: null });
    expect(server.requests("POST", POST)).toHaveLength(1);
    expect(server.directMessages(mika)).toEqual([]);
    expect(await handle.messenger.send(outgoing(rig))).toMatchObject({ kind: "sent" });
  });

  it("another reminder in the same channel is not taken for this one", async () => {
    const { server, handle, mika } = rig;
    await handle.messenger.send(outgoing(rig, { nonce: "r1" }));
    await handle.messenger.send(outgoing(rig, { nonce: "r2", attempt: 2 }));
    expect(server.directMessages(mika)).toHaveLength(2);
  });

  it("a refusal without the platform's code is somebody else's, and is tried again", async () => {
    const { server, handle, mika } = rig;
    const page = { status: 403, body: { message: "Forbidden" } };
    server.fault({ kind: "act", isDone: false, says: page, method: "POST", path: POST });
    const reason = "refused (403) without a reason";
    const result = await handle.messenger.send(outgoing(rig));
    expect(result).toEqual({ kind: "unknown", reason, retryAfterMs: null });
    expect(server.directMessages(mika)).toEqual([]);
  });

  it("what is only looked for is found where it arrived, and not sent where it did not", async () => {
    const { server, handle, mika } = rig;
    const look = { attempt: 9, onlyLooks: true };
    const missed = await handle.messenger.send(outgoing(rig, look));
    expect(missed).toEqual({ kind: "impossible", reason: "no try arrived", directClosed: false });
    expect(server.directMessages(mika)).toEqual([]);
    server.fault({ kind: "reset after storing", method: "POST", path: POST });
    await handle.messenger.send(outgoing(rig, { attempt: 8 }));
    server.platform.nonces.clear();
    expect(await handle.messenger.send(outgoing(rig, look))).toMatchObject({ kind: "sent" });
    expect(server.directMessages(mika)).toHaveLength(1);
  });

  it("nothing is sent while the earlier try cannot be looked for", async () => {
    const { server, handle, mika } = rig;
    server.fault({ kind: "500", method: "GET", path: POST });
    const result = await handle.messenger.send(outgoing(rig, { attempt: 2 }));
    expect(result).toEqual({ kind: "unknown", reason: "server error 500", retryAfterMs: null });
    expect(server.directMessages(mika)).toEqual([]);
  });
});
