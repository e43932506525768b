import { open } from "node:fs/promises";
import { basename } from "node:path";
import type { AttachedFile } from "../../commands/kit/command.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";

const FILE_MAX_BYTES = 64 * 1024;

const WHY: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "it is a folder",
  EACCES: "this account may not read it",
};

/** Reads a local file for a file option, at most 64 KiB. The problem is a sentence. */
export async function readLocalFile(path: string): Promise<Outcome<AttachedFile, string>> {
  try {
    const handle = await open(path, "r");
    try {
      const bytes = new Uint8Array(FILE_MAX_BYTES + 1);
      // Not by its stated size: a pipe or device states none and may never end.
      const { bytesRead } = await handle.read(bytes, 0, bytes.length, 0);
      if (bytesRead > FILE_MAX_BYTES) {
        return fail(`${path} is larger than 64 KiB; a recipe file is text of a page or two.`);
      }
      return ok({ name: basename(path), bytes: bytes.slice(0, bytesRead) });
    } finally {
      await handle.close();
    }
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    return fail(`${path} cannot be read: ${WHY[code] ?? "the system refused"}. Check the path.`);
  }
}
