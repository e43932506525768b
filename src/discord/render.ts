import {
  type AllowedMentionsTypes,
  type APIMessageTopLevelComponent,
  ComponentType,
  MessageFlags,
  type RawFile,
} from "discord.js";
import { type Reply, type ReplyFile, text as textPart } from "../../commands/kit/reply.ts";
import { cut } from "./escape.ts";
import type { Marks } from "./marks.ts";
import { renderControls } from "./render-controls.ts";
import { renderGallery, splitPictures } from "./render-pictures.ts";
import { splitPrints } from "./render-prints.ts";
import { fitText } from "./render-text.ts";

const FILES_MAX = 10;
const FILE_NAME_MAX = 60;
/** Below the platform's 10 MiB for one file, also when every character takes four bytes. */
const FILE_TEXT_MAX = 2_000_000;
const FILE_BYTES_MAX = 8_000_000;
const WHOLE_ANSWER = "whole-answer.txt";
const PNG = "image/png";
const PLAIN_TEXT = "text/plain; charset=utf-8";

export interface RenderExtras {
  /** The one member this message may ping; named before the heading. */
  readonly mention?: string;
  /** Small lines before the cautions. */
  readonly notes?: readonly string[];
  /** What the message is known by when it is read back. */
  readonly marks?: Marks;
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

/**
 * Turns a reply into a message within the platform's limits. Never throws. Pictures that were not drawn
 * ahead (`drawPictures`) are drawn now; one that cannot be drawn is told in words. Prints must be made
 * ahead (`makePrints`); one that is not is told in words.
 */
export function render(reply: Reply, extras: RenderExtras = {}): Rendered {
  const mention = extras.mention !== undefined && isId(extras.mention) ? extras.mention : null;
  const { shown, inWords } = splitPictures(reply.pictures);
  const prints = splitPrints(reply.prints);
  const tooLarge = reply.files.filter(isTooLarge);
  const inPlace = [
    ...inWords,
    ...prints.inWords,
    ...tooLarge.map(({ name }) => `${name} is too large to be sent.`),
  ];
  const parts = inPlace.length === 0 ? reply.parts : [...reply.parts, textPart(...inPlace)];
  const text = fitText({ ...reply, parts }, extras.notes);
  const whole = text.wholeText === null ? [] : [{ name: WHOLE_ANSWER, text: text.wholeText }];
  const files = nameFiles([
    ...shown.map(({ name, png, alt }) => ({ name, data: png, contentType: PNG, alt })),
    ...prints.shown,
    ...[...whole, ...reply.files.filter((file) => !isTooLarge(file))].map(attachedFile),
  ]);
  const pictures = files.flatMap(({ name, alt }) => (alt === null ? [] : [{ name, alt }]));
  const first = mention === null ? text.heading : `<@${mention}> ${text.heading}`;
  const components: APIMessageTopLevelComponent[] = [
    display(first),
    ...(text.body === "" ? [] : [display(text.body)]),
    ...(pictures.length === 0 ? [] : [renderGallery(pictures)]),
    ...(text.cautions === "" ? [] : [SEPARATOR, display(text.cautions)]),
    ...files.filter(({ alt }) => alt === null).map(({ name }) => fileComponent(name)),
    ...renderControls(reply.buttons, reply.choices),
  ];
  return {
    message: {
      flags: MessageFlags.IsComponentsV2,
      components: extras.marks === undefined ? components : marked(components, extras.marks),
      allowed_mentions: { parse: [], users: mention === null ? [] : [mention] },
      attachments: files.map(({ name }, id) => ({ id, filename: name })),
    },
    files: files.map(({ name, data, contentType }) => ({ name, data, contentType })),
  };
}

const SEPARATOR = { type: ComponentType.Separator, divider: true, spacing: 1 } as const;

function display(content: string) {
  return { type: ComponentType.TextDisplay, content } as const;
}

/** A message of one component has no room for the second mark. */
function marked(
  components: readonly APIMessageTopLevelComponent[],
  { nonce, wordedAt }: Marks,
): APIMessageTopLevelComponent[] {
  return components.map((component, n) => {
    if (n === 0) return { ...component, id: nonce };
    const isLast = n === components.length - 1;
    return isLast && wordedAt !== null ? { ...component, id: wordedAt } : component;
  });
}

function isId(text: string): boolean {
  return /^\d{1,20}$/u.test(text);
}

function fileComponent(name: string) {
  return { type: ComponentType.File, file: { url: `attachment://${name}` } } as const;
}

interface MessageFile {
  readonly name: string;
  readonly data: Buffer;
  readonly contentType: string;
  /** Its text where it is a picture; null where it is a file to open. */
  readonly alt: string | null;
}

function isTooLarge(file: ReplyFile): boolean {
  return "bytes" in file && file.bytes.length > FILE_BYTES_MAX;
}

function attachedFile(file: ReplyFile): MessageFile {
  const { name } = file;
  return "bytes" in file
    ? { name, data: Buffer.from(file.bytes), contentType: file.mediaType, alt: null }
    : {
        name,
        data: Buffer.from(cut(file.text, FILE_TEXT_MAX), "utf8"),
        contentType: file.mediaType ?? PLAIN_TEXT,
        alt: null,
      };
}

/** Names that the platform keeps as they are, each once. */
function nameFiles(files: readonly MessageFile[]): readonly MessageFile[] {
  const taken = new Set<string>();
  return files.slice(0, FILES_MAX).map((file) => {
    const safe = file.name
      .replace(/[^\w.-]+/gu, "_")
      .replace(/^[._-]+/u, "")
      .slice(-FILE_NAME_MAX);
    let unique = safe === "" ? "file.txt" : safe;
    for (let n = 2; taken.has(unique); n += 1) unique = `${n}-${safe === "" ? "file.txt" : safe}`;
    taken.add(unique);
    return { ...file, name: unique };
  });
}
