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
  const lines = withoutMarkup(text)
    .split(/\r\n|[\n\r\u2028\u2029]/u)
    .map((raw, index) => ({ line: index + 1, text: clean(raw) }))
    .flatMap(brokenUp);
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

const MARKUP = /<\/(?:p|li|ul|ol|div|h[1-6]|table|tr|td|body|html)>|<br ?\/?>/iu;
const ENTITIES: Readonly<Record<string, string>> = {
  amp: "&",
  nbsp: " ",
  deg: "°",
  frac12: "½",
  frac14: "¼",
  frac34: "¾",
  ndash: "–",
  mdash: "—",
  rsquo: "’",
  lsquo: "‘",
  quot: '"',
  "#39": "'",
};

/** A page's source that was pasted instead of the page: its blocks are lines, its tags go. */
function withoutMarkup(text: string): string {
  if (!MARKUP.test(text)) return text;
  return (
    text
      .replace(/<(script|style)\b[^<]{0,20000}<\/\1>/giu, " ")
      .replace(/<(?:br|\/(?:p|li|div|h[1-6]|tr|ul|ol))\b[^<>]{0,300}>/giu, "\n")
      // A number must not grow out of two: "<b>200</b>g" is 200 g.
      .replace(/<\/?[a-z][^<>]{0,300}>/giu, " ")
      .replace(/&([a-z0-9#]{2,8});/giu, (all, name: string) => ENTITIES[name] ?? all)
  );
}

/** A paragraph that is longer than a line may be is cut at the ends of its sentences. */
function brokenUp(source: SourceLine): readonly SourceLine[] {
  const max = RECIPE_LIMITS.lineChars;
  if (source.text.length <= max) return [source];
  const lines: string[] = [];
  for (const sentence of source.text.split(/(?<=[.!?]) /u)) {
    const joined = lines.length === 0 ? sentence : `${lines.at(-1)} ${sentence}`;
    if (lines.length > 0 && joined.length <= max) lines[lines.length - 1] = joined;
    else lines.push(sentence);
  }
  return lines.map((text) => ({ line: source.line, text }));
}

/** No control or invisible formatting characters (they can hide or reverse text), single spaces. */
function clean(raw: string): string {
  return (
    raw
      .replace(/[\0\p{Cf}\p{Co}\p{Cs}]/gu, "")
      .replace(/[\p{Cc}\p{Zs}]/gu, " ")
      // Last: what stood between a letter and its accent is gone only now.
      .normalize("NFC")
      .replace(/ {2,}/gu, " ")
      .trim()
  );
}
