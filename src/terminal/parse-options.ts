import type { Option } from "../../commands/kit/command.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";

/** What stands after a command: option name -> value as typed, quotes taken off. */
export type TypedOptions = Readonly<Record<string, string>>;

interface Mark {
  readonly option: Option;
  /** Where `name:` begins, and where its value does. */
  readonly from: number;
  readonly valueFrom: number;
}

/**
 * Reads `recipe:Smoky bake portions:8`: a value runs until the next option of this command or the
 * end; quotes keep one together that holds such a name. The problem is a sentence.
 */
export function parseOptions(
  rest: string,
  options: readonly Option[],
): Outcome<TypedOptions, string> {
  const marks = marksIn(rest, options);
  const lead = rest.slice(0, marks[0]?.from ?? rest.length).trim();
  if (lead !== "") return fail(notAnOption(lead, options));
  const typed: Record<string, string> = {};
  for (const [index, { option, valueFrom }] of marks.entries()) {
    const value = rest.slice(valueFrom, marks[index + 1]?.from ?? rest.length).trim();
    if (option.name in typed) return fail(`${option.name} is given twice; leave one out.`);
    const read = readValue(option.name, value, options);
    if (!read.ok) return read;
    typed[option.name] = read.value;
  }
  return ok(typed);
}

function readValue(
  name: string,
  value: string,
  options: readonly Option[],
): Outcome<string, string> {
  if (value.startsWith('"')) {
    const inside = /^"([^"]*)"$/u.exec(value)?.[1];
    if (inside === undefined) return fail(`The quotes of ${name} are not closed at its end.`);
    return inside.trim() === "" ? fail(emptyValue(name)) : ok(inside);
  }
  const stray = strayName(value);
  if (stray !== null) {
    return fail(
      `There is no option "${stray}"${knownNames(options)} If it belongs to the text, put the text in quotes: ${name}:"…".`,
    );
  }
  return value === "" ? fail(emptyValue(name)) : ok(value);
}

function emptyValue(name: string): string {
  return `${name} is empty; type a value or leave it out.`;
}

/** Known option names outside quotes, in order. One pass, so hostile text costs no more than its length. */
export function marksIn(rest: string, options: readonly Option[]): readonly Mark[] {
  const byName = new Map(options.map((option) => [option.name, option]));
  const marks: Mark[] = [];
  for (const match of rest.matchAll(
    /(?<=^|\s)([\p{L}\p{N}_-]{1,32}):|(?<=:\s{0,3})"[^"]*(?:"|$)/gu,
  )) {
    const option = byName.get(match[1]?.toLowerCase() ?? "");
    if (option === undefined) continue;
    marks.push({ option, from: match.index, valueFrom: match.index + match[0].length });
  }
  return marks;
}

/** A word right before a colon, with text right behind it: most likely a mistyped option. */
function strayName(value: string): string | null {
  return /(?:^|\s)(\p{L}[\p{L}_-]{0,31}):(?=\S)/u.exec(value)?.[1] ?? null;
}

function notAnOption(lead: string, options: readonly Option[]): string {
  const named = /^([\p{L}\p{N}_-]{1,32}):/u.exec(lead)?.[1];
  if (named !== undefined) return `There is no option "${named}"${knownNames(options)}`;
  const [first] = options;
  if (first === undefined) return `This command takes no options; leave out "${shorten(lead)}".`;
  return `Which option is "${shorten(lead)}"? Write its name and a colon before it, such as ${first.name}:${shorten(lead)}`;
}

function knownNames(options: readonly Option[]): string {
  const names = options.map(({ name }) => name).join(", ");
  return names === "" ? "; this command takes none." : `; this command knows ${names}.`;
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
