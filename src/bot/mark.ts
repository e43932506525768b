import type { Form } from "../../commands/kit/form.ts";
import { PRESS_ID_MAX } from "../../commands/kit/press.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import { type MemberId, memberId } from "../../shared/ids.ts";

/** The arguments of a press in a direct message, and the member its button was marked for. */
export interface MarkedPress {
  readonly args: readonly string[];
  readonly markedFor: MemberId | null;
}

const MARK = "@";

/**
 * Marks the buttons of an answer in a direct message with the member it was given to: "Undo" names no
 * lot, and the platform tells no group there. A mark is no proof; the presser is checked against it.
 */
export function markReply(reply: Reply, member: MemberId): Reply {
  const marked = <T extends { readonly id: string }>(control: T): T => mark(control, member);
  return { ...reply, buttons: reply.buttons.map(marked), choices: reply.choices.map(marked) };
}

/** The same for a form, which comes back without a group as well. */
export function markForm(form: Form, member: MemberId): Form {
  return mark(form, member);
}

function mark<T extends { readonly id: string }>(control: T, member: MemberId): T {
  const id = `${control.id}~${MARK}${member}`;
  return id.length <= PRESS_ID_MAX ? { ...control, id } : control;
}

/** Takes the mark off again. */
export function readMark(args: readonly string[]): MarkedPress {
  const last = args.at(-1);
  return last?.startsWith(MARK) === true
    ? { args: args.slice(0, -1), markedFor: memberId(last.slice(MARK.length)) }
    : { args, markedFor: null };
}
