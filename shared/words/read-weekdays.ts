import { fail, type Outcome, ok } from "../outcome.ts";
import { fold } from "./fold.ts";
import { excerpt, type WeekdaysProblem } from "./problems.ts";

const NAMES: readonly (readonly string[])[] = [
  ["mon", "monday", "mo"],
  ["tue", "tuesday", "tues", "tu"],
  ["wed", "wednesday", "weds", "we"],
  ["thu", "thursday", "thur", "thurs", "th"],
  ["fri", "friday", "fr"],
  ["sat", "saturday", "sa"],
  ["sun", "sunday", "su"],
];
const GROUPS: Readonly<Record<string, readonly number[]>> = {
  weekday: [1, 2, 3, 4, 5],
  weekdays: [1, 2, 3, 4, 5],
  workdays: [1, 2, 3, 4, 5],
  weekend: [6, 7],
  weekends: [6, 7],
  daily: [1, 2, 3, 4, 5, 6, 7],
  everyday: [1, 2, 3, 4, 5, 6, 7],
  all: [1, 2, 3, 4, 5, 6, 7],
};

/** The weekday of an English name or its short form ("Sun", "sundays"), 1 for Monday to 7; null for none. */
export function weekdayOf(word: string): number | null {
  const bare = word.replace(/\.$/u, "");
  const at = NAMES.findIndex(
    (names) => names.includes(bare) || names.includes(bare.replace(/s$/u, "")),
  );
  return at === -1 ? null : at + 1;
}

/**
 * Reads weekdays: "Mon-Fri", "weekdays", "every day", "Mon, Wed and Fri", "Fri-Mon" (over the week's
 * end), "every day except Sun". 1 is Monday, 7 Sunday; ascending, each once.
 */
export function readWeekdays(text: string): Outcome<readonly number[], WeekdaysProblem> {
  const said = fold(text.slice(0, 120))
    .replace(/\bevery day\b/gu, "daily")
    .replace(/\b(?:every|each|on|and)\b/gu, " ")
    .replace(/[,;&+/]/gu, " ")
    .replace(/ ?(?:-|\bto\b|\bthrough\b|\btill\b) ?/gu, "-")
    .trim();
  const [wanted, ...excluded] = said.split(/\b(?:except|but not|not)\b/u);
  const days = readList(wanted ?? "");
  if (!days.ok || excluded.length === 0) return days.ok ? ok(inOrder(days.value)) : days;
  const out = readList(excluded.join(" "));
  if (!out.ok) return out;
  const left = days.value.filter((day) => !out.value.includes(day));
  return left.length === 0 ? fail({ code: "no weekday" }) : ok(inOrder(left));
}

function inOrder(days: readonly number[]): readonly number[] {
  return [...new Set(days)].sort((a, b) => a - b);
}

function readList(said: string): Outcome<readonly number[], WeekdaysProblem> {
  const words = said.split(" ").filter((word) => word !== "");
  if (words.length === 0) return fail({ code: "no weekday" });
  const days: number[] = [];
  for (const word of words) {
    const some = readRun(word);
    if (some === null) return fail({ code: "weekday not understood", text: excerpt(word) });
    days.push(...some);
  }
  return ok(days);
}

function readRun(word: string): readonly number[] | null {
  if (Object.hasOwn(GROUPS, word)) return GROUPS[word] ?? null;
  const ends = word.split("-").map(weekdayOf);
  const [from, to] = ends;
  if (ends.length > 2 || from === null || from === undefined || to === null) return null;
  const length = to === undefined ? 0 : (to - from + 7) % 7;
  return Array.from({ length: length + 1 }, (_, step) => ((from - 1 + step) % 7) + 1);
}
