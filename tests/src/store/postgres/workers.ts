import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { PrismaPg } from "@prisma/adapter-pg";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { memberId, reminderId } from "../../../../shared/ids.ts";
import { PrismaClient } from "../../../../src/store/generated/postgresql/client.ts";
import type { Store } from "../../../../src/store/open.ts";
import { later, NOW } from "../kit.ts";
import { openUrl, type PostgresRun } from "../postgres-place.ts";
import { claimAll, type Held, LEASE_UNTIL } from "./claiming.ts";
import { fill } from "./fill.ts";

const WORKER = fileURLToPath(new URL("./worker.ts", import.meta.url));

const heldLine = z.object({
  worker: z.string(),
  memberId: z.string(),
  nonce: z.string(),
  ids: z.array(z.string()),
});

interface Child {
  readonly process: ChildProcess;
  readonly held: Held[];
  readonly said: (count: number) => Promise<void>;
}

/** Starts a worker process and waits until it is connected. */
async function startWorker(url: string, name: string, what = "all"): Promise<Child> {
  const child = spawn(process.execPath, ["--import", "tsx", WORKER, url, name, what], {
    stdio: ["pipe", "pipe", "inherit"],
  });
  const held: Held[] = [];
  const lines = createInterface({ input: child.stdout });
  /** The next line it says; fails when it ends instead. */
  const next = async (): Promise<unknown> => {
    const ended = once(lines, "close").then(() => {
      throw new Error(`worker ${name} ended before it said anything`);
    });
    const [line] = await Promise.race([once(lines, "line"), ended]);
    return line;
  };
  expect(await next()).toBe('"ready"');
  lines.on("line", (line) => held.push(heldLine.parse(JSON.parse(line))));
  const said = async (count: number) => {
    while (held.length < count) await next();
  };
  return { process: child, held, said };
}

/** Each row once, and all rows of a member with one worker. */
function expectWhole(held: readonly Held[], counts: { members: number; each: number }): void {
  const ids = held.flatMap((one) => one.ids);
  expect(ids).toHaveLength(counts.members * counts.each);
  expect(new Set(ids).size).toBe(ids.length);
  const membersOf = held.map((one) => new Set(one.ids.map((id) => id.split(".")[0])));
  expect(membersOf.every((members) => members.size === 1)).toBe(true);
  // As many deliveries as members: nobody's rows were parted between two.
  expect(held).toHaveLength(counts.members);
}

async function withStores<T>(
  url: string,
  count: number,
  use: (stores: readonly Store[]) => Promise<T>,
): Promise<T> {
  const stores = await Promise.all(Array.from({ length: count }, () => openUrl(url)));
  try {
    return await use(stores);
  } finally {
    await Promise.all(stores.map((store) => store.close()));
  }
}

export function workersOnServer(given: () => PostgresRun): void {
  const filled = async (members: number, each: number) => {
    const { url } = await given().place();
    await fill(given().server, url, { members, each }, String(NOW));
    return url;
  };

  describe("several workers on it", () => {
    test("three processes claim three thousand rows, no row twice and no message parted", async () => {
      const counts = { members: 500, each: 6 };
      const url = await filled(counts.members, counts.each);
      const names = ["a", "b", "c"];
      const children = await Promise.all(names.map((name) => startWorker(url, name, "30")));
      const ends = children.map((child) => once(child.process, "exit"));
      const tellAll = () => {
        for (const child of children) child.process.stdin?.write("go\n");
      };
      tellAll();
      // Each comes by thirty while the others hold theirs: they do not wait in line for each other.
      await Promise.all(children.map((child) => child.said(30)));
      tellAll();
      for (const [code] of await Promise.all(ends)) expect(code).toBe(0);
      expectWhole(
        children.flatMap(({ held }) => held),
        counts,
      );
    });

    test("eight lanes on four pools of connections do neither", async () => {
      const counts = { members: 150, each: 4 };
      const url = await filled(counts.members, counts.each);
      const held: Held[] = [];
      await withStores(url, 4, async (stores) => {
        const lanes = [...stores, ...stores].map(({ deliveries }, i) =>
          claimAll(deliveries, `w${i}`, (one) => held.push(one)),
        );
        await Promise.all(lanes);
      });
      expectWhole(held, counts);
    });

    test("a killed worker's claim comes back whole after its lease, under its nonce", async () => {
      const url = await filled(5, 3);
      const child = await startWorker(url, "doomed", "hold");
      child.process.stdin?.write("go\n");
      await child.said(1);
      child.process.kill("SIGKILL");
      await once(child.process, "exit");
      const [lost] = child.held;
      if (lost === undefined) throw new Error("the worker held nothing");
      expect(lost.ids).toHaveLength(3);
      await withStores(url, 2, async ([one, other]) => {
        const early = await one?.deliveries.abandoned(NOW, 100);
        expect(early).toEqual([]);
        const member = memberId(lost.memberId);
        const back = {
          memberId: member,
          nonce: lost.nonce,
          now: LEASE_UNTIL,
          leaseUntil: later(9),
        };
        // Both see it come back at once; one of them gets all of it.
        const taken = await Promise.all([
          one?.deliveries.claimAgain({ ...back, worker: "one" }),
          other?.deliveries.claimAgain({ ...back, worker: "other" }),
        ]);
        expect(taken.map((rows) => rows?.length).sort()).toEqual([0, 3]);
        const ids = lost.ids.map(reminderId);
        const late = { nonce: lost.nonce, ids, worker: "doomed", at: later(3) };
        const result = { state: "sent", messageId: "m", where: "channel" } as const;
        expect(await one?.deliveries.settle({ ...late, result })).toBe(false);
      });
    });

    test("a claim passes by a member whose stock is being changed, and takes what is left after that", async () => {
      const url = await filled(2, 2);
      const db = new PrismaClient({ adapter: new PrismaPg({ connectionString: url }) });
      await withStores(url, 1, async ([one]) => {
        const claimed = async () => {
          const lease = { worker: "w", now: NOW, until: NOW, leaseUntil: LEASE_UNTIL };
          const taken = await one?.deliveries.claimNext({ ...lease, limit: 9 });
          return taken?.rows.map(({ id }) => id).toSorted();
        };
        await db.$transaction(async (tx) => {
          await tx.member.update({ where: { id: "m1" }, data: { planVersion: 1 } });
          expect(await claimed()).toEqual(["r2.1", "r2.2"]);
          expect(await claimed()).toEqual([]);
          await tx.reminder.delete({ where: { id: "r1.2" } });
        });
        expect(await claimed()).toEqual(["r1.1"]);
      });
      await db.$disconnect();
    });

    test("two workers that saw different rows of a member never send under one nonce", async () => {
      const url = await filled(1, 2);
      await withStores(url, 2, async ([one, other]) => {
        const lease = { now: NOW, until: NOW, leaseUntil: LEASE_UNTIL, limit: 9 };
        const first = await one?.deliveries.claimNext({ ...lease, worker: "one" });
        await given().server.ask(
          url,
          `INSERT INTO "Reminder" SELECT 'r1.0', "memberId", 'k0', "kind", "dueAt", "helpsUntil", "about"
             FROM "Reminder" WHERE "id" = 'r1.1'`,
        );
        const second = await other?.deliveries.claimNext({ ...lease, worker: "other" });
        expect(first?.rows.map(({ id }) => id).toSorted()).toEqual(["r1.1", "r1.2"]);
        expect(second?.rows.map(({ id }) => id)).toEqual(["r1.0"]);
        expect(second?.rows[0]?.nonce).not.toBe(first?.rows[0]?.nonce);
      });
    });

    test("each member is replanned by one worker only", async () => {
      const url = await filled(1000, 0);
      const taken = await withStores(url, 4, (stores) =>
        Promise.all(
          stores.map(async ({ deliveries }) => {
            const mine: string[] = [];
            for (;;) {
              const page = await deliveries.toReplan(NOW, 50);
              if (page.length === 0) return mine;
              mine.push(...page);
            }
          }),
        ),
      );
      expect(taken.flat()).toHaveLength(1000);
      expect(new Set(taken.flat()).size).toBe(1000);
    });
  });
}
