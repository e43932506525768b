import { mkdir, open, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";
import Database from "better-sqlite3";
import { checkFile, type FileReport } from "./check-file.ts";

/** How long to wait for a bot that is just bringing its tables up to date, milliseconds. */
const BUSY_TIMEOUT_MS = 10_000;
/** It holds what members eat and are allergic to. */
const OWNER_ONLY = 0o600;

/** There is something already where a file is to be written. */
export class FileThere extends Error {
  override readonly name = "FileThere";
}

/**
 * Writes a copy of the database file as it is at one instant, while the bot goes on writing: a reader
 * of its own, which holds up nobody. The copy gets its name when it is whole and on the disk, so a file
 * of that name is a backup and never a part of one. Throws `FileThere` rather than write over anything.
 */
export async function backUp(from: string, to: string): Promise<FileReport> {
  await mkdir(dirname(to), { recursive: true });
  const part = `${to}.part`;
  await refuseIfThere(to);
  await rm(part, { force: true });
  try {
    // Made before it is filled, so that nobody else can read it even for a moment.
    await (await open(part, "wx", OWNER_ONLY)).close();
    const db = new Database(from, {
      readonly: true,
      fileMustExist: true,
      timeout: BUSY_TIMEOUT_MS,
    });
    try {
      db.prepare("VACUUM INTO ?").run(part);
    } finally {
      db.close();
    }
    const report = await checkFile(part);
    await toDisk(part);
    await refuseIfThere(to);
    await rename(part, to);
    await toDisk(dirname(to));
    return report;
  } finally {
    await rm(part, { force: true });
  }
}

async function refuseIfThere(path: string): Promise<void> {
  try {
    await (await open(path, "r")).close();
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return;
    throw error;
  }
  throw new FileThere(path);
}

/** Waits until the disk has it: SQLite does not, for a file that it writes in this way. */
export async function toDisk(path: string): Promise<void> {
  const file = await open(path, "r");
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}
