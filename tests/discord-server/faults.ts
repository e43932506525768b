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
  | { readonly kind: "hold"; readonly gate: Promise<void> };

export type Fault = FaultKind & {
  readonly method: string;
  readonly path: RegExp;
  /** How many requests it hits; 1 when not given. */
  readonly times?: number;
};

/** Faults waiting for their request, in the order they were asked for. */
export class FaultList {
  #waiting: { fault: Fault; left: number }[] = [];

  add(fault: Fault): void {
    this.#waiting.push({ fault, left: fault.times ?? 1 });
  }

  take(received: Received): Fault | null {
    const hit = this.#waiting.find(
      ({ fault }) => fault.method === received.method && fault.path.test(received.path),
    );
    if (hit === undefined) return null;
    hit.left -= 1;
    if (hit.left <= 0) this.#waiting = this.#waiting.filter((other) => other !== hit);
    return hit.fault;
  }

  clear(): void {
    this.#waiting = [];
  }
}
