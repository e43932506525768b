import type { Command, OtherOptions, Suggestion } from "../../commands/kit/command.ts";
import { type BotParts, contextFor } from "./ask.ts";
import type { Asked } from "./face.ts";
import { isCoachOf, standingInGroup } from "./who.ts";

const SUGGESTIONS_MAX = 25;
const SUGGESTION_TEXT_MAX = 100;

/** What is being typed where. */
interface Typing {
  readonly option: string;
  readonly typed: string;
  readonly others: OtherOptions;
}

/** Completions of an option, as many and as long as the platform takes; none for who may not use the command. */
export async function suggest(
  parts: BotParts,
  asked: Asked,
  command: Command,
  at: Typing,
): Promise<readonly Suggestion[]> {
  const option = command.options.find(({ name }) => name === at.option);
  if (option?.complete === undefined || asked.groupId === "") return [];
  const standing = await standingInGroup(parts.stores, asked);
  if (command.who === "coach" && !isCoachOf(standing.group, asked.actor)) return [];
  const context = await contextFor(parts, asked, standing, command);
  const all = await option.complete(context, at.typed.slice(0, SUGGESTION_TEXT_MAX), at.others);
  return all
    .filter(({ value }) => fits(value))
    .slice(0, SUGGESTIONS_MAX)
    .map(shortened);
}

/** A value is never cut: half a name would find something else, or nothing. */
function fits(value: string): boolean {
  return value.length >= 1 && value.length <= SUGGESTION_TEXT_MAX;
}

function shortened({ label, value }: Suggestion): Suggestion {
  if (label === "") return { label: value, value };
  if (label.length <= SUGGESTION_TEXT_MAX) return { label, value };
  // `isWellFormed` is not in Node's types yet; a cut pair of surrogates is dropped by hand.
  const cut = label.slice(0, SUGGESTION_TEXT_MAX - 1).replace(/[\uD800-\uDBFF]$/u, "");
  return { label: `${cut}…`, value };
}
