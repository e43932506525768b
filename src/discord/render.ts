import {
  type AllowedMentionsTypes,
  type APIMessageTopLevelComponent,
  ComponentType,
  MessageFlags,
  type RawFile,
} from "discord.js";
import type { Reply, ReplyFile } from "../../commands/kit/reply.ts";
import { cut } from "./escape.ts";
import { renderControls } from "./render-controls.ts";
import { fitText } from "./render-text.ts";

const FILES_MAX = 10;
const FILE_NAME_MAX = 60;
/** Below the platform's 10 MiB for one file, also when every character takes four bytes. */
const FILE_TEXT_MAX = 2_000_000;
const WHOLE_ANSWER = "whole-answer.txt";

export interface RenderExtras {
  /** The one member this message may ping; named before the heading. */
  readonly mention?: string;
  /** Small lines before the cautions. */
  readonly notes?: readonly string[];
  /** A number by which the message can be found again; kept by the platform as a component's id. */
  readonly marker?: number;
}

/** A message as the platform's interface takes it. */
export interface RenderedMessage {
  readonly flags: number;
  readonly components: APIMessageTopLevelComponent[];
  readonly allowed_mentions: { parse: AllowedMentionsTypes[]; users: string[] };
  /** Lists every file, so that an edit takes away the files of the message before. */
  readonly attachments: { id: number; filename: string }[];
}

export interface Rendered {
  readonly message: RenderedMessage;
  readonly files: RawFile[];
}

/** Turns a reply into a message within the platform's limits. Never throws. */
export function render(reply: Reply, extras: RenderExtras = {}): Rendered {
  const mention = extras.mention !== undefined && isId(extras.mention) ? extras.mention : null;
  const text = fitText(reply, extras.notes);
  const files = nameFiles([
    ...(text.wholeText === null ? [] : [{ name: WHOLE_ANSWER, text: text.wholeText }]),
    ...reply.files,
  ]);
  const first = mention === null ? text.heading : `<@${mention}> ${text.heading}`;
  const components: APIMessageTopLevelComponent[] = [
    { ...display(first), ...(extras.marker === undefined ? {} : { id: extras.marker }) },
    ...(text.body === "" ? [] : [display(text.body)]),
    ...(text.cautions === "" ? [] : [SEPARATOR, display(text.cautions)]),
    ...files.map(({ name }) => ({
      type: ComponentType.File as const,
      file: { url: `attachment://${name}` },
    })),
    ...renderControls(reply.buttons, reply.choices),
  ];
  return {
    message: {
      flags: MessageFlags.IsComponentsV2,
      components,
      allowed_mentions: { parse: [], users: mention === null ? [] : [mention] },
      attachments: files.map(({ name }, id) => ({ id, filename: name })),
    },
    files: files.map((file) => ({ ...file, contentType: "text/plain; charset=utf-8" })),
  };
}

const SEPARATOR = { type: ComponentType.Separator, divider: true, spacing: 1 } as const;

function display(content: string) {
  return { type: ComponentType.TextDisplay, content } as const;
}

function isId(text: string): boolean {
  return /^\d{1,20}$/u.test(text);
}

/** Names that the platform keeps as they are, each once. */
function nameFiles(files: readonly ReplyFile[]): { name: string; data: Buffer }[] {
  const taken = new Set<string>();
  return files.slice(0, FILES_MAX).map(({ name, text }) => {
    const safe = name
      .replace(/[^\w.-]+/gu, "_")
      .replace(/^[._-]+/u, "")
      .slice(-FILE_NAME_MAX);
    let unique = safe === "" ? "file.txt" : safe;
    for (let n = 2; taken.has(unique); n += 1) unique = `${n}-${safe === "" ? "file.txt" : safe}`;
    taken.add(unique);
    return { name: unique, data: Buffer.from(cut(text, FILE_TEXT_MAX), "utf8") };
  });
}
