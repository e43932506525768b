import { FaultList } from "./faults.ts";
import type { Json, JsonObject } from "./json.ts";
import type { Recorded } from "./request.ts";
import type { Violation } from "./rules/fault-list.ts";
import type { Message } from "./world.ts";
import { World } from "./world.ts";

/** The first answer to an interaction. */
export interface FirstAnswer {
  /** Callback type: 4 message, 5 deferred, 6 update deferred, 7 update, 8 completion, 9 form. */
  readonly type: number;
  readonly afterMs: number;
  readonly ephemeral: boolean;
}

/** One interaction and what has become of it. */
export interface Interaction {
  readonly id: string;
  readonly token: string;
  readonly kind: "command" | "completion" | "component" | "form" | "form from message";
  readonly userId: string;
  readonly channelId: string;
  /** The pressed message of a component interaction. */
  readonly sourceId: string | null;
  readonly sentAtMs: number;
  /** Age it is given beyond the real one, milliseconds. */
  readonly extraAgeMs: number;
  first: FirstAnswer | null;
  /** The message that "@original" names; null while a deferred answer is still empty. */
  originalId: string | null;
  choices: readonly Json[];
  /** The form that was opened as the first answer. */
  form: JsonObject | null;
  readonly followUps: Message[];
  /** How often the original was written, the first time included. */
  writes: number;
}

export interface Refused extends Violation {
  readonly route: string;
}

/** The state that the REST side, the gateway side and the driver of the loopback platform share. */
export class Platform {
  readonly world: World;
  readonly token: string;
  readonly applicationId: string;
  readonly faults = new FaultList();
  /** Every request that was answered or reset, in order. At most 100,000. */
  readonly requests: Recorded[] = [];
  /** Every violation of a limit, in order: a test ends with this empty, or on purpose not. */
  readonly refused: Refused[] = [];
  /** "global" or a guild's id -> the registered commands. */
  readonly commands = new Map<string, readonly JsonObject[]>();
  readonly interactions = new Map<string, Interaction>();
  /** Users whose direct messages are closed to the bot. */
  readonly closedDirect = new Set<string>();
  /** Channel id -> code with which it refuses the bot: 50001, 50013 or 10003. */
  readonly barredChannels = new Map<string, number>();
  /** Nonce -> message, and until when (milliseconds) it is remembered. */
  readonly nonces = new Map<string, { messageId: string; untilMs: number }>();
  /** Whether reading messages back shows their nonce; unpublished, so off unless a test asks. */
  showNonces = false;
  /** How many connections a bot is asked to open. */
  shards = 1;
  baseUrl = "";
  #waiters: (() => void)[] = [];

  constructor(token: string, applicationId: string) {
    this.token = token;
    this.applicationId = applicationId;
    this.world = new World(applicationId);
  }

  get fileBase(): string {
    return `${this.baseUrl}/files`;
  }

  /** Wakes everybody who waits for something to happen. */
  changed(): void {
    const waiters = this.#waiters;
    this.#waiters = [];
    for (const wake of waiters) wake();
  }

  /** Resolves once `check` gives a value, looked at after every change; rejects after `limitMs`. */
  async until<T>(
    what: string,
    check: () => T | null | undefined | false,
    limitMs = 30_000,
  ): Promise<T> {
    const endMs = performance.now() + limitMs;
    for (;;) {
      const value = check();
      if (value !== null && value !== undefined && value !== false) return value;
      const leftMs = endMs - performance.now();
      if (leftMs <= 0) throw new Error(`loopback platform: gave up waiting for ${what}`);
      await this.#nextChange(leftMs);
    }
  }

  #nextChange(limitMs: number): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, limitMs);
      this.#waiters.push(() => {
        clearTimeout(timer);
        resolve();
      });
    });
  }
}
