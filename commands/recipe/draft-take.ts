import type { DraftId } from "../../shared/ids.ts";
import { RECIPE_LIMITS } from "../../shared/recipe/problems.ts";
import { sourceLines } from "../../shared/recipe/source-lines.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { RecipeDraft } from "../kit/ports.ts";
import { type Reply, reply, text } from "../kit/reply.ts";
import { sayRecipeProblem } from "../kit/say-recipe-problem.ts";
import { withPlainLines } from "./draft-form.ts";
import { plainTextOf } from "./draft-json.ts";
import { draftReply } from "./draft-reply.ts";
import { type KeepProblem, keepDraft, TOO_MANY } from "./draft-store.ts";

/** Four bytes for each of the 20,000 characters that a recipe may have. */
export const FILE_MAX_BYTES = 80_000;

/** What a coach sent, and as which draft it is kept. */
interface Sent {
  readonly id: DraftId;
  readonly text: string;
  readonly takenFor: RecipeDraft["takenFor"];
}

/** Takes the text of an attached file: what cannot be kept is refused, for the coach has the file. */
export async function takeFile(context: Context, sent: Sent): Promise<Reply> {
  const plain = plainTextOf(withPlainLines(sent.text));
  if (!plain.ok) throw new Refusal([...plain.problem, NOTHING]);
  refuseEmpty(plain.value.text);
  refuseTooManyLines(plain.value.text);
  const kept = await keepDraft(context, sent.id, plain.value.text, sent.takenFor);
  if (!kept.ok) throw new Refusal([sayKeepProblem(kept.problem), NOTHING]);
  return draftReply(context, kept.value, { notes: plain.value.notes });
}

/**
 * Takes a text typed into a form: it may be nowhere else, so a document that cannot be read is kept as it
 * came, and what cannot be kept comes back as a file.
 */
export async function takeTyped(context: Context, sent: Sent): Promise<Reply> {
  const plain = plainTextOf(sent.text);
  const plainText = plain.ok ? plain.value.text : sent.text;
  refuseEmpty(plainText);
  const kept = await keepDraft(context, sent.id, plainText, sent.takenFor);
  if (!kept.ok) return cameBack(kept.problem, sent.text);
  return draftReply(context, kept.value, { notes: plain.ok ? plain.value.notes : [] });
}

const NOTHING = "Nothing was kept or published.";

function refuseEmpty(sent: string): void {
  if (sent.trim() !== "") return;
  throw new Refusal(
    "There is no text: write a title, “Makes 6 portions”, the ingredients and the steps.",
  );
}

/** A file of so many lines is no recipe with a slip in it: there is nothing in it to mend. */
function refuseTooManyLines(sent: string): void {
  const lines = sourceLines(sent);
  const problem = lines.ok ? undefined : lines.problem.find((one) => one.code === "too many lines");
  if (problem !== undefined) throw new Refusal([sayRecipeProblem(problem), NOTHING]);
}

function sayKeepProblem(problem: KeepProblem): string {
  switch (problem.code) {
    case "too many drafts":
      return TOO_MANY;
    case "too long":
      return `The text has ${problem.chars} characters: a recipe may have ${RECIPE_LIMITS.chars}.`;
  }
}

function cameBack(problem: KeepProblem, sent: string): Reply {
  return reply(sayKeepProblem(problem), {
    parts: [text("Your text was not kept here: it is in the attached file.")],
    files: [{ name: "recipe.txt", text: sent }],
  });
}
