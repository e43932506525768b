import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";
import { type Answer, answer, type Order } from "./messages.ts";

const WORKER = fileURLToPath(new URL("./worker.ts", import.meta.url));

/** The worker has ended, and not by its own will. */
export class Dead extends Error {
  override readonly name = "Dead";
}

/** The worker tells that something of what it was asked did not go well. */
export class Broken extends Error {
  override readonly name = "Broken";
}

/** A worker process. */
export class Worker {
  readonly #child: ChildProcess;
  readonly #ended: Promise<void>;
  #waiting: { settle: (said: Answer) => void; fail: (error: Error) => void } | null = null;
  isDead = false;

  constructor() {
    this.#child = spawn(process.execPath, ["--import", "tsx", WORKER], {
      stdio: ["ignore", "inherit", "inherit", "ipc"],
    });
    this.#child.on("message", (raw) => this.#waiting?.settle(answer.parse(raw)));
    this.#ended = once(this.#child, "exit").then(() => {
      this.isDead = true;
      this.#waiting?.fail(new Dead());
    });
  }

  /** The next thing it says; throws `Dead` when it is killed before. */
  async #next<Said extends Answer["said"]>(said: Said): Promise<Extract<Answer, { said: Said }>> {
    if (this.isDead) throw new Dead();
    const got = await new Promise<Answer>((settle, fail) => {
      this.#waiting = { settle, fail };
    });
    this.#waiting = null;
    if (got.said === "broken") throw new Broken(got.why);
    if (!isOf(got, said)) throw new Error(`a worker said ${got.said} instead of ${said}`);
    return got;
  }

  warm(): Promise<unknown> {
    return this.#next("warm");
  }

  tell(told: Order): void {
    if (!this.isDead && this.#child.connected) this.#child.send(told, () => undefined);
  }

  ask<Said extends Answer["said"]>(told: Order, said: Said) {
    const next = this.#next(said);
    this.tell(told);
    return next;
  }

  /** kill -9. */
  async kill(): Promise<void> {
    this.#child.kill("SIGKILL");
    await this.#ended;
  }
}

function isOf<Said extends Answer["said"]>(
  got: Answer,
  said: Said,
): got is Extract<Answer, { said: Said }> {
  return got.said === said;
}

/** Workers that have loaded what they need and wait to be told where: one is at hand when one is killed. */
export class Pool {
  readonly #warm: Promise<Worker>[] = [];
  readonly #spare: number;
  started = 0;

  constructor(spare: number) {
    this.#spare = spare;
  }

  #add(): void {
    this.started += 1;
    const worker = new Worker();
    this.#warm.push(worker.warm().then(() => worker));
  }

  take(): Promise<Worker> {
    // One more than are to be at hand: the first is taken.
    while (this.#warm.length <= this.#spare) this.#add();
    const [first] = this.#warm.splice(0, 1);
    return first ?? this.take();
  }

  /** A worker that has closed what it had open. */
  giveBack(worker: Worker): void {
    this.#warm.unshift(Promise.resolve(worker));
  }

  async close(): Promise<void> {
    const all = await Promise.all(this.#warm.splice(0));
    await Promise.all(all.map((worker) => worker.kill()));
  }
}
