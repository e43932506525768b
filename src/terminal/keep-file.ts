import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { ReplyFile } from "../../commands/kit/reply.ts";
import type { KeepFile } from "./render.ts";

const NAME_MAX = 80;
/** Of one name; beyond it the folder wants tidying. */
const COPIES_MAX = 1_000;

/** Writes files into a folder under their own names, with a number where that is taken: none is overwritten. */
export function keepFilesIn(folder: string): KeepFile {
  return (file) => {
    try {
      mkdirSync(folder, { recursive: true });
      return writeNew(folder, file);
    } catch {
      return null;
    }
  };
}

function writeNew(folder: string, file: ReplyFile): string | null {
  const safe = file.name
    .replace(/[^\w.-]+/gu, "-")
    .replace(/^[.-]+/u, "")
    .slice(-NAME_MAX);
  const [, stem = "file", ending = ""] = /^(.+?)(\.\w{1,8})?$/u.exec(safe) ?? [];
  for (let copy = 1; copy <= COPIES_MAX; copy += 1) {
    const path = join(folder, `${stem}${copy === 1 ? "" : `-${copy}`}${ending}`);
    if (isWritten(path, "bytes" in file ? file.bytes : file.text)) return path;
  }
  return null;
}

function isWritten(path: string, content: Uint8Array | string): boolean {
  try {
    writeFileSync(path, content, { flag: "wx" });
    return true;
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "EEXIST") return false;
    throw error;
  }
}
