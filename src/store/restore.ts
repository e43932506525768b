import { chmod, copyFile, mkdir, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";
import Database from "better-sqlite3";
import type { Instant } from "../../shared/time.ts";
import { toDisk } from "./backup.ts";
import { checkFile, type FileReport } from "./check-file.ts";
import { toColumn } from "./documents.ts";
import { takeFile } from "./file-owner.ts";

/** The database, and what SQLite keeps beside it: left there, it would be applied to the restored file. */
const PARTS = ["", "-wal", "-shm"];

/** Reminders of the next half hour may have gone out together with what was due. */
const SENT_AHEAD = { minutes: 30 };

export interface Restored {
  readonly report: FileReport;
  /** Where what stood there before is now; null when there was nothing. */
  readonly aside: string | null;
}

/**
 * Puts a backup in the place of the database file and keeps what was there under another name. Returns
 * the faults and changes nothing when the backup is not sound. Throws `FileTaken` while a bot has the
 * file open.
 *
 * What was sent since the backup was made is scheduled again in it. Such reminders are marked as tried
 * once, so that the bot looks for each message among those it has sent before it sends one.
 */
export async function restore(backup: string, to: string, now: Instant): Promise<Restored> {
  await mkdir(dirname(to), { recursive: true });
  const release = takeFile(to);
  const fresh = `${to}.restoring`;
  try {
    await rm(fresh, { force: true });
    await copyFile(backup, fresh);
    await chmod(fresh, 0o600);
    const found = await checkFile(fresh);
    if (found.faults.length > 0) return { report: found, aside: null };
    markAsTried(fresh, now);
    await toDisk(fresh);
    const aside = await moveAside(to, now);
    await rename(fresh, to);
    await toDisk(dirname(to));
    return { report: found, aside };
  } finally {
    for (const part of PARTS) await rm(`${fresh}${part}`, { force: true });
    release();
  }
}

function markAsTried(path: string, now: Instant): void {
  const db = new Database(path, { fileMustExist: true });
  try {
    const until = toColumn(now.add(SENT_AHEAD)).toISOString().replace("Z", "+00:00");
    db.prepare(
      `UPDATE "Reminder" SET "attempts" = 1
        WHERE "state" = 'scheduled' AND "attempts" = 0 AND "dueAt" <= ?`,
    ).run(until);
  } finally {
    db.close();
  }
}

async function moveAside(path: string, now: Instant): Promise<string | null> {
  const stamp = now.round("second").toString().replaceAll(/[-:]/gu, "");
  const aside = `${path}.before-${stamp}`;
  let isThere = false;
  for (const part of PARTS) {
    try {
      await rename(`${path}${part}`, `${aside}${part}`);
      isThere = true;
    } catch (error) {
      const isMissing = error instanceof Error && "code" in error && error.code === "ENOENT";
      if (!isMissing) throw error;
    }
  }
  return isThere ? aside : null;
}
