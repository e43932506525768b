import type { PrismaPg } from "@prisma/adapter-pg";
import { DriverAdapterError } from "@prisma/driver-adapter-utils";
import type { withSchemaEngine } from "./schema-engine.ts";

/** The server keeps text in an encoding that cannot hold every sign. */
export class WrongEncoding extends Error {
  override readonly name = "WrongEncoding";
}

/** Connections of one process. A server allows a hundred by default, for all its clients. */
const POOL_SIZE = 10;

/** How long to wait for a connection, milliseconds. */
const CONNECT_WITHIN_MS = 5000;

/** A statement that takes longer is ended by the server: no request may hang for good. Milliseconds. */
const STATEMENT_WITHIN_MS = 30_000;

/** A transaction left open by a process that hangs lets its rows go after this time. Milliseconds. */
const IDLE_IN_TRANSACTION_MS = 60_000;

/** What every conditional statement of the store is thought through for, whatever the server's default. */
const ISOLATION = "-c default_transaction_isolation=read\\ committed";

/** How the bot connects to the server behind a `postgresql://` address. */
export function connectionSettings(connectionString: string) {
  return {
    connectionString,
    max: POOL_SIZE,
    connectionTimeoutMillis: CONNECT_WITHIN_MS,
    statement_timeout: STATEMENT_WITHIN_MS,
    idle_in_transaction_session_timeout: IDLE_IN_TRANSACTION_MS,
    options: ISOLATION,
    keepAlive: true,
    application_name: "batch-clerk",
  };
}

/** What makes connections to a server. */
type ServerFactory = Pick<PrismaPg, "provider" | "adapterName" | "connect" | "connectToShadowDb">;

/**
 * The same factory, whose connections always have somebody who listens to their errors. The pool lets
 * go of one before whoever asked for it listens; a server that ends it at that very moment would, unheard,
 * end the process. Whoever uses the connection learns of it at the next statement.
 */
export function heard(factory: PrismaPg): ServerFactory {
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: async () => {
      const adapter = await factory.connect();
      adapter.underlyingDriver().on("connect", (client) => {
        client.on("error", () => undefined);
      });
      return adapter;
    },
    connectToShadowDb: () => factory.connectToShadowDb(),
  };
}

type Factory = Parameters<typeof withSchemaEngine>[0];

/** What the server said of a script, in the form in which the schema engine passes it on. */
function refused(error: unknown): never {
  const message = error instanceof Error ? error.message : String(error);
  const nothing = { detail: undefined, column: undefined, hint: undefined };
  const said = { kind: "postgres", code: "", severity: "ERROR", message, ...nothing } as const;
  throw new DriverAdapterError(said);
}

/**
 * The same factory, sending a script as one message instead of statement by statement. The server runs
 * that as one transaction, so that a migration is made whole or not at all.
 */
export function wholeScripts(factory: ServerFactory): Factory {
  const connect = async () => {
    const adapter = await factory.connect();
    // Without a limit of time: making an index of a large table may take minutes.
    adapter.executeScript = async (script) => {
      const whole = `SET LOCAL statement_timeout = 0;\n${script}`;
      await adapter.underlyingDriver().query(whole).catch(refused);
    };
    return adapter;
  };
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect,
    connectToShadowDb: () => factory.connectToShadowDb(),
  };
}
