import { AsyncLocalStorage } from "node:async_hooks";
import { DefaultRestOptions } from "discord.js";

// A request may wait long after it was asked for: in the REST manager's queue, for the rate limit, or
// because the machine itself stood still. Only where it is handed to the network can be said whether it
// is still ours to send.

/** The claim on a message came too near its end before the request was begun; nothing was done. */
export class ClaimOver extends Error {
  override readonly name = "ClaimOver";
}

const claims = new AsyncLocalStorage<() => boolean>();

/** Begins no request of `work` once `isOurs` says no: such a one throws `ClaimOver`. */
export function onlyWhile<T>(isOurs: () => boolean, work: () => Promise<T>): Promise<T> {
  return claims.run(isOurs, work);
}

/** The REST manager's own way to make a request, unless the claim that it is made under is over. */
export const fencedRequest: typeof DefaultRestOptions.makeRequest = async (url, init) => {
  if (claims.getStore()?.() === false) throw new ClaimOver("the claim was over before the request");
  return DefaultRestOptions.makeRequest(url, init);
};
