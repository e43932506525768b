import { createHash } from "node:crypto";

const FIRST_WAIT_MS = 30_000;
const WAIT_MAX_MS = 30 * 60_000;

/**
 * How long to wait before a message is tried again where the platform names no time, in whole
 * milliseconds: half of 30 s, 1 min, 2 min … 30 min, and a part of the other half, so that what failed
 * together does not come back together. The part follows from nonce and attempt, which
 * counts from 1.
 */
export function backoffMs(nonce: string, attempt: number): number {
  const wholeMs = Math.min(FIRST_WAIT_MS * 2 ** (attempt - 1), WAIT_MAX_MS);
  const part =
    createHash("sha256").update(`${nonce}/${attempt}`).digest().readUInt32BE(0) / 2 ** 32;
  return Math.round((wholeMs / 2) * (1 + part));
}
