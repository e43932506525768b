import { list, obj, str } from "./json.ts";
import { flatten } from "./rules/component-rules.ts";
import type { Message } from "./world.ts";

/** What a person sees of a message. */

/** The text of a message as sent, components first to last. */
export function textOf(message: Message): string {
  const displays = flatten(message.components).filter((c) => c["type"] === 10);
  return [message.content, ...displays.map((c) => str(c["content"]))].filter(Boolean).join("\n");
}

export interface ShownButton {
  readonly id: string;
  readonly label: string;
  /** Row in which it stands, counted from 0 over the rows of the message. */
  readonly row: number;
}

export function buttonsOf(message: Message): readonly ShownButton[] {
  const rows = message.components.map(obj).filter((c) => c["type"] === 1);
  return rows.flatMap((row, index) =>
    list(row["components"])
      .map(obj)
      .filter((c) => c["type"] === 2)
      .map((c) => ({ id: str(c["custom_id"]), label: str(c["label"]), row: index })),
  );
}

export interface ShownSelect {
  readonly id: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

export function selectsOf(message: Message): readonly ShownSelect[] {
  return flatten(message.components)
    .filter((c) => c["type"] === 3)
    .map((c) => ({
      id: str(c["custom_id"]),
      options: list(c["options"]).map((o) => ({
        value: str(obj(o)["value"]),
        label: str(obj(o)["label"]),
      })),
    }));
}

export function filesOf(message: Message): readonly { name: string; text: string }[] {
  return message.files.map(({ name, bytes }) => ({ name, text: new TextDecoder().decode(bytes) }));
}
