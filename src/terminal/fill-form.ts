import type { FilledForm, Form, FormField } from "../../commands/kit/form.ts";
import type { Screen } from "./screen.ts";

/** A form being filled in at the terminal, field by field. */
export interface Filling {
  readonly form: Form;
  /** Takes a typed line: the texts when the last field is done, "left" when the form is left. */
  take(line: string): FilledForm | "more" | "left";
}

const DONE = ".";
const LEAVE = "..";

/** Shows the form's first field and gives back what takes the lines. */
export function startFilling(form: Form, screen: Screen): Filling {
  const filled: Record<string, string> = {};
  let at = 0;
  let lines: string[] = [];
  const askNext = (): FilledForm | "more" => {
    const next = form.fields[at];
    if (next === undefined) return filled;
    showField(next, screen);
    return "more";
  };
  screen.line(form.title);
  askNext();

  return {
    form,
    take(line) {
      const field = form.fields[at];
      if (line.trim() === LEAVE || field === undefined) return "left";
      if (field.isLong && line.trimEnd() !== DONE) {
        lines.push(line);
        return "more";
      }
      const text = textOf(field, lines, line);
      if (text === null) {
        screen.line("This one is needed; type it, or .. to leave the form.");
        return "more";
      }
      filled[field.name] = text;
      at += 1;
      lines = [];
      return askNext();
    },
  };
}

function showField({ label, hint, value, isLong }: FormField, screen: Screen): void {
  screen.line(hint === undefined ? `${label}:` : `${label} (${hint}):`);
  const keep = value === "" ? "" : " nothing typed keeps what stands here;";
  if (value !== "") for (const line of value.split("\n")) screen.exact(`  | ${line}`);
  screen.line(
    isLong
      ? `(any number of lines, then a line with only a dot;${keep} two dots leave the form)`
      : `(one line;${keep} two dots leave the form)`,
  );
}

/** What was typed, or else what stood there; null when that is nothing and something is needed. */
function textOf(field: FormField, lines: readonly string[], last: string): string | null {
  const typed = field.isLong ? lines.join("\n") : last.trim();
  const text = typed.trim() === "" ? field.value : typed;
  return text.trim() === "" && field.required ? null : text;
}
