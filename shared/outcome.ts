/** The result of something that can fail in a way the asker can mend. Bugs are thrown; these are returned. */
export type Outcome<T, P> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: P };

/** Wraps a good result. */
export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

/** Wraps an expected failure; its wording is decided in the shell (`commands/kit/say-problem.ts`). */
export function fail<P>(problem: P): { readonly ok: false; readonly problem: P } {
  return { ok: false, problem };
}
