import { type JsonObject, list, num, obj, str } from "../json.ts";
import { checkComponents } from "./component-rules.ts";
import { Faults, type Violation } from "./fault-list.ts";

// Limits of messages: the platform's developer documentation, resources/message.
export const EPHEMERAL = 1 << 6;
export const COMPONENTS_V2 = 1 << 15;
const CONTENT_MAX = 2_000;
const NONCE_MAX = 25;
const FILES_MAX = 10;

export interface MessageCheck {
  readonly body: JsonObject;
  readonly fileNames: readonly string[];
  /** An edit keeps the flag of the message it edits. */
  readonly isAlreadyV2: boolean;
  /** Answers to interactions ping users only by default; normal messages ping everything. */
  readonly mustNameMentions: boolean;
}

/** Checks a message to be created or edited. */
export function checkMessage(check: MessageCheck): readonly Violation[] {
  const { body, fileNames } = check;
  const faults = new Faults();
  const isV2 = check.isAlreadyV2 || (num(body["flags"]) & COMPONENTS_V2) !== 0;
  faults.count("files", fileNames.length, 0, FILES_MAX);
  if (new Set(fileNames).size !== fileNames.length) {
    faults.add("files", "BASE_TYPE_DUPLICATE", "file names must be unique");
  }
  if (isV2) checkV2(body, fileNames, faults);
  else checkPlain(body, fileNames, faults);
  checkNonce(body, faults);
  checkMentions(body, check.mustNameMentions, faults);
  return faults.list;
}

function checkV2(body: JsonObject, fileNames: readonly string[], faults: Faults): void {
  for (const field of ["content", "embeds", "poll", "sticker_ids"]) {
    const value = body[field];
    const isEmpty =
      value === undefined || value === null || value === "" || list(value).length === 0;
    if (!isEmpty || (field === "content" && str(value) !== "")) {
      faults.add(field, "MESSAGE_CANNOT_USE_LEGACY_FIELDS_WITH_COMPONENTS_V2", "not with V2");
    }
  }
  checkComponents(list(body["components"]), fileNames, faults);
}

function checkPlain(body: JsonObject, fileNames: readonly string[], faults: Faults): void {
  const content = str(body["content"]);
  if (content.length > CONTENT_MAX) {
    faults.add("content", "BASE_TYPE_MAX_LENGTH", "Must be 2000 or fewer in length.");
  }
  const isEmpty =
    content.trim() === "" && fileNames.length === 0 && list(body["embeds"]).length === 0;
  if (isEmpty) faults.add("content", "MESSAGE_EMPTY", "Cannot send an empty message");
}

function checkNonce(body: JsonObject, faults: Faults): void {
  const nonce = body["nonce"];
  if (nonce === undefined) {
    if (body["enforce_nonce"] === true)
      faults.add("nonce", "BASE_TYPE_REQUIRED", "nonce is missing");
    return;
  }
  if (typeof nonce === "string") faults.text("nonce", nonce, 1, NONCE_MAX);
  else if (!Number.isInteger(nonce)) faults.add("nonce", "NONCE_TYPE", "text or an integer");
}

function checkMentions(body: JsonObject, mustName: boolean, faults: Faults): void {
  const allowed = body["allowed_mentions"];
  if (allowed === undefined) {
    // The platform would ping everything that the text names; a bot that promises not to must say so.
    if (mustName) faults.add("allowed_mentions", "NOT_STATED", "state which mentions may ping");
    return;
  }
  const parse = list(obj(allowed)["parse"]).map((kind) => str(kind));
  const users = list(obj(allowed)["users"]);
  faults.count("allowed_mentions.users", users.length, 0, 100);
  if (parse.some((kind) => !["users", "roles", "everyone"].includes(kind))) {
    faults.add("allowed_mentions.parse", "BASE_TYPE_CHOICES", "not a kind of mention");
  }
  if (parse.includes("users") && users.length > 0) {
    faults.add("allowed_mentions", "MESSAGE_ALLOWED_MENTIONS_PARSE_EXCLUSIVE", "parse or users");
  }
}
