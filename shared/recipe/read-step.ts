import { roundTo } from "../quantity/round.ts";
import { fahrenheitToCelsius, gasMarkToCelsius } from "../quantity/temperature.ts";
import { readNumber } from "../words/read-number.ts";
import type { Step } from "./types.ts";

/** A step with the temperatures (degrees Celsius) and durations (minutes) it names picked out. */
export function readStep(text: string): Step {
  return { text, temperaturesC: temperaturesIn(text), minutes: minutesIn(text) };
}

const TEMPERATURE =
  /(?<![\d.,])([-−]?\d{1,3})(?:(?: ?[-–] ?| to )(\d{1,3}))? ?(?:(?:[°º]|degrees?) ?([CFcf])|([CF])|degrees? (celsius|fahrenheit))(?![\p{L}\d])/gu;
const GAS_MARK = /\bgas(?: mark)? ?(\d|½|¼)(?!\d)/giu;

interface Reading {
  readonly celsius: readonly number[];
  readonly isFahrenheit: boolean;
  readonly from: number;
  readonly until: number;
}

function temperaturesIn(text: string): readonly number[] {
  const kept: Reading[] = [];
  for (const match of text.matchAll(TEMPERATURE)) {
    const reading = readingOf(match);
    const last = kept.at(-1);
    if (last === undefined || !saysTheSame(last, reading)) kept.push(reading);
    // Of a pair in both scales the Celsius figure is kept, whichever comes first.
    else if (last.isFahrenheit) kept[kept.length - 1] = reading;
  }
  const celsius = kept.flatMap((reading) => reading.celsius);
  const gas = [...text.matchAll(GAS_MARK)].flatMap((match) => gasC(match[1] ?? ""));
  return celsius.length > 0 ? celsius : gas;
}

function readingOf(match: RegExpExecArray): Reading {
  const scale = (match[3] ?? match[4] ?? match[5] ?? "").slice(0, 1).toUpperCase();
  const said = [match[1], match[2]].flatMap((figure) =>
    figure === undefined ? [] : [Number(figure.replace("−", "-"))],
  );
  const isFahrenheit = scale === "F";
  return {
    celsius: isFahrenheit ? said.map((f) => roundTo(fahrenheitToCelsius(f), 0.1)) : said,
    isFahrenheit,
    from: match.index,
    until: match.index + match[0].length,
  };
}

/** "74 °C / 165 °F" and "200 °C (400 °F)" are one temperature in two scales. */
function saysTheSame(a: Reading, b: Reading): boolean {
  if (a.isFahrenheit === b.isFahrenheit || b.from - a.until > 6) return false;
  const [first] = a.celsius;
  const [second] = b.celsius;
  return first !== undefined && second !== undefined && Math.abs(first - second) <= 8;
}

function gasC(said: string): readonly number[] {
  const mark = readNumber(said);
  const celsius = mark.ok ? gasMarkToCelsius(mark.value.value) : null;
  return celsius === null ? [] : [celsius];
}

const NUMBER = "(?:\\d{1,3}(?: \\d/\\d| ?[¼½¾]|[.,]\\d{1,2})?|\\d/\\d|[¼½¾])";
const DURATION = new RegExp(
  `(?<![\\d.,/])(${NUMBER})(?:(?: ?[-–] ?| to )(${NUMBER}))?[ -]?(hours?|hrs?|h|minutes?|mins?|seconds?|secs?)(?![\\p{L}\\d])`,
  "giu",
);

const NUMBER_WORDS: readonly (readonly [word: string, figure: string])[] = [
  ["one", "1"],
  ["two", "2"],
  ["three", "3"],
  ["four", "4"],
  ["five", "5"],
  ["six", "6"],
  ["eight", "8"],
  ["ten", "10"],
  ["twelve", "12"],
  ["fifteen", "15"],
  ["twenty", "20"],
  ["thirty", "30"],
  ["forty", "40"],
];
const WORDED = new RegExp(
  `\\b(${NUMBER_WORDS.map(([word]) => word).join("|")})(?= (?:to \\w+ )?(?:hours?|hrs?|minutes?|mins?|seconds?)\\b)`,
  "giu",
);
/** Ways to say a time without a figure and a unit. A night is taken as eight hours: common practice, no published source. */
const SAYINGS: readonly (readonly [pattern: RegExp, figure: string])[] = [
  [/\ban hour and a half\b/giu, "90 minutes"],
  [/\b(?:a )?quarter of an hour\b/giu, "15 minutes"],
  [/\bthree quarters of an hour\b/giu, "45 minutes"],
  [/\bhalf an hour\b/giu, "30 minutes"],
  [/\ban? (hour|minute)\b/giu, "1 $1"],
  [/\bovernight\b/giu, "8 hours"],
  // "1 hr 20", "1h20".
  [
    /\b(\d{1,2}) ?(?:hours?|hrs?|h) ?(?:and )?([0-5]\d)(?![\d/]|[.,]\d|\s?(?:m|s|°|º|g|kg|h|%|to\b|[-–]|degrees))/giu,
    "$1 hours $2 min",
  ],
];

function inFigures(text: string): string {
  const worded = SAYINGS.reduce((said, [pattern, figure]) => said.replace(pattern, figure), text);
  return worded.replace(
    WORDED,
    (word) => NUMBER_WORDS.find(([known]) => known === word.toLowerCase())?.[1] ?? word,
  );
}

/** Durations in minutes; the upper end of a range; "1 h 30 min" is one duration. */
function minutesIn(said: string): readonly number[] {
  const text = inFigures(said);
  const found: number[] = [];
  let hoursEndAt: number | null = null;
  for (const match of text.matchAll(DURATION)) {
    const unit = (match[3] ?? "").slice(0, 1).toLowerCase();
    const minutes = minutesOf(match[2] ?? match[1] ?? "", unit);
    const joins =
      hoursEndAt !== null && /^ ?(?:and ?)?$/u.test(text.slice(hoursEndAt, match.index));
    const before = joins && unit === "m" ? (found.pop() ?? 0) : 0;
    found.push(roundTo(before + minutes, 0.01));
    hoursEndAt = unit === "h" ? match.index + match[0].length : null;
  }
  return found.filter((minutes) => minutes > 0);
}

function minutesOf(said: string, unit: string): number {
  const number = readNumber(said);
  const each = { h: 60, m: 1 }[unit] ?? 1 / 60;
  return number.ok ? number.value.value * each : 0;
}
