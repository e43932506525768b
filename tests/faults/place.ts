import { copyFile, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { z } from "zod";
import { openStore } from "../../src/store/open.ts";
import { startPostgres } from "../src/store/postgres-server.ts";
import type { EndRow } from "./check.ts";
import type { Stage } from "./plan.ts";

export interface PlacedRow extends EndRow {
  readonly member: string;
  readonly claimedBy: string | null;
  readonly leaseMs: number | null;
}

/** A database of one flock. */
export interface Place {
  readonly url: string;
  /** All reminders with their members' names. */
  rows(): Promise<readonly PlacedRow[]>;
  /** Cuts every connection of the workers, where there are any to cut. */
  cut(): Promise<number>;
  remove(): Promise<void>;
}

/** Makes databases with all tables in them; the server is started when first wanted. */
export interface Places {
  make(stage: Stage): Promise<Place>;
  close(): Promise<void>;
}

const row = z.object({
  key: z.string(),
  state: z.string(),
  reason: z.string().nullable(),
  nonce: z.string().nullable(),
  dueAt: z.coerce.date(),
  settledAt: z.union([z.null(), z.coerce.date()]),
  member: z.string(),
  claimedBy: z.string().nullable(),
  leaseUntil: z.union([z.null(), z.coerce.date()]),
});

function toRow(raw: unknown): PlacedRow {
  const { dueAt, settledAt, leaseUntil, ...rest } = row.parse(raw);
  return {
    ...rest,
    dueMs: dueAt.getTime(),
    settledMs: settledAt?.getTime() ?? null,
    leaseMs: leaseUntil?.getTime() ?? null,
  };
}

const ALL = `SELECT r."key", r."state", r."reason", r."nonce", r."dueAt", r."settledAt", r."claimedBy", r."leaseUntil", m."name" AS "member"
  FROM "Reminder" r JOIN "Member" m ON m."id" = r."memberId"`;

const CUT = `SELECT count(pg_terminate_backend(pid))::int AS n FROM pg_stat_activity
  WHERE datname = current_database() AND pid <> pg_backend_pid()`;

async function migrated(url: string): Promise<void> {
  const opened = await openStore(url);
  if (!opened.ok) throw new Error(opened.problem.sentence);
  await opened.value.close();
}

/** Remembers what was made first. */
function once<T>(make: () => Promise<T>): { get(): Promise<T>; made(): Promise<T> | null } {
  let made: Promise<T> | null = null;
  return {
    get: () => {
      made ??= make();
      return made;
    },
    made: () => made,
  };
}

export async function openPlaces(): Promise<Places> {
  const folder = await mkdtemp(join(tmpdir(), "faults-"));
  let count = 0;
  const file = once(async () => {
    const path = join(folder, "first.db");
    await migrated(`file:${path}`);
    return path;
  });
  const server = once(async () => {
    const postgres = await startPostgres();
    const first = await postgres.database();
    await migrated(first);
    return { postgres, first };
  });

  const onFile = async (): Promise<Place> => {
    count += 1;
    const path = join(folder, `${count}.db`);
    await copyFile(await file.get(), path);
    return {
      url: `file:${path}`,
      rows: async () => {
        const db = new Database(path, { readonly: true });
        try {
          return db.prepare(ALL).all().map(toRow);
        } finally {
          db.close();
        }
      },
      cut: async () => 0,
      remove: async () => {
        await Promise.all(
          ["", "-wal", "-shm", "-owner"].map((end) => rm(`${path}${end}`, { force: true })),
        );
      },
    };
  };

  const onServer = async (): Promise<Place> => {
    const { postgres, first } = await server.get();
    const url = await postgres.database(first);
    return {
      url,
      rows: async () => (await postgres.ask(url, ALL)).map(toRow),
      cut: async () => z.number().parse((await postgres.ask(url, CUT))[0]?.["n"]),
      remove: () => postgres.drop(url),
    };
  };

  return {
    make: (stage) => (stage === "server" ? onServer() : onFile()),
    close: async () => {
      await (await server.made())?.postgres.stop();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
