import { PrismaPg } from "@prisma/adapter-pg";
import { describe, expect, test } from "vitest";
import { openStore } from "../../../../src/store/open.ts";
import { connectionSettings, heard } from "../../../../src/store/server-connection.ts";
import { openUrl, type PostgresRun } from "../postgres-place.ts";

/** Changes one part of an address. */
function withPart(
  url: string,
  parts: Partial<Pick<URL, "password" | "pathname" | "port">>,
): string {
  return Object.assign(new URL(url), parts).href;
}

async function problemOf(url: string): Promise<{ code: string; sentence: string } | null> {
  const opened = await openStore(url);
  if (!opened.ok) return opened.problem;
  await opened.value.close();
  return null;
}

export function openingOnServer(given: () => PostgresRun): void {
  describe("opening it", () => {
    test.each([
      ["nobody listens", { port: "1" }, "cannot reach the server", "host and port"],
      ["the password is wrong", { password: "wr0ng" }, "the server refuses", "the password"],
      ["there is no such database", { pathname: "/none" }, "the server refuses", "CREATE DATABASE"],
    ])("when %s, is a problem with what to do", async (_, part, code, remedy) => {
      const url = withPart(given().url, part);
      const problem = await problemOf(url);
      expect(problem?.code).toBe(code);
      expect(problem?.sentence).toContain(remedy);
      expect(problem?.sentence).not.toContain(new URL(url).password);
    });

    test("with an encoding that lacks signs, is refused", async () => {
      const { server, url } = given();
      await server.ask(
        url,
        `CREATE DATABASE old ENCODING 'SQL_ASCII' LOCALE_PROVIDER libc LOCALE 'C' TEMPLATE template0`,
      );
      const problem = await problemOf(withPart(url, { pathname: "/old" }));
      expect(problem?.code).toBe("the server refuses");
      expect(problem?.sentence).toContain("ENCODING 'UTF8'");
    });

    test("for a user who may not make tables, says which right is missing", async () => {
      const { server, url } = given();
      await server.ask(url, "CREATE ROLE guest LOGIN PASSWORD 'guest'");
      const empty = new URL(await server.database());
      Object.assign(empty, { username: "guest", password: "guest" });
      const problem = await problemOf(empty.href);
      expect(problem?.code).toBe("the server refuses");
      expect(problem?.sentence).toContain("GRANT CREATE ON SCHEMA");
    });

    test("a connection that somebody has taken out, and that the server cuts, does not end the process", async () => {
      const { server, url } = given();
      const settings = { ...connectionSettings(url), application_name: "taken out" };
      const adapter = await heard(new PrismaPg(settings)).connect();
      try {
        const client = await adapter.underlyingDriver().connect();
        // While it is out the pool listens to it no longer; what nobody listens to ends the process.
        const ended = new Promise((resolve) => client.once("end", resolve));
        const cut = `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'taken out'`;
        expect(await server.ask(url, cut)).toHaveLength(1);
        await ended;
        client.release(true);
        expect(await adapter.executeRaw({ sql: "SELECT 1", args: [], argTypes: [] })).toBe(1);
      } finally {
        await adapter.dispose();
      }
    });

    test("connections that the server cuts are made anew, and the process lives", async () => {
      const { server, url } = given();
      const store = await openUrl(url);
      await store.settings.set("k", "before");
      const cut = `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'batch-clerk'`;
      expect((await server.ask(url, cut)).length).toBeGreaterThan(0);
      // The cut reaches this process at some time: until then a statement may still meet a dead connection.
      await expect
        .poll(() => store.settings.get("k").catch(() => "not yet"), { timeout: 10_000 })
        .toBe("before");
      await store.close();
    });
  });
}
