import type { Command, Option, OtherOptions } from "../../commands/kit/command.ts";
import type { Bot } from "../bot/face.ts";
import { afterWords } from "./parse-line.ts";
import { marksIn } from "./parse-options.ts";
import type { TerminalSession } from "./session.ts";

/** What Tab offers, and the end of the line that each offer would stand for. */
export type Completion = readonly [offers: string[], replaced: string];

export interface CompleteParts {
  readonly bot: Bot;
  readonly commands: readonly Command[];
  readonly session: TerminalSession;
}

const SWITCHES = ["as ", "now ", "press ", "help", "quit"];

/** Commands, then names of options, then their values; for switches the words and the people known. */
export async function completeLine(parts: CompleteParts, line: string): Promise<Completion> {
  if (!line.startsWith("/")) return completeSwitch(parts.session, line);
  const names = parts.commands.map(({ path }) => `/${path.join(" ")}`);
  // The longest name first: /recipe card before a /recipe, should there ever be one.
  const command = parts.commands
    .toSorted((a, b) => b.path.length - a.path.length)
    .find(({ path }) => line.toLowerCase().startsWith(`/${path.join(" ")} `));
  if (command === undefined) return [startingWith(names, line).map((name) => `${name} `), line];
  return completeOptions(parts, command, afterWords(line, command.path.length));
}

function completeSwitch(session: TerminalSession, line: string): Completion {
  const name = /^as\s+(.*)$/iu.exec(line)?.[1];
  if (name === undefined) return [startingWith(SWITCHES, line), line];
  const people = session.people().map((person) => person.name);
  return [startingWith(people, name), name];
}

async function completeOptions(
  parts: CompleteParts,
  command: Command,
  rest: string,
): Promise<Completion> {
  const marks = marksIn(rest, command.options);
  const last = marks.at(-1);
  const lastWord = /\S*$/u.exec(rest)?.[0] ?? "";
  const used = new Set(marks.map(({ option }) => option.name));
  const names = command.options.filter(({ name }) => !used.has(name)).map(({ name }) => `${name}:`);
  const offerNames: Completion = [startingWith(names, lastWord), lastWord];
  if (last === undefined) return offerNames;
  const typed = rest.slice(last.valueFrom).trimStart();
  if (typed !== "" && /\s$/u.test(typed)) return offerNames;
  const others = Object.fromEntries(
    marks.slice(0, -1).map(({ option, valueFrom }, index) => {
      const value = rest.slice(valueFrom, marks[index + 1]?.from).trim();
      return [option.name, value.replace(/^"|"$/gu, "")];
    }),
  );
  const values = await valuesFor(parts, command, last.option, typed.replace(/^"/u, ""), others);
  return values.length > 0 ? [values, typed] : offerNames;
}

async function valuesFor(
  { bot, session }: CompleteParts,
  command: Command,
  option: Option,
  typed: string,
  others: OtherOptions,
): Promise<string[]> {
  if (option.kind === "yes-no") return startingWith(["yes", "no"], typed);
  if (option.choices !== undefined) return startingWith(option.choices, typed);
  if (option.complete === undefined) return [];
  const offers = await bot.complete(session.asked(), command.path, option.name, typed, others);
  return offers.map(({ value }) => (/:\S|^"/u.test(value) ? `"${value}"` : value));
}

function startingWith(words: readonly string[], typed: string): string[] {
  return words.filter((word) => word.toLowerCase().startsWith(typed.toLowerCase()));
}
