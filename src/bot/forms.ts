import {
  type Command,
  type FormMaker,
  type OtherOptions,
  Refusal,
  type Submission,
} from "../../commands/kit/command.ts";
import type { Context } from "../../commands/kit/context.ts";
import type { Form } from "../../commands/kit/form.ts";
import { readPress } from "../../commands/kit/press.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import { type BotParts, contextFor, guarded } from "./ask.ts";
import { inServerOnly } from "./check-input.ts";
import type { Asked, Bot, Opening } from "./face.ts";
import { markForm, markReply, readMark } from "./mark.ts";
import { standingInGroup, standingOrRefuse } from "./who.ts";

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
        const { args, context, mark } = await contextIn(parts, asked, found);
        return mark(await found.make(context, args, found.typed));
      }),

    submit: (asked, formId, filled) =>
      guarded(parts, asked, formId.split("~", 1)[0] ?? "", async () => {
        const found = submissionFor(byName, formId);
        if (found === null) throw new Refusal(STALE_FORM);
        const { args, context, markAnswer } = await contextIn(parts, asked, found);
        return markAnswer(await found.take(context, args, filled));
      }),
  };
}

/** Who asks, and how what they are answered is marked: a direct message tells no group. */
interface Standpoint {
  readonly context: Context;
  readonly args: readonly string[];
  readonly mark: (form: Form) => Form;
  readonly markAnswer: (reply: Reply) => Reply;
}

async function contextIn(
  parts: BotParts,
  asked: Asked,
  { command, args }: { readonly command: Command; readonly args: readonly string[] },
): Promise<Standpoint> {
  if (asked.groupId !== "") {
    const context = await contextFor(
      parts,
      asked,
      await standingInGroup(parts.stores, asked),
      command,
    );
    return { context, args, mark: (form) => form, markAnswer: (reply) => reply };
  }
  // What a command opens needs its group: only a button of ours says whose it is.
  if (args.length === 0) throw new Refusal(inServerOnly(command));
  const press = readMark(args);
  const standing = await standingOrRefuse(parts, asked, press);
  const { id } = standing.member;
  return {
    context: await contextFor(parts, asked, standing, command),
    args: press.args,
    mark: (form) => markForm(form, id),
    markAnswer: (reply) => markReply(reply, id),
  };
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
