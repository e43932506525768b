import type { Json } from "./json.ts";
import { invalidForm, type Violation } from "./rules/fault-list.ts";

/** What the server says to a request. */
export interface HttpAnswer {
  readonly status: number;
  readonly body?: Json;
  readonly bytes?: Uint8Array;
  readonly headers?: Readonly<Record<string, string>>;
}

export const NOTHING: HttpAnswer = { status: 204 };

export function refusal(status: number, code: number, message: string): HttpAnswer {
  return { status, body: { code, message } };
}

export function badForm(violations: readonly Violation[]): HttpAnswer {
  return { status: 400, body: invalidForm(violations) };
}

/** Codes: the platform's developer documentation, topics/opcodes-and-status-codes. */
export const REFUSALS = {
  unauthorized: refusal(401, 0, "401: Unauthorized"),
  unknownRoute: refusal(404, 0, "404: Not Found"),
  unknownChannel: refusal(404, 10003, "Unknown Channel"),
  unknownMessage: refusal(404, 10008, "Unknown Message"),
  unknownUser: refusal(404, 10013, "Unknown User"),
  unknownWebhook: refusal(404, 10015, "Unknown Webhook"),
  unknownInteraction: refusal(404, 10062, "Unknown interaction"),
  alreadyAnswered: refusal(400, 40060, "Interaction has already been acknowledged."),
  directClosed: refusal(403, 50007, "Cannot send messages to this user"),
  missingAccess: refusal(403, 50001, "Missing Access"),
  missingPermissions: refusal(403, 50013, "Missing Permissions"),
} as const;
