import { z } from "zod";
import type { PlainTime } from "../../shared/time.ts";
import { isHalves } from "../../shared/words/halves.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { numberAtStart, readNumber } from "../../shared/words/read-number.ts";
import { readTimeOfDay } from "../../shared/words/read-time-of-day.ts";
import { readWeekdays } from "../../shared/words/read-weekdays.ts";
import type { AttachedFile } from "./command.ts";

/** Schemas for the raw options of commands. Every message is a whole sentence for the member. */

/** Nobody cooks more at once; above it, it is a slip. */
export const PORTIONS_MAX = 200;
const WEIGHT_MAX_G = 200_000;

const tooLong = (max: number): string =>
  `That is longer than ${max} characters: type something shorter.`;

/** A text that must be there, without white space around it. */
export function requiredText(option: string, max: number) {
  const missing = `Fill in ${option}:`;
  return z.string({ error: missing }).trim().min(1, missing).max(max, tooLong(max));
}

/** A text that may be left out; blank counts as left out. */
export function optionalText(max: number) {
  return z
    .string({ error: "Type text here." })
    .trim()
    .max(max, tooLong(max))
    .transform((text) => (text === "" ? undefined : text))
    .optional();
}

/** One of a few words, in any case; `sentence` says which. */
export function wordText<const Words extends readonly [string, ...string[]]>(
  words: Words,
  sentence: string,
) {
  return z
    .string({ error: sentence })
    .trim()
    .toLowerCase()
    .pipe(z.enum(words, { error: sentence }));
}

/** "yes" or "no" as a boolean. */
export const yesNo = wordText(["yes", "no"], "Type yes or no.").transform((word) => word === "yes");

/** Text read by `read`; null from it makes the sentence an issue. */
function readText<T>(read: (text: string) => T | null, sentence: (typed: string) => string) {
  return z.string({ error: sentence("") }).transform((text, checks): T => {
    const value = read(text);
    if (value !== null) return value;
    checks.addIssue({ code: "custom", message: sentence(excerpt(text)) });
    return z.NEVER;
  });
}

function wholeNumber(text: string, least: number): number | null {
  const read = readNumber(text.replace(/ ?portions?$/iu, ""));
  if (!read.ok || read.value.to !== null) return null;
  const { value } = read.value;
  return Number.isInteger(value) && value >= least && value <= PORTIONS_MAX ? value : null;
}

/** A whole number of portions, 1 to 200. */
export const portionsText = readText(
  (text) => wholeNumber(text, 1),
  (typed) =>
    `“${typed}” is not a number of portions: type a whole number from 1 to ${PORTIONS_MAX}, such as 8.`,
);

/** A whole number of portions that may be none. */
export const zeroOrMoreText = readText(
  (text) => wholeNumber(text, 0),
  (typed) =>
    `“${typed}” is not a number of portions: type a whole number from 0 to ${PORTIONS_MAX}, such as 2.`,
);

function halves(text: string): number | null {
  const read = readNumber(text.replace(/ ?portions?$/iu, ""));
  if (!read.ok || read.value.to !== null) return null;
  const { value } = read.value;
  return (value === 0 || isHalves(value)) && value <= PORTIONS_MAX ? value : null;
}

const NO_HALVES = (typed: string): string =>
  `“${typed}” is not a number of portions: type one such as 1, 3, ½ or 1.5, up to ${PORTIONS_MAX}.`;

/** Portions of the stock, in halves: ½ to 200. */
export const halvesText = readText((text) => halves(text) || null, NO_HALVES);

/** The same, or none. */
export const halvesOrNoneText = readText(halves, NO_HALVES);

const UNIT_G: Readonly<Record<string, number>> = {
  g: 1,
  gram: 1,
  kg: 1000,
  kilo: 1000,
  lb: 453.59237,
  pound: 453.59237,
  oz: 28.349523125,
  ounce: 28.349523125,
};

/** The weight a text starts with, and what follows it; null when it starts with none. */
function weightAtStart(text: string): { readonly g: number; readonly rest: string } | null {
  const number = numberAtStart(text);
  if (!number.ok || number.value.to !== null) return null;
  const word = /^ *([a-z]+?)s?(?=[ \d]|$)/u.exec(number.value.rest);
  const unitG = word === null ? undefined : UNIT_G[word[1] ?? ""];
  if (word === null || unitG === undefined) return null;
  return {
    g: number.value.value * unitG,
    rest: number.value.rest.slice(word[0].length).trim(),
  };
}

/** Grams of "2.4 kg", "850 g" or "2 lb 3 oz"; null when it is no weight. */
function grams(typed: string): number | null {
  const text = typed.slice(0, 60).trim().toLowerCase();
  const first = weightAtStart(text);
  if (first === null) return null;
  const second = first.rest === "" ? { g: 0, rest: "" } : weightAtStart(first.rest);
  if (second === null || second.rest !== "") return null;
  const totalG = first.g + second.g;
  return totalG > 0 && totalG <= WEIGHT_MAX_G ? totalG : null;
}

/** A weight in grams, above 0 and at most 200 kg. */
export const gramsText = readText(
  grams,
  (typed) => `“${typed}” is not a weight I understand: type such as 2.4 kg, 850 g or 5 lb 4 oz.`,
);

/** A time of day. */
export const timeText = readText<PlainTime>(
  (text) => {
    const read = readTimeOfDay(text);
    return read.ok ? read.value : null;
  },
  (typed) => `“${typed}” is not a time of day I understand: type such as 18:30, 7 pm or noon.`,
);

/** Weekdays, 1 Monday to 7 Sunday, ascending. */
export const weekdaysText = readText<readonly number[]>(
  (text) => {
    const read = readWeekdays(text);
    return read.ok ? read.value : null;
  },
  (typed) =>
    `“${typed}” are not weekdays I understand: type such as Mon-Fri, Sat Sun or every day.`,
);

/** An IANA time zone in its own spelling, whatever the case typed. */
export const zoneText = readText(
  zoneNamed,
  (typed) =>
    `“${typed}” is not a time zone I know: type a region and a city, such as Europe/Lisbon or America/Chicago.`,
);

function zoneNamed(typed: string): string | null {
  const wanted = typed.slice(0, 60).trim().replace(/ /gu, "_");
  if (!/^[a-z][a-z0-9_+-]*(?:\/[a-z0-9_+-]+){0,2}$/iu.test(wanted)) return null;
  const known = Intl.supportedValuesOf("timeZone").find(
    (zone) => zone.toLowerCase() === wanted.toLowerCase(),
  );
  if (known !== undefined) return known;
  try {
    return new Intl.DateTimeFormat("en", { timeZone: wanted }).resolvedOptions().timeZone;
  } catch {
    return null;
  }
}

/** The id of a role or a channel, as the platform hands it over. */
export const idText = z
  .string({ error: "Pick one from the list." })
  .trim()
  .regex(/^[\w-]{1,40}$/u, "Pick one from the list.");

/** An attached file's text (UTF-8). */
export function fileText(option: string, maxBytes: number) {
  const missing = `Attach a text file as ${option}:`;
  return z
    .custom<AttachedFile>(
      (value) =>
        typeof value === "object" &&
        value !== null &&
        "bytes" in value &&
        value.bytes instanceof Uint8Array,
      { error: missing },
    )
    .transform((file, checks): string => {
      if (file.bytes.length <= maxBytes) {
        try {
          return new TextDecoder("utf-8", { fatal: true }).decode(file.bytes);
        } catch {
          checks.addIssue({
            code: "custom",
            message: "That file is not plain text: save it as a text file (UTF-8) and attach it.",
          });
          return z.NEVER;
        }
      }
      checks.addIssue({
        code: "custom",
        message: `That file is larger than ${Math.floor(maxBytes / 1000)} kB: attach the recipe alone, as plain text.`,
      });
      return z.NEVER;
    });
}
