import type { Act } from "../discord-server/faults.ts";
import type { Received } from "../discord-server/request.ts";
import type { KillPoint } from "./plan.ts";
import { isMessagePost } from "./weather.ts";

/** Waits for the moment at which a process is to die, and kills it. */
export class Killer {
  #armed: { point: KillPoint; kill: () => void } | null = null;
  #posts = 0;
  /** Counts how often it was armed or disarmed. */
  #turn = 0;
  #timer: NodeJS.Timeout | null = null;

  arm(point: KillPoint | null, kill: () => void): void {
    this.disarm();
    if (point === null) return;
    this.#posts = 0;
    this.#armed = { point, kill };
    if (point.when === "at a time") this.#soon(point.afterMs, kill);
  }

  disarm(): void {
    this.#turn += 1;
    this.#armed = null;
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }

  #soon(ms: number, kill: () => void): void {
    this.#timer = setTimeout(kill, ms);
  }

  /** What becomes of a request at which the process dies; null for every other request. */
  at(received: Received): Act | null {
    if (this.#armed === null || !isMessagePost(received)) return null;
    const { point, kill } = this.#armed;
    this.#posts += 1;
    if (point.when === "at a time" || this.#posts !== point.atPost) return null;
    this.#armed = null;
    if (point.when === "before it is stored") {
      return { kind: "act", isDone: false, before: kill, says: "reset" };
    }
    if (point.when === "after it is stored") {
      return { kind: "act", isDone: true, after: kill, says: "reset" };
    }
    const turn = this.#turn;
    // An answer that was slow may come when the step is over; nobody is to die in the next one for it.
    const soon = (): void => {
      if (turn === this.#turn) this.#soon(point.afterMs, kill);
    };
    return { kind: "act", isDone: true, after: soon, says: "the truth" };
  }
}
