import type { Print } from "../../shared/picture/print.ts";
import type { Picture } from "../../shared/picture/types.ts";

/**
 * What a command answers: a small platform-free value. `src/discord/` turns it into message
 * components, `src/terminal/` into text. All text is plain: renderers escape markup and mentions.
 */
export interface Reply {
  /** The answer itself, in one line. */
  readonly heading: string;
  /** Shown first and loudly, right under the heading: what may hurt this very member. Else empty. */
  readonly alerts: readonly string[];
  readonly parts: readonly Part[];
  /** Shown last, only where they apply. */
  readonly cautions: readonly string[];
  /** At most three are shown in the first row; the rest follow below. At most ten in all. */
  readonly buttons: readonly Button[];
  readonly choices: readonly Choice[];
  /** At most four. Each has its text equivalent. */
  readonly pictures: readonly Picture[];
  /** Sheets and cards to print; at most five. What they say stands in the parts too. */
  readonly prints: readonly Print[];
  readonly files: readonly ReplyFile[];
  /** "private": only the asker sees it. "shown": the whole channel does. */
  readonly audience: "private" | "shown";
}

export type Part =
  | { readonly kind: "text"; readonly lines: readonly string[] }
  /** Short rows of figures; `figure` carries its unit. */
  | { readonly kind: "rows"; readonly title: string | null; readonly rows: readonly Row[] };

export interface Row {
  readonly label: string;
  readonly figure: string;
  readonly note?: string;
}

export interface Button {
  /** Made by `writePress`; at most 100 characters. */
  readonly id: string;
  /** At most 34 characters. */
  readonly label: string;
  readonly weight: "main" | "plain" | "grave";
}

/** A pick-one list (at most 25). The picked value arrives as the last argument of the press. */
export interface Choice {
  readonly id: string;
  readonly placeholder: string;
  readonly options: readonly {
    readonly value: string;
    readonly label: string;
    readonly hint?: string;
  }[];
}

/**
 * A file that comes with a reply. Text goes out as UTF-8. Where files cannot be attached (the terminal), text
 * without a media type is printed, everything else written to disk and its path shown.
 */
export type ReplyFile =
  | { readonly name: string; readonly text: string; readonly mediaType?: string }
  /** At most 8 MB. */
  | { readonly name: string; readonly bytes: Uint8Array; readonly mediaType: string };

/** A reply with sensible empties: name only what there is. */
export function reply(heading: string, rest: Partial<Omit<Reply, "heading">> = {}): Reply {
  return {
    heading,
    alerts: [],
    parts: [],
    cautions: [],
    buttons: [],
    choices: [],
    pictures: [],
    prints: [],
    files: [],
    audience: "private",
    ...rest,
  };
}

export function text(...lines: string[]): Part {
  return { kind: "text", lines };
}

export function rows(title: string | null, list: readonly Row[]): Part {
  return { kind: "rows", title, rows: list };
}
