import { once } from "node:events";
import { createServer } from "node:http";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { type Calls, createCalls } from "../../../src/discord/calls.ts";
import { startRig } from "./rig.ts";

const TO = { id: "1", applicationId: "2", token: "t" };

/** Answers whatever is asked without content, under each of these types; none for the empty one. */
const TYPES = ["", "application/json", "text/html; charset=utf-8"];

describe("an answer that the platform took", () => {
  let asked: string[];
  let server: ReturnType<typeof createServer>;
  let calls: Calls & { stop(): void };
  beforeEach(async () => {
    asked = [];
    server = createServer((request, response) => {
      const type = TYPES[asked.length % TYPES.length] ?? "";
      asked.push(`${request.method} ${request.url}`);
      request.resume().on("end", () => {
        response.writeHead(204, type === "" ? {} : { "content-type": type });
        response.end();
      });
    }).listen(0, "127.0.0.1");
    await once(server, "listening");
    const bound = server.address();
    if (bound === null || typeof bound === "string") throw new Error("no port");
    calls = createCalls(`http://127.0.0.1:${bound.port}`);
  });
  afterEach(async () => {
    calls.stop();
    server.closeAllConnections();
    server.close();
    await once(server, "close");
  });

  it("is taken for that, however its acknowledgement is written", async () => {
    for (const _ of TYPES) await calls.say(TO, reply("Thaw two"), true);
    for (const _ of TYPES) await calls.edit(TO, reply("Thaw three"));
    expect(asked).toHaveLength(2 * TYPES.length);
  });
});

describe("a command on the platform", () => {
  it("is answered by one request", async () => {
    const rig = await startRig();
    await rig.server.slash(rig.mika, rig.guild, ["stock"]);
    await rig.handle.stop();
    expect(rig.server.requests("POST", /\/callback$/u)).toHaveLength(1);
    expect(rig.server.requests("PATCH", /./u)).toEqual([]);
    await rig.close();
  });
});
