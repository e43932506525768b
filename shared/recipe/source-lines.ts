import { fail, type Outcome, ok } from "../outcome.ts";
import { RECIPE_LIMITS, type RecipeProblem } from "./problems.ts";

/** One line of a recipe's text: trimmed, with its number counted from 1. Blank lines are kept. */
export interface SourceLine {
  readonly line: number;
  readonly text: string;
}

/**
 * Cuts a text into clean lines, or says which limit it breaks. Everything after this works on at most
 * 400 lines of at most 600 characters, so its work is bounded whatever was sent.
 */
export function sourceLines(
  text: string,
): Outcome<readonly SourceLine[], readonly RecipeProblem[]> {
  const { chars, lines: maxLines, lineChars } = RECIPE_LIMITS;
  if (text.length > chars) return fail([{ code: "text too long", chars: text.length, max: chars }]);
  const lines = text
    .split(/\r\n|[\n\r\u2028\u2029]/u)
    .map((raw, index) => ({ line: index + 1, text: clean(raw) }));
  while (lines.at(-1)?.text === "") lines.pop();
  if (lines.length === 0) return fail([{ code: "text empty" }]);
  if (lines.length > maxLines) {
    return fail([{ code: "too many lines", lines: lines.length, max: maxLines }]);
  }
  const long = lines.filter((line) => line.text.length > lineChars);
  return long.length === 0
    ? ok(lines)
    : fail(long.map(({ line }) => ({ code: "line too long", line, max: lineChars })));
}

/** No control or invisible formatting characters (they can hide or reverse text), single spaces. */
function clean(raw: string): string {
  return raw
    .normalize("NFC")
    .replace(/[\p{Cc}\p{Zs}]/gu, " ")
    .replace(/[\p{Cf}\p{Co}\p{Cs}]/gu, "")
    .replace(/ {2,}/gu, " ")
    .trim();
}
