import { pino } from "pino";
import { loggable } from "./log-fields.ts";

export const LOG_LEVELS = ["fatal", "error", "warn", "info", "debug", "trace", "silent"] as const;
export type LogLevel = (typeof LOG_LEVELS)[number];

type Write = (fields: object, message: string) => void;

/** What the running parts need of a log: fields first, then a plain sentence. */
export interface Log {
  readonly fatal: Write;
  readonly error: Write;
  readonly warn: Write;
  readonly info: Write;
  readonly debug: Write;
}

interface Sink {
  write(line: string): void;
}

/** Shorter ones would blot out half of every line. */
const SECRET_MIN = 4;

/** The line with every secret in it blotted out, also where it is written as JSON or in an address. */
function blotter(secrets: readonly string[]): (line: string) => string {
  const forms = secrets
    .filter((secret) => secret.length >= SECRET_MIN)
    .flatMap((secret) => [secret, encodeURIComponent(secret)])
    .flatMap((form) => [form, JSON.stringify(form).slice(1, -1)])
    // The longer first: one that holds another must go as a whole.
    .toSorted((a, b) => b.length - a.length);
  return (line) => forms.reduce((rest, form) => rest.replaceAll(form, "[secret]"), line);
}

/**
 * JSON lines on standard error: standard output belongs to the terminal chat. What is logged passes
 * through `loggable`, which lets numbers and words of the bot's own through and nothing a person typed.
 * `secrets` (tokens, passwords) are blotted out wherever they stand.
 */
export function createLog(
  level: LogLevel,
  sink: Sink = process.stderr,
  secrets: readonly string[] = [],
): Log {
  return pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { log: loggable },
      hooks: { streamWrite: blotter(secrets) },
    },
    sink,
  );
}

/** For parts whose talk nobody wants to hear. */
export const silentLog: Log = {
  fatal: () => {},
  error: () => {},
  warn: () => {},
  info: () => {},
  debug: () => {},
};
