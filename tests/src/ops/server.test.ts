import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type OpsServer, startOpsServer } from "../../../src/ops/server.ts";
import { get, sendRaw } from "./get.ts";

const page = (body: string) => async () => ({ status: 200 as const, type: "text/plain", body });
const pages = {
  "/here": page("here it is"),
  "/broken": () => Promise.reject(new Error("hunter2")),
};

async function start(host: string, port = 0): Promise<OpsServer> {
  const started = await startOpsServer({ host, port, pages });
  if (!started.ok) throw new Error(started.problem);
  return started.value;
}

let server: OpsServer;
let port: number;
beforeEach(async () => {
  server = await start("127.0.0.1");
  port = server.address.port;
});
afterEach(() => server.close());

describe("the pages", () => {
  it("are served by path, whatever stands behind a question mark, and are not kept by anybody", async () => {
    const got = await get(port, "/here?at=all");
    expect(got).toMatchObject({ status: 200, body: "here it is" });
    expect(got.headers).toMatchObject({
      "content-type": "text/plain",
      "cache-control": "no-store",
    });
  });

  it("are answered to HEAD without their body", async () => {
    const got = await get(port, "/here", { method: "HEAD" });
    expect(got).toMatchObject({ status: 200, body: "" });
    expect(got.headers["content-length"]).toBe("10");
  });

  it.each(["POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"])("take no %s", async (method) => {
    const body = method.startsWith("P") ? "x".repeat(999) : "";
    const got = await get(port, "/here", { method, body });
    expect(got.status).toBe(405);
    expect(got.headers["allow"]).toBe("GET, HEAD");
    expect(got.body.length).toBeLessThan(40);
  });

  it.each([
    "/",
    "/here/",
    "/Here",
    "/..%2fhere",
    "/constructor",
    "/__proto__",
    `/${"a".repeat(900)}`,
  ])("are no more than those: %s is not there", async (path) => {
    const got = await get(port, path);
    expect(got.status).toBe(404);
    expect(got.body.length).toBeLessThan(80);
  });

  it("that cannot be made say so and nothing of why", async () => {
    const got = await get(port, "/broken");
    expect(got.status).toBe(500);
    expect(got.body).not.toContain("hunter2");
  });
});

describe("who asks on this machine", () => {
  it.each(["127.0.0.1", "127.0.0.1:9464", "localhost", "LOCALHOST:1", "[::1]:9464", "10.0.0.7"])(
    "is answered by the name %s",
    async (host) => {
      expect((await get(port, "/here", { host })).status).toBe(200);
    },
  );

  it.each(["example.org", "localhost.example.org", "127.0.0.1.example.org:80", "[::1", "a@b"])(
    "under a name that a page in a browser could have made up is refused: %j",
    async (host) => {
      const got = await get(port, "/here", { host });
      expect(got.status).toBe(421);
      expect(got.body).not.toContain("here it is");
    },
  );

  it("is answered by any name where the pages are open to other machines on purpose", async () => {
    const open = await start("0.0.0.0");
    const got = await get(open.address.port, "/here", { host: "batch-clerk:9464" });
    await open.close();
    expect(got.status).toBe(200);
  });
});

describe("what is no request", () => {
  it.each([
    ["noise", "\u0000\u0001\u0002\r\n\r\n"],
    ["an empty host", "GET /here HTTP/1.1\r\nHost:\r\nConnection: close\r\n\r\n"],
    ["no host", "GET /here HTTP/1.1\r\n\r\n"],
    [
      "a header too long",
      `GET /here HTTP/1.1\r\nHost: localhost\r\nX: ${"x".repeat(9_000)}\r\n\r\n`,
    ],
    [
      "two lengths",
      "GET /here HTTP/1.1\r\nHost: a\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n",
    ],
    ["a path without a slash", "GET here HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"],
    [
      "a proxy's form",
      "GET http://localhost/here HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n",
    ],
  ])("is refused shortly: %s", async (_what, bytes) => {
    const heard = await sendRaw(port, bytes);
    expect(heard).toMatch(/^HTTP\/1\.1 4\d\d /u);
    expect(heard.length).toBeLessThan(400);
    expect((await get(port, "/here")).status).toBe(200);
  });

  it("a port that is taken is told in a sentence with what to do", async () => {
    const second = await startOpsServer({ host: "127.0.0.1", port, pages });
    expect(second).toMatchObject({ ok: false, problem: expect.stringContaining("EADDRINUSE") });
    expect(second).toMatchObject({ problem: expect.stringContaining("OPS_PORT") });
  });

  it("a connection left open does not keep the server from closing", async () => {
    const other = await start("127.0.0.1");
    const heard = sendRaw(other.address.port, "GET /here HTTP/1.1\r\nHost: loc");
    await get(other.address.port, "/here");
    await other.close();
    expect(await heard).toBe("");
  });
});
