import { RECIPE_LIMITS } from "../../shared/recipe/problems.ts";
import { type FilledForm, FORM_LIMITS, type Form, type FormField } from "../kit/form.ts";
import type { RecipeDraft } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";

/** The platform's limit for the fields of one form. */
const FIELDS_MAX = 5;
/** A new recipe has room for three pages. */
const FIELDS_NEW = 3;
const FIELD_NAMES = ["text", "more1", "more2", "more3", "more4"] as const;
const LINE_ENDS = /\r\n|[\r\u2028\u2029]/gu;

/** The form for a recipe's text, over as many fields as it takes and one to go on in; null when it does not fit. */
export function draftForm(draft: Pick<RecipeDraft, "id" | "text">, title: string): Form | null {
  const pages = pagesOf(draft.text);
  if (pages === null) return null;
  const wanted = draft.text === "" ? FIELDS_NEW : pages.length + 1;
  const fields = FIELD_NAMES.slice(0, Math.min(FIELDS_MAX, wanted)).map(
    (name, at): FormField => ({
      name,
      label: at === 0 ? "Recipe" : "Recipe, continued",
      hint:
        at === 0
          ? "Title, “Makes 6 portions”, ingredients a line each, Steps, “Keeps 3 days in the fridge”"
          : "Only if it is long: goes on below the field above, on a new line",
      value: pages[at] ?? "",
      required: at === 0,
      isLong: true,
    }),
  );
  return {
    id: writePress("recipe publish", "send", draft.id),
    title: title.slice(0, FORM_LIMITS.titleChars),
    fields,
  };
}

/** The fields of a form put together again, a line break between them; empty fields count as absent. */
export function textOfForm(filled: FilledForm): string {
  return FIELD_NAMES.map((name) => (Object.hasOwn(filled, name) ? (filled[name] ?? "") : ""))
    .map(withPlainLines)
    .filter((page) => page.trim() !== "")
    .join("\n");
}

/** A text with line feeds alone, as forms and files bring all kinds, and without NUL, which means nothing. */
export function withPlainLines(text: string): string {
  return text
    .replaceAll("\0", "")
    .replace(LINE_ENDS, "\n")
    .replace(/^\uFEFF/u, "");
}

/**
 * A text cut into pages that a field holds, to be joined by line breaks again; null when more are needed
 * than a form has. Cut between two lines that say something where there are such: a blank line at the
 * edge of a field is easily lost, and blank lines part blocks.
 */
function pagesOf(text: string): readonly string[] | null {
  const pages: string[] = [];
  for (let rest = text; rest.length > 0; ) {
    if (pages.length === FIELDS_MAX) return null;
    const at = rest.length <= FORM_LIMITS.valueChars ? rest.length : cutAt(rest);
    if (at < 0) return null;
    pages.push(rest.slice(0, at));
    rest = rest.slice(at + 1);
  }
  return pages;
}

/** The place of the line break to cut at; -1 when the first line alone is too long. */
function cutAt(text: string): number {
  const max = FORM_LIMITS.valueChars;
  const least = max - RECIPE_LIMITS.lineChars;
  for (let at = text.lastIndexOf("\n", max); at > least; at = text.lastIndexOf("\n", at - 1)) {
    if (text[at - 1] !== "\n" && text[at + 1] !== "\n") return at;
  }
  const last = text.lastIndexOf("\n", max);
  return last > 0 ? last : -1;
}
