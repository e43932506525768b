import { isDriverAdapterError } from "@prisma/driver-adapter-utils";
import { FileTaken } from "./file-owner.ts";
import { WrongEncoding } from "./server-connection.ts";

/** Why a store could not be opened, each ending in what to do about it. */
export interface OpenProblem {
  readonly code:
    | "unsupported database"
    | "cannot open the file"
    | "the file is in use"
    | "cannot reach the server"
    | "the server refuses";
  readonly sentence: string;
}

const FORMS =
  "file: and the path of a file, such as file:./data/batch-clerk.db, or postgresql:// with user, host and database, such as postgresql://clerk@localhost/clerk";

export function unsupported(): OpenProblem {
  return { code: "unsupported database", sentence: `DATABASE_URL must be ${FORMS}.` };
}

/** The first line of what an error says. */
function firstLine(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text.split("\n").find((line) => line.trim() !== "") ?? "";
}

export function fileProblem(path: string, error: unknown): OpenProblem {
  if (error instanceof FileTaken) {
    return {
      code: "the file is in use",
      sentence: `Another copy of the bot has the database file ${path} open, and a file belongs to one at a time. Stop that copy first, or name another file in DATABASE_URL; several copies can share a PostgreSQL server.`,
    };
  }
  return {
    code: "cannot open the file",
    sentence: `The database file ${path} cannot be opened (${firstLine(error)}). Check that the folder can be written to and that the file is one of this bot's; or name another file in DATABASE_URL.`,
  };
}

/** Host, port and database of an address; never its user or password. */
function placeOf(url: string): string {
  if (!URL.canParse(url)) return "of DATABASE_URL";
  const { host, pathname } = new URL(url);
  return `${host === "" ? "of this machine" : `at ${host}`}, database "${pathname.slice(1)}"`;
}

/** What the driver says went wrong; null when the fault lies elsewhere. */
function kindOf(error: unknown): string | null {
  return isDriverAdapterError(error) ? error.cause.kind : null;
}

const UNREACHABLE: readonly (string | null)[] = [
  "DatabaseNotReachable",
  "ConnectionClosed",
  "SocketTimeout",
  "TlsConnectionError",
];

/** What to do when the server answers but does not let the bot in. */
function remedy(error: unknown): string {
  if (error instanceof WrongEncoding) {
    return "Make a database with CREATE DATABASE ... ENCODING 'UTF8' TEMPLATE template0 and name that in DATABASE_URL";
  }
  switch (kindOf(error)) {
    case "AuthenticationFailed":
    case "DatabaseAccessDenied":
      return "Check the user and the password in DATABASE_URL (signs such as @ : / # in them are written %40 %3A %2F %23)";
    case "DatabaseDoesNotExist":
      return "Make it with CREATE DATABASE, or name another one in DATABASE_URL";
    case "TooManyConnections":
      return "Raise max_connections on the server, or run fewer copies of the bot";
    default:
      return "Check that the database is one of this bot's or empty, and that its user may make tables in it (GRANT CREATE ON SCHEMA public)";
  }
}

export function serverProblem(url: string, error: unknown): OpenProblem {
  const why = firstLine(error);
  const kind = kindOf(error);
  if (UNREACHABLE.includes(kind) || (kind === null && /timeout|connect/iu.test(why))) {
    return {
      code: "cannot reach the server",
      sentence: `The PostgreSQL server ${placeOf(url)} cannot be reached (${why}). Check that it runs, and host and port in DATABASE_URL.`,
    };
  }
  return {
    code: "the server refuses",
    sentence: `The PostgreSQL server ${placeOf(url)} does not let the bot work (${why}). ${remedy(error)}.`,
  };
}
