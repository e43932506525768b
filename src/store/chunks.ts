/**
 * Rows or ids in one statement: bounds how long the synchronous SQLite adapter holds the event loop,
 * and stays below the number of parameters a statement may have.
 */
const AT_ONCE = 250;

/** The list in pieces that fit one statement; none when it is empty. */
export function chunks<T>(list: readonly T[]): readonly (readonly T[])[] {
  const count = Math.ceil(list.length / AT_ONCE);
  return Array.from({ length: count }, (_, index) =>
    list.slice(index * AT_ONCE, (index + 1) * AT_ONCE),
  );
}
