import type { z } from "zod";
import type { Context } from "./context.ts";
import type { FilledForm, Form } from "./form.ts";
import type { Reply } from "./reply.ts";

/** A file a member attached, already read (at most `maxBytes` of the option). */
export interface AttachedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Suggestion {
  /** At most 100 characters each. */
  readonly label: string;
  readonly value: string;
}

/** What stands in the other options meanwhile: as typed so far, not checked by anybody. */
export type OtherOptions = Readonly<Record<string, string>>;

/** Offers values while a member types; must answer from memory or one indexed query. At most 25. */
export type Completer = (
  context: Context,
  typed: string,
  others: OtherOptions,
) => Promise<readonly Suggestion[]>;

/** One option of a command: how it is declared to the platform and how its raw value is parsed. */
export interface Option {
  readonly name: string;
  /** At most 100 characters. */
  readonly description: string;
  readonly required: boolean;
  readonly kind: "text" | "file" | "role" | "channel" | "member" | "yes-no";
  /** A closed list, shown by the platform; at most 25. */
  readonly choices?: readonly string[];
  readonly complete?: Completer;
}

/**
 * What an adapter hands over: option name -> raw value. Text options are text as typed, role and
 * channel options their ids, member options the platform's user id (in the terminal the name typed),
 * yes-no options "yes" or "no", file options an `AttachedFile`.
 */
export type RawInput = Readonly<Record<string, string | AttachedFile>>;

/** A button or choice of a command: parses its own arguments, checks its presser. */
export type Action = (context: Context, args: readonly string[]) => Promise<Reply>;

/**
 * Makes the form that a button, or the command itself, opens. A form can only be the first answer and
 * that must come within 3 s, so it is made from memory or a few indexed queries. `typed` is what stands in
 * the command's text options, as typed; empty for a button.
 */
export type FormMaker = (
  context: Context,
  args: readonly string[],
  typed: OtherOptions,
) => Promise<Form>;

/** Takes a form that came back: parses its arguments and texts, checks who sent it. */
export type Submission = (
  context: Context,
  args: readonly string[],
  filled: FilledForm,
) => Promise<Reply>;

/** A slash command: declaration as plain data beside its handler. */
export interface Command {
  /** One or two words: ["stock"] or ["recipe", "card"]. */
  readonly path: readonly [string] | readonly [string, string];
  /** At most 100 characters. */
  readonly description: string;
  readonly who: "everyone" | "coach";
  readonly options: readonly Option[];
  /** Parses the raw input with the command's zod schema, then answers. */
  readonly run: (context: Context, raw: RawInput) => Promise<Reply>;
  readonly actions: Readonly<Record<string, Action>>;
  /** Buttons that open a form. */
  readonly forms: Readonly<Record<string, FormMaker>>;
  /** Forms that come back. */
  readonly submissions: Readonly<Record<string, Submission>>;
  /** Names the form that the command opens instead of running, by the names of the options filled in; null to run. */
  readonly opens: (given: readonly string[]) => string | null;
}

interface CommandParts<Schema extends z.ZodType>
  extends Omit<Command, "run" | "actions" | "forms" | "submissions" | "opens"> {
  /** Its messages are sentences for members: what was wrong, what to type instead. */
  readonly input: Schema;
  readonly handle: (context: Context, input: z.output<Schema>) => Promise<Reply>;
  readonly actions?: Readonly<Record<string, Action>>;
  readonly forms?: Readonly<Record<string, FormMaker>>;
  readonly submissions?: Readonly<Record<string, Submission>>;
  readonly opens?: Command["opens"];
}

/** Builds a command whose handler sees only parsed input. */
export function command<Schema extends z.ZodType>(parts: CommandParts<Schema>): Command {
  const { input, handle, ...declaration } = parts;
  return {
    actions: {},
    forms: {},
    submissions: {},
    opens: () => null,
    ...declaration,
    run: async (context, raw) => {
      const parsed = input.safeParse(raw);
      if (!parsed.success) throw new Refusal(parsed.error.issues.map((issue) => issue.message));
      return handle(context, parsed.data);
    },
  };
}

/**
 * Something the asker can mend, as sentences for them. Thrown inside `commands/` only and turned into
 * a private reply at the one place that catches (`src/bot/dispatch.ts`); nothing was changed.
 */
export class Refusal extends Error {
  readonly sentences: readonly string[];
  constructor(sentences: string | readonly string[]) {
    const list = typeof sentences === "string" ? [sentences] : sentences;
    super(list.join(" "));
    this.name = "Refusal";
    this.sentences = list;
  }
}
