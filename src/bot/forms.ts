import {
  type Command,
  type FormMaker,
  type OtherOptions,
  Refusal,
  type Submission,
} from "../../commands/kit/command.ts";
import { readPress } from "../../commands/kit/press.ts";
import { type BotParts, contextFor, guarded } from "./ask.ts";
import { inServerOnly } from "./check-input.ts";
import type { Asked, Bot, Opening } from "./face.ts";
import { standingInGroup } from "./who.ts";

const STALE_FORM =
  "This form no longer leads anywhere. What you filled in was not kept: copy it from above if you can, and start the command again.";

interface Opened {
  readonly command: Command;
  readonly make: FormMaker;
  readonly args: readonly string[];
  readonly typed: OtherOptions;
}

/** The part of the bot that opens forms and takes them back. */
export function createForms(
  parts: BotParts,
  byName: ReadonlyMap<string, Command>,
): Pick<Bot, "opensForm" | "form" | "submit"> {
  const opened = (opening: Opening): Opened | null =>
    "pressId" in opening ? byPress(byName, opening.pressId) : byCommand(byName, opening);

  return {
    opensForm: (opening) => opened(opening) !== null,

    form: (asked, opening) =>
      guarded(parts, asked, "form", async () => {
        const found = opened(opening);
        if (found === null) throw new Error("asked for a form where there is none");
        const context = await contextIn(parts, asked, found.command);
        return found.make(context, found.args, found.typed);
      }),

    submit: (asked, formId, filled) =>
      guarded(parts, asked, formId.split("~", 1)[0] ?? "", async () => {
        const found = submissionFor(byName, formId);
        if (found === null) throw new Refusal(STALE_FORM);
        return found.take(await contextIn(parts, asked, found.command), found.args, filled);
      }),
  };
}

async function contextIn(parts: BotParts, asked: Asked, command: Command) {
  if (asked.groupId === "") throw new Refusal(inServerOnly(command));
  return contextFor(parts, asked, await standingInGroup(parts.stores, asked), command);
}

function byPress(byName: ReadonlyMap<string, Command>, pressId: string): Opened | null {
  const press = readPress(pressId);
  const command = byName.get(press?.command ?? "");
  const make = own(command?.forms, press?.action);
  return press === null || command === undefined || make === null
    ? null
    : { command, make, args: press.args, typed: {} };
}

function byCommand(
  byName: ReadonlyMap<string, Command>,
  { path, given, texts }: Extract<Opening, { path: unknown }>,
): Opened | null {
  const command = byName.get(path.join(" "));
  const make = own(command?.forms, command?.opens(given) ?? undefined);
  return command === undefined || make === null
    ? null
    : { command, make, args: [], typed: texts ?? {} };
}

function submissionFor(
  byName: ReadonlyMap<string, Command>,
  formId: string,
): { command: Command; take: Submission; args: readonly string[] } | null {
  const press = readPress(formId);
  const command = byName.get(press?.command ?? "");
  const take = own(command?.submissions, press?.action);
  return press === null || command === undefined || take === null
    ? null
    : { command, take, args: press.args };
}

/** An own property only: names come from clients. */
function own<T>(
  record: Readonly<Record<string, T>> | undefined,
  name: string | undefined,
): T | null {
  if (record === undefined || name === undefined || !Object.hasOwn(record, name)) return null;
  return record[name] ?? null;
}
