import type {
  SqlDriverAdapter,
  SqlDriverAdapterFactory,
  Transaction,
} from "@prisma/driver-adapter-utils";
import { breather } from "./breath.ts";

type Release = () => void;

/** Gives the way free to one holder at a time, in the order of asking. */
function turnstile(): () => Promise<Release> {
  let last: Promise<void> = Promise.resolve();
  return async () => {
    const before = last;
    let release: Release = () => undefined;
    last = new Promise((resolve) => {
      release = resolve;
    });
    await before;
    return release;
  };
}

/** Closes the turn with the transaction, and leaves no transaction open behind a failed commit. */
function withTurn(inner: Transaction, release: Release): Transaction {
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    options: inner.options,
    queryRaw: (query) => inner.queryRaw(query),
    executeRaw: (query) => inner.executeRaw(query),
    commit: () => inner.commit().finally(release),
    rollback: async () => {
      try {
        // After a COMMIT that failed (disk full) the caller comes here without a ROLLBACK of its own;
        // otherwise there is nothing left to roll back and this one fails, which is all right.
        await inner.executeRaw({ sql: "ROLLBACK", args: [], argTypes: [] }).catch(() => undefined);
        await inner.rollback();
      } finally {
        release();
      }
    },
  };
}

/**
 * Keeps every statement out of a transaction that it does not belong to. The SQLite adapter has one
 * connection and lets plain statements through while a transaction is open on it: another command's
 * write would become part of it and vanish when it rolls back. `onConnect` is SQL for a new connection.
 */
export function oneAtATime(
  factory: SqlDriverAdapterFactory,
  onConnect: string,
): SqlDriverAdapterFactory {
  const wrap = (inner: SqlDriverAdapter): SqlDriverAdapter => {
    const turn = turnstile();
    const breathe = breather();
    const alone = async <T>(work: () => Promise<T>): Promise<T> => {
      const release = await turn();
      try {
        await breathe();
        return await work();
      } finally {
        release();
      }
    };
    return {
      provider: inner.provider,
      adapterName: inner.adapterName,
      queryRaw: (query) => alone(() => inner.queryRaw(query)),
      executeRaw: (query) => alone(() => inner.executeRaw(query)),
      executeScript: (script) => alone(() => inner.executeScript(script)),
      startTransaction: async (isolationLevel) => {
        const release = await turn();
        try {
          await breathe();
          return withTurn(await inner.startTransaction(isolationLevel), release);
        } catch (error) {
          release();
          throw error;
        }
      },
      dispose: () => alone(() => inner.dispose()),
    };
  };
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: async () => {
      const inner = await factory.connect();
      await inner.executeScript(onConnect);
      return wrap(inner);
    },
  };
}
