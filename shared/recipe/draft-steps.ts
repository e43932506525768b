import type { Draft } from "./draft.ts";
import { looksLikeProse } from "./line-looks.ts";
import { readKeeping } from "./read-keeping.ts";

export function takeStep(draft: Draft, said: string, numbered: boolean, line: number): void {
  // A number in the list of ingredients begins the steps.
  if (draft.section === "ingredients") draft.section = "steps";
  const above = draft.aboveStep;
  if (said === "") {
    if (numbered) draft.aboveStep = { text: above?.text ?? "", line, numbered };
    return;
  }
  draft.aboveStep = null;
  const text = above === null || above.text === "" ? said : `${headed(above.text)} ${said}`;
  draft.steps.push({ text, line, numbered: numbered || (above?.numbered ?? false) });
  if (readKeeping(said)?.some((clause) => clause.keeping.fridgeDays !== null)) {
    draft.remarks.push({ code: "keeping inside a step", line });
  }
}

/** "## Sauce" and "For the sauce" before a step: "Sauce:". */
function headed(heading: string): string {
  const text = heading.replace(/^#{1,6} ?|\*\*|__/gu, "").trim();
  return /[:.!?]$/u.test(text) ? text : `${text}:`;
}

/** A heading that no step follows is a step of its own: nothing is lost. */
export function flushAbove(draft: Draft): void {
  const above = draft.aboveStep;
  draft.aboveStep = null;
  if (above !== null && above.text !== "") draft.steps.push({ ...above, numbered: true });
}

/** Sentences below the list where no heading says that steps begin. */
export function isFirstStep(draft: Draft, text: string): boolean {
  const hasList = (draft.parts.at(-1)?.lines.length ?? 0) > 0;
  const isBelow = draft.section === "ingredients" && draft.afterBlank && !draft.hasMethod;
  return isBelow && hasList && looksLikeProse(text);
}

/** Among numbered steps a plain line goes on with the step above it; after a gap it is a note. */
export function takePlainStep(draft: Draft, text: string, line: number): void {
  const last = draft.steps.at(-1);
  if (last === undefined || !last.numbered || draft.aboveStep !== null)
    takeStep(draft, text, false, line);
  else if (draft.afterBlank) draft.notes.push(text);
  else last.text = `${last.text} ${text}`;
}
