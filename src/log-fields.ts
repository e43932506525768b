/** Fields whose text is the bot's own words, an id of its own, or a code of the platform or database. */
const OWN_WORDS: ReadonlySet<string> = new Set([
  "code",
  "command",
  "doing",
  "done",
  "error",
  "errorId",
  "face",
  "kind",
  "method",
  "name",
  "nonce",
  "option",
  "place",
  "reason",
  "reasons",
  "result",
  "what",
  "worker",
]);
/** The platform's numbers for servers: they name no person. Members' numbers are not among these. */
const IDS: ReadonlySet<string> = new Set(["groupId"]);

const LEFT_OUT = "[left out]";
const TEXT_MAX = 200;
const LIST_MAX = 20;
const DEPTH_MAX = 3;

const OWN_WORD = /^[\w ~:;,.'()/[\]-]*$/u;
const ID = /^\w{1,40}$/u;
const FRAMES_MAX = 20;
const FRAME = /^\s+at [^\n]{0,300}:\d+:\d+\)?$/u;
const ERROR_NAME = /^[\w.[\]]{1,60}$/u;
const ERROR_CODE = /^\w{1,40}$/u;

/**
 * What of some fields may stand in the log. Numbers, yes and no pass; text passes only in the fields
 * listed above, and only while it looks like words of the bot's own; of an error its name, codes and
 * place pass, but not its message, which may quote what a member typed. So a field that somebody adds
 * without thinking shows as left out, and not as a member's data.
 */
export function loggable(fields: object): Record<string, unknown> {
  return entriesOf(fields, 0);
}

function entriesOf(fields: object, depth: number): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(fields)
      .slice(0, LIST_MAX)
      .map(([name, value]) => [clean(name), kept(name, value, depth)]),
  );
}

/** Names are ours too, unless somebody logs a map by what members typed. */
function clean(name: string): string {
  return ID.test(name) ? name : LEFT_OUT;
}

function kept(name: string, value: unknown, depth: number): unknown {
  if (value === null || typeof value === "number" || typeof value === "boolean") return value;
  if (value instanceof Error) return errorFields(value, depth);
  if (typeof value === "string") return textOf(name, value);
  if (depth >= DEPTH_MAX || typeof value !== "object") return LEFT_OUT;
  if (Array.isArray(value)) {
    return value.slice(0, LIST_MAX).map((one) => kept(name, one, depth + 1));
  }
  return entriesOf(value, depth + 1);
}

function textOf(name: string, value: string): unknown {
  const pattern = OWN_WORDS.has(name) ? OWN_WORD : IDS.has(name) ? ID : null;
  return pattern?.test(value) === true ? value.slice(0, TEXT_MAX) : LEFT_OUT;
}

function errorFields(error: Error, depth: number): Record<string, unknown> {
  const { cause } = error;
  return {
    name: ERROR_NAME.test(error.name) ? error.name : LEFT_OUT,
    ...codesOf(error),
    stack: framesOf(error.stack ?? "", error.message),
    ...(cause instanceof Error && depth < DEPTH_MAX
      ? { cause: errorFields(cause, depth + 1) }
      : {}),
  };
}

/** Codes of the system, the platform and the database: short words in capitals, and numbers. */
function codesOf(error: Error): Record<string, string | number> {
  const codes: [string, string | number][] = [];
  for (const name of ["code", "status", "syscall", "method"]) {
    const value: unknown = Reflect.get(error, name);
    if (typeof value === "number") codes.push([name, value]);
    if (typeof value === "string" && ERROR_CODE.test(value)) codes.push([name, value]);
  }
  return Object.fromEntries(codes);
}

/** Where an error arose. Its message stands before that, and can hold lines that look alike. */
function framesOf(stack: string, message: string): readonly string[] {
  const at = message === "" ? -1 : stack.indexOf(message);
  const rest = at === -1 ? stack : stack.slice(at + message.length);
  return rest
    .split("\n")
    .filter((line) => FRAME.test(line))
    .slice(0, FRAMES_MAX)
    .map((line) => line.trim());
}
