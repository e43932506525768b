import Database from "better-sqlite3";

/** Another process, or another store of this one, has the file open. */
export class FileTaken extends Error {
  override readonly name = "FileTaken";
}

/**
 * Takes the file at `path` for this process and returns how to let it go. The sign is a lock of the
 * operating system on an empty file beside it, which goes with the process, however that ends. One
 * process only, because two would answer every request twice, and because on a file every write of one
 * stops the other.
 */
export function takeFile(path: string): () => void {
  const sign = new Database(`${path}-owner`, { timeout: 0 });
  try {
    // Nothing is written: the transaction is never ended, and needs no journal.
    sign.pragma("journal_mode = MEMORY");
    sign.exec("BEGIN EXCLUSIVE");
  } catch (error) {
    sign.close();
    if (error instanceof Database.SqliteError && error.code.startsWith("SQLITE_BUSY")) {
      throw new FileTaken(`the file ${path} is in use`, { cause: error });
    }
    throw error;
  }
  return () => sign.close();
}
