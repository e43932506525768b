import type { SqlDriverAdapterFactory, SqlQuery, SqlQueryable } from "@prisma/driver-adapter-utils";

/** Stands for a sign that cannot be kept, as in every decoder of UTF-8. */
const REPLACEMENT = "\uFFFD";

/**
 * The text as it is kept: NUL, which PostgreSQL refuses, and halves of surrogate pairs, which UTF-8
 * cannot say, are replaced. Everything else stays as it is.
 */
export function cleanText(text: string): string {
  return text.replaceAll("\0", REPLACEMENT).replace(/\p{Cs}/gu, REPLACEMENT);
}

function clean(value: unknown): unknown {
  if (typeof value === "string") return cleanText(value);
  return Array.isArray(value) ? value.map(clean) : value;
}

/** Lets only clean text into the statements of a connection or a transaction, which it changes. */
function cleaning<T extends SqlQueryable>(inner: T): T {
  const cleaned = (query: SqlQuery): SqlQuery => ({ ...query, args: query.args.map(clean) });
  const [queryRaw, executeRaw] = [inner.queryRaw.bind(inner), inner.executeRaw.bind(inner)];
  inner.queryRaw = (query) => queryRaw(cleaned(query));
  inner.executeRaw = (query) => executeRaw(cleaned(query));
  return inner;
}

/**
 * The same factory with clean text in every statement, writes and look-ups alike, so that a text is
 * found again under whatever it was written as, and is the same on every database.
 */
export function withCleanText(factory: SqlDriverAdapterFactory): SqlDriverAdapterFactory {
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: async () => {
      const adapter = cleaning(await factory.connect());
      const startTransaction = adapter.startTransaction.bind(adapter);
      adapter.startTransaction = async (level) => cleaning(await startTransaction(level));
      return adapter;
    },
  };
}
