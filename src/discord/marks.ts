import { createHash } from "node:crypto";
import { Temporal } from "temporal-polyfill";
import type { Instant } from "../../shared/time.ts";

/**
 * Marks in a reminder, by which it is known when it is read back. The platform forgets nonces after
 * minutes, and whether it shows them with a message that is read back is not documented; but ids of
 * components stay (components/reference: 32 bits, unique in the message).
 */
export interface Marks {
  /** Stands for the nonce. The id of the first component. */
  readonly nonce: number;
  /** When it was worded. The id of the last component; null when no such id can say it. */
  readonly wordedAt: number | null;
}

/** A message as the platform gives it, as far as its marks go. */
export interface Marked {
  readonly id: string;
  readonly components?: readonly { readonly id?: number | null | undefined }[] | null | undefined;
}

/** Ids below say when, ids from here on which: so the two of a message are never the same. */
const NONCES_FROM = 2 ** 30;
const EPOCH_S = Temporal.Instant.from("2020-01-01T00:00:00Z").epochMilliseconds / 1_000;
/** The platform numbers the components without an id from 1 on; a message has 40 at most. */
const TIMES_FROM = 1_000;

/** The marks of a message under that nonce. `wordedAt` counts in whole seconds. */
export function marksOf(nonce: string, wordedAt: Instant): Marks {
  const time = Math.floor(wordedAt.epochMilliseconds / 1_000) - EPOCH_S;
  const canSay = time >= TIMES_FROM && time < NONCES_FROM;
  return { nonce: markOfNonce(nonce), wordedAt: canSay ? time : null };
}

/** Whether a message bears the mark of that nonce. */
export function isOfNonce({ components }: Pick<Marked, "components">, nonce: string): boolean {
  const mark = markOfNonce(nonce);
  return components?.some(({ id }) => id === mark) === true;
}

/** When a marked message was worded, to the second; null when it does not say. */
export function wordedAtOf({ components }: Pick<Marked, "components">): Instant | null {
  const id = components?.at(-1)?.id ?? 0;
  if (id < TIMES_FROM || id >= NONCES_FROM) return null;
  return Temporal.Instant.fromEpochMilliseconds((id + EPOCH_S) * 1_000);
}

function markOfNonce(nonce: string): number {
  return NONCES_FROM + (createHash("sha256").update(nonce).digest().readUInt32BE(0) % NONCES_FROM);
}
