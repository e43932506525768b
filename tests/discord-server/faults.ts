import type { HttpAnswer } from "./answer.ts";
import type { Received } from "./request.ts";

/** What goes wrong with a request. */
export type FaultKind =
  /** Told to wait; nothing was done. */
  | { readonly kind: "429"; readonly retryAfterS: number }
  /** An error before anything was done. */
  | { readonly kind: "500" }
  /** An error although everything was done. */
  | { readonly kind: "500 after storing" }
  /** The connection breaks although everything was done. */
  | { readonly kind: "reset after storing" }
  /** The platform refuses with this code. */
  | { readonly kind: "refuse"; readonly status: number; readonly code: number }
  /** Handled only once the gate opens. */
  | { readonly kind: "hold"; readonly gate: Promise<void> }
  | Act;

/** A fault put together from its parts, for tests that make up their own. */
export interface Act {
  readonly kind: "act";
  /** Whether the platform does what was asked; a function is asked when it is about to. */
  readonly isDone: boolean | (() => boolean);
  /** Awaited before that, and after it. */
  readonly before?: () => Promise<void> | void;
  readonly after?: () => Promise<void> | void;
  /** What is answered instead of the truth; "cut": the truth, broken off in the middle. */
  readonly says: HttpAnswer | "the truth" | "reset" | "cut";
}

export type Fault = FaultKind & {
  readonly method: string;
  readonly path: RegExp;
  /** How many requests it hits; 1 when not given. */
  readonly times?: number;
};

/** Faults waiting for their request, in the order they were asked for. */
export class FaultList {
  #waiting: { fault: Fault; left: number }[] = [];
  /** Asked about each request that no waiting fault is for. */
  decide: ((received: Received) => Act | null) | null = null;

  add(fault: Fault): void {
    this.#waiting.push({ fault, left: fault.times ?? 1 });
  }

  take(received: Received): FaultKind | null {
    const hit = this.#waiting.find(
      ({ fault }) => fault.method === received.method && fault.path.test(received.path),
    );
    if (hit === undefined) return this.decide?.(received) ?? null;
    hit.left -= 1;
    if (hit.left <= 0) this.#waiting = this.#waiting.filter((other) => other !== hit);
    return hit.fault;
  }

  clear(): void {
    this.#waiting = [];
  }
}
