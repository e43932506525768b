import type { Command } from "../../commands/kit/command.ts";
import { type Move, parseMove } from "./parse-move.ts";
import { parseOptions } from "./parse-options.ts";

/** What a typed line asks for. */
export type Line =
  | { readonly kind: "nothing" }
  | {
      readonly kind: "command";
      readonly command: Command;
      readonly texts: Readonly<Record<string, string>>;
      /** Option name -> path of the file to read. */
      readonly files: Readonly<Record<string, string>>;
    }
  | { readonly kind: "pick"; readonly number: number }
  | { readonly kind: "as"; readonly name: string; readonly isCoach: boolean }
  /** `move` null: only tell what time it is. */
  | { readonly kind: "now"; readonly move: Move | null }
  | { readonly kind: "help" }
  | { readonly kind: "quit" }
  /** Not understood; the sentence says what to type. */
  | { readonly kind: "unclear"; readonly sentence: string };

/** The longest line that is read at all; the platform's own limit for one option. */
const LINE_MAX = 6_000;
const NAME_MAX = 32;

export function parseLine(line: string, commands: readonly Command[]): Line {
  const typed = line.trim();
  if (typed === "" || typed.startsWith("#")) return { kind: "nothing" };
  if (typed.length > LINE_MAX)
    return unclear("That line is too long; keep it under 6,000 characters.");
  if (typed.startsWith("/")) return parseCommand(typed, commands);
  const [word = "", ...others] = typed.split(/\s+/u);
  return parseSwitch(word.toLowerCase(), others.join(" "), typed);
}

function parseSwitch(word: string, rest: string, typed: string): Line {
  if (/^\d{1,4}$/u.test(typed)) return { kind: "pick", number: Number(typed) };
  if (word === "press") return parsePress(rest);
  if (word === "as") return parseAs(rest);
  if (word === "now") return parseNow(rest);
  if (word === "help" && rest === "") return { kind: "help" };
  if ((word === "quit" || word === "exit") && rest === "") return { kind: "quit" };
  return unclear(
    "Commands begin with a slash, such as /stock. A number picks a button; help tells the rest.",
  );
}

function parsePress(rest: string): Line {
  return /^\d{1,4}$/u.test(rest)
    ? { kind: "pick", number: Number(rest) }
    : unclear("Type press and the number of a button, such as press 1.");
}

function parseAs(rest: string): Line {
  const match = /^(.*?)(?:\s+(coach))?$/iu.exec(rest);
  const name = (match?.[1] ?? "").trim();
  if (name === "" || name.length > NAME_MAX) {
    return unclear("Type as and a name of up to 32 letters, such as as Anna, or as Kim coach.");
  }
  return { kind: "as", name, isCoach: match?.[2] !== undefined };
}

function parseNow(rest: string): Line {
  if (rest === "") return { kind: "now", move: null };
  const move = parseMove(rest);
  return move === null
    ? unclear(
        "Type where the clock shall move: now +2h, now +1d, now tomorrow 08:00, now sun 18:30, or now 2026-10-24 18:30.",
      )
    : { kind: "now", move };
}

function parseCommand(typed: string, commands: readonly Command[]): Line {
  const words = typed.slice(1).split(/\s+/u);
  const first = (words[0] ?? "").toLowerCase();
  const family = commands.filter(({ path }) => path[0] === first);
  if (family.length === 0) return unclear(noSuchCommand(first, commands));
  const second = (words[1] ?? "").toLowerCase();
  const command =
    family.find(({ path }) => path[1] === second) ?? family.find(({ path }) => path.length === 1);
  if (command === undefined) {
    const names = family.map(({ path }) => path.join(" ")).join(", /");
    return unclear(`/${first} needs one more word: /${names}.`);
  }
  return parseRest(command, afterWords(typed, command.path.length));
}

function parseRest(command: Command, rest: string): Line {
  const options = parseOptions(rest, command.options);
  if (!options.ok) return unclear(options.problem);
  const isFile = (name: string): boolean =>
    command.options.some((option) => option.name === name && option.kind === "file");
  const entries = Object.entries(options.value);
  return {
    kind: "command",
    command,
    texts: Object.fromEntries(entries.filter(([name]) => !isFile(name))),
    files: Object.fromEntries(entries.filter(([name]) => isFile(name))),
  };
}

/** What follows the first `count` words, spaces and all. */
export function afterWords(typed: string, count: number): string {
  const match = new RegExp(`^(?:\\S+(?:\\s+|$)){${count}}`, "u").exec(typed);
  return typed.slice(match?.[0].length ?? typed.length);
}

function noSuchCommand(word: string, commands: readonly Command[]): string {
  const names = [...new Set(commands.map(({ path }) => `/${path[0]}`))].join(", ");
  return `There is no command /${word.slice(0, 32)}. There are ${names}; help tells what they do.`;
}

function unclear(sentence: string): Line {
  return { kind: "unclear", sentence };
}
