import { DiscordAPIError, HTTPError, RateLimitError } from "discord.js";

/** What an error of the platform's interface means. */
export type ApiFault =
  /** Refused: nothing was done. `code` is the platform's own. */
  | { readonly kind: "refused"; readonly status: number; readonly code: number }
  /** Told to wait: nothing was done. */
  | { readonly kind: "limited"; readonly retryAfterMs: number }
  /** Nobody knows whether it was done: a server error, a time-out, a broken connection. */
  | { readonly kind: "unknown"; readonly reason: string };

// Codes: the platform's developer documentation, topics/opcodes-and-status-codes.
export const CODE = {
  unknownChannel: 10003,
  unknownInteraction: 10062,
  unknownWebhook: 10015,
  missingAccess: 50001,
  directClosed: 50007,
  missingPermissions: 50013,
  alreadyAnswered: 40060,
  openingTooFast: 40003,
  noMutualGuild: 50278,
} as const;

export function faultOf(error: unknown): ApiFault {
  if (error instanceof RateLimitError) {
    return { kind: "limited", retryAfterMs: Math.max(0, error.retryAfter) };
  }
  if (error instanceof DiscordAPIError) {
    const code = typeof error.code === "number" ? error.code : 0;
    return { kind: "refused", status: error.status, code };
  }
  if (error instanceof HTTPError)
    return { kind: "unknown", reason: `server error ${error.status}` };
  return { kind: "unknown", reason: reasonOf(error) };
}

function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return "an error of unknown kind";
  if (error.name === "AbortError" || error.name === "TimeoutError") return "no answer in time";
  const cause = error.cause instanceof Error ? error.cause : error;
  const code = "code" in cause && typeof cause.code === "string" ? cause.code : cause.name;
  return `connection error ${code}`;
}

/**
 * An error as log fields. Errors of the platform's interface carry addresses with interaction tokens
 * and whole messages, so of them only codes are kept; the log makes what is fit of all others.
 */
export function logFields(error: unknown): Readonly<Record<string, string | number | Error>> {
  if (error instanceof DiscordAPIError) {
    return { error: "refused", status: error.status, code: error.code, method: error.method };
  }
  if (error instanceof HTTPError || error instanceof RateLimitError) {
    return { error: error.name, method: error.method };
  }
  if (!(error instanceof Error)) return { error: "not an error object" };
  return { error: error.name, reason: reasonOf(error), err: error };
}
