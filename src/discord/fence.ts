// A request may wait long after it was asked for: in the REST manager's queue, for the rate limit, or
// because the machine itself stood still. Only where it is handed to the network can be said whether it
// is still ours to send. There the manager looks at the signal that came with it, each time anew.
// (Node's `AsyncLocalStorage` would carry the question there too, at a tenth of the time of every promise.)

/**
 * The same signal, which counts as aborted also once `isOurs` says no: no request that bears it is begun
 * after that. Nobody is told at that moment, so that one under way goes on to its answer.
 */
export function onlyWhile(signal: AbortSignal, isOurs: () => boolean): AbortSignal {
  return Object.defineProperty(signal, "aborted", {
    get: () => Reflect.get(AbortSignal.prototype, "aborted", signal) === true || !isOurs(),
  });
}
