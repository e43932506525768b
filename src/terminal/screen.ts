import type { Reply } from "../../commands/kit/reply.ts";
import { COLUMNS, wrap } from "./plain.ts";
import { type KeepFile, type Pick, renderReply } from "./render.ts";

/** A numbered button or list entry, with the place its message stands in. */
export interface Picked extends Pick {
  /** In a direct message the platform tells no group. */
  readonly isDirect: boolean;
}

/** What is written for people to read, and the numbers that can be picked from it. */
export interface Screen {
  /** A sentence, broken at the width of the screen. */
  line(text: string): void;
  /** A line of our own that is laid out already. */
  exact(text: string): void;
  show(reply: Reply, where: { readonly header?: string; readonly isDirect: boolean }): void;
  /** A new thing was typed: the next message that has buttons counts from 1 again. */
  beginTurn(): void;
  find(number: number): Picked | null;
}

export function createScreen(write: (text: string) => void, keep?: KeepFile): Screen {
  let picks: readonly Picked[] = [];
  // Numbers stay good until something newer can be picked: switching person must not clear them.
  let isFresh = false;
  return {
    line: (text) => write(`${wrap(text, COLUMNS).join("\n")}\n`),
    exact: (text) => write(`${text}\n`),
    show(reply, { header, isDirect }) {
      const kept = isFresh ? [] : picks;
      const rendered = renderReply(reply, kept.length + 1, keep);
      if (rendered.picks.length > 0) {
        picks = [...kept, ...rendered.picks.map((pick) => ({ ...pick, isDirect }))];
        isFresh = false;
      }
      write(`${header === undefined ? "" : `${header}\n`}${rendered.text}\n`);
    },
    beginTurn() {
      isFresh = true;
    },
    find: (number) => picks[number - 1] ?? null,
  };
}
