import type { OtherOptions, RawInput, Suggestion } from "../../commands/kit/command.ts";
import type { Actor } from "../../commands/kit/context.ts";
import type { Reply } from "../../commands/kit/reply.ts";

/** What every request carries, whichever face it came through. */
export interface Asked {
  readonly groupId: string;
  readonly groupName: string;
  readonly actor: Actor;
  /** The platform's id of this request; the same when it is delivered twice. */
  readonly requestId: string;
}

/**
 * The bot as its faces see it (`src/bot/dispatch.ts` implements it). Never throws: a member's mistake
 * becomes a private reply with a sentence, a bug an apology with an id while the log has the rest.
 */
export interface Bot {
  command(asked: Asked, path: readonly string[], raw: RawInput): Promise<Reply>;
  press(asked: Asked, pressId: string, picked: readonly string[]): Promise<Reply>;
  complete(
    asked: Asked,
    path: readonly string[],
    option: string,
    typed: string,
    /** What stands in the other options so far. */
    others?: OtherOptions,
  ): Promise<readonly Suggestion[]>;
}
