import { pino } from "pino";

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

/** Fields that never reach the log, at the top or one level down. */
const SECRET_FIELDS = ["token", "authorization", "Authorization", "DISCORD_TOKEN", "DATABASE_URL"];

interface Sink {
  write(line: string): void;
}

/** JSON lines on standard error: standard output belongs to the terminal chat. */
export function createLog(level: LogLevel, sink: Sink = process.stderr): Log {
  return pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      redact: SECRET_FIELDS.flatMap((name) => [name, `*.${name}`, `*.*.${name}`]),
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
