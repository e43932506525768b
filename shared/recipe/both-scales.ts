import { celsiusToFahrenheit, fahrenheitToCelsius } from "../quantity/temperature.ts";

/** Which scales a text should have beside its own. */
export type WantedScales = "both" | "C" | "F";

const SIGN = "(?:[°º]|degrees?) ?";
const FIGURE = "(?<![\\d.,])([-−]?\\d{1,3})(?:( ?[-–] ?| to )(\\d{1,3}))?";
const TEMPERATURE = new RegExp(
  `${FIGURE} ?(?:${SIGN}([CFcf])|([CF])|degrees? (celsius|fahrenheit))(?![\\p{L}\\d])`,
  "giu",
);
/** "By 20 °C", "20 °C lower": a difference, which converts otherwise. */
const BEFORE_DIFFERENCE = /(?:\bby|\+|\banother|\bfurther|\bextra) ?$/iu;
const AFTER_DIFFERENCE = /^ ?(?:less|more|lower|higher|hotter|cooler|below|above|apart)\b/iu;

/** What food safety guidance prints for both scales (USDA FSIS, FDA Food Code): never worked out anew. */
const PUBLISHED: readonly (readonly [c: number, f: number])[] = [
  [-18, 0],
  [4, 40],
  [5, 41],
  [7, 45],
  [21, 70],
  [32, 90],
  [54, 130],
  [57, 135],
  [60, 140],
  [63, 145],
  [68, 155],
  [71, 160],
  [74, 165],
];

interface Found {
  readonly from: number;
  readonly until: number;
  readonly scale: "C" | "F";
  readonly low: number;
  readonly dash: string;
  readonly high: number | null;
}

/**
 * Adds the other scale behind each temperature that has only one: "Bake at 200 °C" becomes "Bake at 200 °C /
 * 390 °F". The writer's own figure is never touched. Oven settings go to the ten that ovens are called by;
 * a safety temperature is the one published for it, else rounded to the safe side (up when it must be
 * reached, down when it must not be passed).
 */
export function withOtherScale(text: string, wanted: WantedScales): string {
  const found = temperaturesIn(text);
  let out = "";
  let done = 0;
  for (const [index, one] of found.entries()) {
    out += text.slice(done, one.until);
    done = one.until;
    const other = one.scale === "C" ? "F" : "C";
    const isWanted = wanted === "both" || wanted === other;
    if (isWanted && !isPaired(found, index, text)) out += ` / ${written(one, other)}`;
  }
  return out + text.slice(done);
}

function temperaturesIn(text: string): readonly Found[] {
  return [...text.matchAll(TEMPERATURE)].flatMap((match) => {
    const until = match.index + match[0].length;
    const before = text.slice(Math.max(0, match.index - 12), match.index);
    if (BEFORE_DIFFERENCE.test(before) || AFTER_DIFFERENCE.test(text.slice(until))) return [];
    const letter = (match[4] ?? match[5] ?? match[6] ?? "").slice(0, 1).toUpperCase();
    return {
      from: match.index,
      until,
      scale: letter === "F" ? "F" : "C",
      low: Number((match[1] ?? "").replace("−", "-")),
      dash: match[2] ?? "",
      high: match[3] === undefined ? null : Number(match[3]),
    } as const;
  });
}

/** "74 °C / 165 °F", "400 °F (200 °C)": the other scale stands right beside it. */
function isPaired(found: readonly Found[], index: number, text: string): boolean {
  const one = found[index];
  return [found[index - 1], found[index + 1]].some((other) => {
    if (one === undefined || other === undefined || other.scale === one.scale) return false;
    const [first, second] = other.from < one.from ? [other, one] : [one, other];
    return /^[ /(,;]{0,4}(?:or )?$/u.test(text.slice(first.until, second.from));
  });
}

function written({ low, high, dash, scale }: Found, to: "C" | "F"): string {
  const convert = (value: number) => `${inOther(value, scale)}`;
  const range = high === null ? convert(low) : `${convert(low)}${dash}${convert(high)}`;
  return `${range} °${to}`;
}

function inOther(value: number, scale: "C" | "F"): number {
  const pair = PUBLISHED.find(([c, f]) => (scale === "C" ? c : f) === value);
  if (pair !== undefined) return scale === "C" ? pair[1] : pair[0];
  const celsius = scale === "C" ? value : fahrenheitToCelsius(value);
  const exact = scale === "C" ? celsiusToFahrenheit(value) : celsius;
  const isSetting = celsius >= 110 && value % (scale === "C" ? 5 : 25) === 0;
  if (isSetting) return Math.round(exact / 10) * 10;
  // A hair's tolerance: 70 °C is 158 °F and not 159.
  if (celsius >= 50 && celsius < 100) return Math.ceil(exact - 1e-9);
  return celsius <= 10 ? Math.floor(exact + 1e-9) : Math.round(exact);
}
