import { type Json, type JsonObject, list, num, obj, str } from "../json.ts";
import { Faults, type Violation } from "./fault-list.ts";

// Limits of application commands: the platform's developer documentation, interactions/application-commands.
const NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;
const COMMANDS_MAX = 100;
const CHARACTERS_MAX = 8_000;
const SUBCOMMAND = 1;
const SUBCOMMAND_GROUP = 2;
/** Kinds that may carry a closed list or completion: string, integer, number. */
const CHOOSABLE = new Set([3, 4, 10]);

/** Checks a whole list of commands as the bulk overwrite would. */
export function checkCommands(body: Json, scope: "global" | "guild"): readonly Violation[] {
  const faults = new Faults();
  if (!Array.isArray(body)) {
    faults.add("", "LIST_TYPE_CONVERT", "must be a list");
    return faults.list;
  }
  const commands = list(body);
  faults.count("", commands.length, 0, COMMANDS_MAX);
  checkUnique(commands, "", faults);
  commands.forEach((command, index) => {
    checkCommand(obj(command), String(index), scope, faults);
  });
  return faults.list;
}

function checkCommand(
  command: JsonObject,
  at: string,
  scope: "global" | "guild",
  faults: Faults,
): void {
  checkName(command, at, faults);
  faults.text(`${at}.description`, command["description"], 1, 100);
  if ((command["type"] ?? 1) !== 1)
    faults.add(`${at}.type`, "BASE_TYPE_CHOICES", "chat input only");
  if (scope === "guild" && (command["contexts"] ?? command["integration_types"]) !== undefined) {
    faults.add(`${at}.contexts`, "APPLICATION_COMMAND_CONTEXTS", "global commands only");
  }
  if (characters(command) > CHARACTERS_MAX) {
    faults.add(at, "APPLICATION_COMMAND_TOO_LARGE", "8,000 characters in all at most");
  }
  checkOptions(list(command["options"]), `${at}.options`, 0, faults);
}

function checkOptions(options: readonly Json[], at: string, depth: number, faults: Faults): void {
  faults.count(at, options.length, 0, 25);
  checkUnique(options, at, faults);
  const nested = options.filter((o) => isNested(obj(o)));
  if (nested.length > 0 && nested.length < options.length) {
    faults.add(
      at,
      "APPLICATION_COMMAND_OPTIONS_TYPE_INVALID",
      "subcommands and options do not mix",
    );
  }
  let optionalSeen = false;
  options.forEach((value, index) => {
    const option = obj(value);
    const place = `${at}.${index}`;
    checkName(option, place, faults);
    faults.text(`${place}.description`, option["description"], 1, 100);
    if (isNested(option)) {
      if (depth > (option["type"] === SUBCOMMAND ? 1 : 0)) {
        faults.add(place, "APPLICATION_COMMAND_OPTIONS_TYPE_INVALID", "nested too deep");
      }
      checkOptions(list(option["options"]), `${place}.options`, depth + 1, faults);
      return;
    }
    if (option["required"] === true && optionalSeen) {
      faults.add(
        place,
        "APPLICATION_COMMAND_OPTIONS_REQUIRED_INVALID",
        "required options come first",
      );
    }
    optionalSeen ||= option["required"] !== true;
    checkPlainOption(option, place, faults);
  });
}

function isNested(option: JsonObject): boolean {
  return option["type"] === SUBCOMMAND || option["type"] === SUBCOMMAND_GROUP;
}

function checkPlainOption(option: JsonObject, at: string, faults: Faults): void {
  const type = num(option["type"]);
  if (!Number.isInteger(type) || type < 3 || type > 11) {
    faults.add(`${at}.type`, "BASE_TYPE_CHOICES", "not an option type");
  }
  const choices = list(option["choices"]);
  faults.count(`${at}.choices`, choices.length, 0, 25);
  choices.forEach((choice, index) => {
    faults.text(`${at}.choices.${index}.name`, obj(choice)["name"], 1, 100);
    if (type === 3) faults.text(`${at}.choices.${index}.value`, obj(choice)["value"], 1, 100);
  });
  const completes = option["autocomplete"] === true;
  if ((completes || choices.length > 0) && !CHOOSABLE.has(type)) {
    faults.add(at, "APPLICATION_COMMAND_CHOICES", "this type has no choices or completion");
  }
  if (completes && choices.length > 0) {
    faults.add(at, "APPLICATION_COMMAND_AUTOCOMPLETE", "completion and choices exclude each other");
  }
}

function checkName(thing: JsonObject, at: string, faults: Faults): void {
  const name = str(thing["name"]);
  if (!NAME.test(name) || name !== name.toLowerCase()) {
    faults.add(`${at}.name`, "APPLICATION_COMMAND_INVALID_NAME", "Command name is invalid");
  }
}

function checkUnique(things: readonly Json[], at: string, faults: Faults): void {
  const names = things.map((thing) => str(obj(thing)["name"]));
  if (new Set(names).size !== names.length) {
    faults.add(at, "APPLICATION_COMMANDS_DUPLICATE_NAME", "names must be unique");
  }
}

/** Names, descriptions and choice values of a command with everything in it. */
function characters(thing: JsonObject): number {
  const own = str(thing["name"]).length + str(thing["description"]).length;
  const choices = list(thing["choices"])
    .map((choice) => str(obj(choice)["name"]).length + str(obj(choice)["value"]).length)
    .reduce((a, b) => a + b, 0);
  return list(thing["options"]).reduce((sum: number, o) => sum + characters(obj(o)), own + choices);
}
