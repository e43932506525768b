import type { Command, Option, RawInput } from "../../commands/kit/command.ts";

/** What the platform allows for one text option; the terminal is held to the same. */
const TEXT_MAX = 6_000;

/**
 * What is wrong with the raw input by the command's own declaration: options it does not have, required
 * ones left out, values outside a closed list. A platform may have checked it; nothing relies on that.
 * Sentences for the asker; empty when all is well.
 */
export function inputFaults(command: Command, raw: RawInput): readonly string[] {
  return [
    ...Object.keys(raw).flatMap((name) => unknownOption(command, name)),
    ...command.options.flatMap((option) => optionFault(command, option, raw)),
  ];
}

function unknownOption(command: Command, name: string): string[] {
  if (command.options.some((option) => option.name === name)) return [];
  const known = command.options.map((option) => option.name).join(", ");
  const shown = name.slice(0, 40);
  return [
    known === ""
      ? `${spoken(command)} takes no options, so leave out "${shown}".`
      : `${spoken(command)} has no option "${shown}"; it has ${known}.`,
  ];
}

function optionFault(command: Command, option: Option, raw: RawInput): string[] {
  // Own properties only: an option may be called "constructor" by somebody who wants to see what happens.
  const value = Object.hasOwn(raw, option.name) ? raw[option.name] : undefined;
  if (value === undefined) {
    if (!option.required) return [];
    return [`${spoken(command)} needs ${option.name}: ${lowerFirst(option.description)}.`];
  }
  if (option.kind === "file") {
    return typeof value === "string" ? [`${option.name} must be an attached file.`] : [];
  }
  if (typeof value !== "string") return [`${option.name} is text, not a file.`];
  if (value.length > TEXT_MAX)
    return [`${option.name} is too long; keep it under 6,000 characters.`];
  return closedListFault(option, value);
}

function closedListFault(option: Option, value: string): string[] {
  const allowed = option.kind === "yes-no" ? ["yes", "no"] : option.choices;
  if (allowed === undefined || allowed.includes(value)) return [];
  return [`${option.name} must be one of: ${allowed.join(", ")}.`];
}

/** The command as a person types it. */
export function spoken(command: Command): string {
  return `/${command.path.join(" ")}`;
}

export function inServerOnly(command: Command): string {
  return `${spoken(command)} works in your group's server. Type it in a channel there; only you will see the answer.`;
}

function lowerFirst(sentence: string): string {
  const plain = sentence.replace(/[.\s]+$/u, "");
  // "ISO date" and the like keep their capitals.
  return /^\p{Lu}\p{Ll}/u.test(plain) ? plain.charAt(0).toLowerCase() + plain.slice(1) : plain;
}
