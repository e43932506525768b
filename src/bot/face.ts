import type { OtherOptions, RawInput, Suggestion } from "../../commands/kit/command.ts";
import type { Actor } from "../../commands/kit/context.ts";
import type { FilledForm, Form } from "../../commands/kit/form.ts";
import type { Reply } from "../../commands/kit/reply.ts";

/** What every request carries, whichever face it came through. */
export interface Asked {
  readonly groupId: string;
  readonly groupName: string;
  readonly actor: Actor;
  /** The platform's id of this request; the same when it is delivered twice. */
  readonly requestId: string;
}

/** A typed command with the names of the options filled in and the texts in them, or a press. */
export type Opening =
  | {
      readonly path: readonly string[];
      readonly given: readonly string[];
      readonly texts?: OtherOptions;
    }
  | { readonly pressId: string };

/**
 * The bot as its faces see it (`src/bot/dispatch.ts` implements it). Never throws: a member's mistake
 * becomes a private reply with a sentence, a bug an apology with an id while the log has the rest.
 */
export interface Bot {
  /**
   * Whether this opens a form instead of being answered. Known at once, without asking anybody: a form
   * must be the first answer, so a face has to know before it says "thinking".
   */
  opensForm(opening: Opening): boolean;
  /** The form, or a refusal. Only for what `opensForm`. */
  form(asked: Asked, opening: Opening): Promise<Form | Reply>;
  /** A form that came back filled in. */
  submit(asked: Asked, formId: string, filled: FilledForm): Promise<Reply>;
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
