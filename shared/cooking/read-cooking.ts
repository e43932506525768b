import { readStep } from "../recipe/read-step.ts";
import type { Recipe } from "../recipe/types.ts";
import { fold } from "../words/fold.ts";
import { type HeatWord, heatWords } from "./heat-words.ts";
import { type Mentions, mentionsOf } from "./mentions.ts";
import { HEAT_METHODS, type HeatMethod, type HowCooked } from "./types.ts";

type Heat = HeatMethod | "wet";

/** One heating of some lines. */
interface Heating {
  /** Where its word stands in its sentence. */
  readonly at: number;
  readonly method: Heat;
  readonly keys: ReadonlySet<string>;
  minutes: number;
  drained: boolean;
  absorbed: boolean;
}

/** Where the reading stands: what is in the pot, and the order whose foods are still being named. */
interface Reading {
  pot: Set<string>;
  open: {
    readonly at: number;
    readonly does: Heat | "drain" | "out";
    readonly named: Set<string>;
  } | null;
  readonly heatings: Heating[];
}

const HEATS: ReadonlySet<string> = new Set([...HEAT_METHODS, "wet"]);
/** A heating whose length nobody says counts as short when methods are compared. */
const SHORT_MINUTES = 5;
/** More than any recipe has; keeps the work bounded whatever the text. */
const MOST_HEATINGS = 60;

const known = new WeakMap<Recipe, ReadonlyMap<string, HowCooked>>();

/**
 * What the steps do to each line, by line key, read from their words: which foods a step names, else what
 * is in the pot by then. Read from the whole recipe, so that leaving a part out changes nothing for the
 * rest. Remembered per recipe.
 */
export function readCooking(recipe: Recipe): ReadonlyMap<string, HowCooked> {
  const before = known.get(recipe);
  if (before !== undefined) return before;
  const mentions = mentionsOf(recipe);
  const heatings = heatingsOf(recipe, mentions);
  const otherwise = mainMethod(heatings);
  const read = new Map(mentions.keys.map((key) => [key, howCooked(key, heatings, otherwise)]));
  known.set(recipe, read);
  return read;
}

function heatingsOf(recipe: Recipe, mentions: Mentions): readonly Heating[] {
  const reading: Reading = { pot: new Set(), open: null, heatings: [] };
  for (const { text } of recipe.steps) {
    for (const sentence of text.split(/(?<=[.;!?])\s+/u)) readSentence(reading, sentence, mentions);
  }
  // "Roast for 40 minutes", and no step names any food: it is all in there.
  const isNamed = reading.heatings.some(({ keys }) => keys.size > 0);
  const all = new Set(mentions.keys);
  return isNamed ? reading.heatings : reading.heatings.map((one) => ({ ...one, keys: all }));
}

function readSentence(reading: Reading, sentence: string, mentions: Mentions): void {
  const text = fold(sentence);
  // "until the rice is soft" tells how long, not what is cooked.
  const until = text.search(/\buntil\b/u);
  const end = until < 0 ? text.length : until;
  const named = mentions.in(text.slice(0, end));
  const words = heatWords(text).filter(({ at, does }) => at < end || does === "absorbed");
  if (startsAnew(words, named)) reading.pot = new Set();
  const before = reading.heatings.length;
  const all = [...named, ...words].sort((a, b) => a.at - b.at);
  for (const one of all) {
    if ("keys" in one) name(reading, one.keys);
    else meet(reading, one);
  }
  close(reading);
  noteMinutes(reading.heatings.slice(before), text);
}

/** "Mix the chicken with the spices": another bowl, unless the sentence says into what. */
function startsAnew(words: readonly HeatWord[], named: ReturnType<Mentions["in"]>): boolean {
  const [first] = words;
  const joins = words.some(({ does }) => does === "join");
  return first?.does === "apart" && !joins && (named[0]?.at ?? -1) > first.at;
}

function name(reading: Reading, keys: readonly string[]): void {
  const into = reading.open === null ? reading.pot : reading.open.named;
  for (const key of keys) into.add(key);
}

function meet(reading: Reading, { at, does }: HeatWord): void {
  close(reading);
  if (does === "drain" || does === "out" || isHeat(does)) {
    reading.open = { at, does, named: new Set() };
  }
  if (does !== "absorbed") return;
  const last = lastOf(reading, reading.pot);
  if (last !== undefined) last.absorbed = true;
}

function isHeat(does: HeatWord["does"]): does is Heat {
  return HEATS.has(does);
}

/** Ends an order: it is about the foods named after it, else about what is in the pot. */
function close(reading: Reading): void {
  const { open } = reading;
  if (open === null) return;
  reading.open = null;
  const about = open.named.size > 0 ? open.named : reading.pot;
  if (open.does === "out") {
    reading.pot = new Set([...reading.pot].filter((key) => !about.has(key)));
    return;
  }
  if (open.does === "drain") {
    const last = lastOf(reading, about);
    if (last !== undefined) last.drained = true;
    return;
  }
  // Boiling water goes over what is there; a method with foods of its own starts a new pot.
  reading.pot = open.does === "wet" ? new Set([...reading.pot, ...open.named]) : new Set(about);
  if (reading.heatings.length >= MOST_HEATINGS) return;
  reading.heatings.push({
    at: open.at,
    method: open.does,
    keys: new Set(reading.pot),
    minutes: 0,
    drained: false,
    absorbed: false,
  });
}

/** The last wet heating of any of these. */
function lastOf(reading: Reading, keys: ReadonlySet<string>): Heating | undefined {
  return reading.heatings.findLast(
    (one) => isWet(one.method) && [...keys].some((key) => one.keys.has(key)),
  );
}

/** Each heating of a sentence has the minutes that stand between its word and the next one's. */
function noteMinutes(heatings: readonly Heating[], text: string): void {
  const off = text.search(/\b(?:stand|rest|cool|chill|leave)\b/u);
  for (const [index, heating] of heatings.entries()) {
    const start = index === 0 ? 0 : heating.at;
    const end = heatings[index + 1]?.at ?? (off > heating.at ? off : text.length);
    const { minutes } = readStep(text.slice(start, end));
    heating.minutes = minutes.reduce((sum, each) => sum + each, 0);
  }
}

function howCooked(
  key: string,
  heatings: readonly Heating[],
  otherwise: HeatMethod | null,
): HowCooked {
  const own = heatings.filter(({ keys }) => keys.has(key));
  const wet = own.filter(({ method }) => isWet(method));
  return {
    method: mainMethod(own) ?? (own.length > 0 ? "cook" : null),
    otherwise,
    wet: wet.length > 0,
    drained: wet.some(({ drained }) => drained),
    untilAbsorbed: own.some(({ absorbed }) => absorbed),
    minutes: own.reduce((sum, { minutes }) => sum + minutes, 0),
    pot: new Set(wet.flatMap(({ keys }) => [...keys])),
  };
}

/** "Cook the rice" is in water; for meat it says nothing. */
function isWet(method: HeatMethod | "wet"): boolean {
  return ["wet", "braise", "boil", "poach", "steam", "cook"].includes(method);
}

/** The method that goes on longest; of equals the later one, and one that is named before "cook". */
function mainMethod(heatings: readonly Heating[]): HeatMethod | null {
  let best: HeatMethod | null = null;
  let most = -1;
  for (const { method, minutes } of heatings) {
    const length = method === "cook" ? 0 : minutes === 0 ? SHORT_MINUTES : minutes;
    if (method === "wet" || length < most) continue;
    best = method;
    most = length;
  }
  return best;
}
