import type { AttachedFile } from "../../commands/kit/command.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";

/** A recipe in plain text has a few thousand characters; this leaves room for a whole book of them. */
const BYTES_MAX = 64 * 1_024;
const WAIT_MS = 8_000;
/** Where the platform keeps attachments (reference, "Image formatting" and signed attachment links). */
export const PLATFORM_ORIGINS: readonly string[] = [
  "https://cdn.discordapp.com",
  "https://media.discordapp.net",
];

interface Attached {
  readonly name: string;
  readonly url: string;
  /** As the platform states it. */
  readonly size: number;
}

/** Reads an attached file. The problem is a sentence for the member. */
export async function download(
  file: Attached,
  origins: readonly string[],
): Promise<Outcome<AttachedFile, string>> {
  if (file.size > BYTES_MAX) return fail(TOO_LARGE);
  if (!URL.canParse(file.url) || !origins.includes(new URL(file.url).origin)) return fail(NO_FILE);
  try {
    // A redirect could lead anywhere, so none is followed.
    const signal = AbortSignal.timeout(WAIT_MS);
    const response = await fetch(file.url, { redirect: "error", signal });
    if (!response.ok || response.body === null) return fail(NO_FILE);
    const bytes = await readUpTo(response.body, BYTES_MAX);
    return bytes === null ? fail(TOO_LARGE) : ok({ name: file.name, bytes });
  } catch {
    return fail(NO_FILE);
  }
}

const TOO_LARGE = "That file is larger than 64 KB. Attach the recipe as a plain text file.";
const NO_FILE = "The attached file could not be read from Discord. Attach it once more.";

/** Null when there is more than `max` bytes. */
async function readUpTo(body: ReadableStream<Uint8Array>, max: number): Promise<Uint8Array | null> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of body) {
    length += chunk.length;
    // Leaving the loop cancels the download.
    if (length > max) return null;
    chunks.push(chunk);
  }
  return new Uint8Array(Buffer.concat(chunks));
}
