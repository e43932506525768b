import { fold } from "../words/fold.ts";
import type { CookMethod, FoodState } from "./word-lists.ts";
import {
  CHANGING_WORDS,
  COMPOUNDS,
  CUTS,
  FILLER_WORDS,
  MANNER_WORDS,
  METHOD_WORDS,
  MINCED_MEATS,
  SPELLINGS,
  STATE_WORDS,
} from "./word-lists.ts";

/** One word of a food's name. */
export interface NameWord {
  readonly word: string;
  /** Stands before the first comma: "chicken" and "thigh" of "chicken thigh, skinless, raw". */
  readonly head: boolean;
  /** Says how it is cut, measured or handled, not what it is. */
  readonly manner: boolean;
  /** Stands after a comma and "with" or "in": "water" of "cornflour, mixed with water". */
  readonly aside: boolean;
}

/** What a name says of fat and salt. */
export interface NameLevels {
  /** "5 % fat" -> 5; "95 % lean" -> 5; "fat-free" -> 0; null when nothing is said. */
  readonly fatPct: number | null;
  /** False for a bare "5 %", which means fat in milk and mince only. */
  readonly saysFat: boolean;
  readonly lowFat: boolean;
  readonly fullFat: boolean;
  readonly lowSalt: boolean;
  readonly skin: "on" | "off" | null;
  /** Whether a can's liquid is out or in. */
  readonly liquid: "out" | "in" | null;
}

/** What a food's name says, taken apart. */
export interface NameWords {
  /** Every word but states and fillers, in order, each once. */
  readonly words: readonly NameWord[];
  /** What the name is a name of: "juice" of "lemon juice" and of "juice of a lemon". */
  readonly nouns: ReadonlySet<string>;
  readonly states: ReadonlySet<FoodState>;
  readonly methods: ReadonlySet<CookMethod>;
  readonly levels: NameLevels;
}

/** Longer text is cut: no food has a longer name, and the work must stay bounded. */
const MAX_CHARS = 120;
const MAX_WORDS = 14;

/** Takes a food's name, or what a cook typed for it, apart. Work is bounded whatever the text. */
export function nameWords(text: string): NameWords {
  const folded = foldName(text).replace(/\bpat(?:ted)? dry\b/gu, "");
  const headEnd = /[,(;]/u.exec(folded)?.index ?? folded.length;
  const headText = folded.slice(0, headEnd);
  const asideAt = / (?:in|with|for|from|into|until|to) /u.exec(folded.slice(headEnd));
  const bounds = {
    headEnd,
    last: /[a-z]+(?=[^a-z]*$)/u.exec(headText)?.index ?? -1,
    part: PART_OF.exec(headText)?.index ?? -1,
    asideAt: asideAt === null ? folded.length : headEnd + asideAt.index,
  };
  const read = [...folded.matchAll(/[a-z]+/gu)]
    .slice(0, MAX_WORDS)
    .map((match) => readWord(match[0], match.index, bounds));
  const words = new Map<string, NameWord>();
  for (const { word } of read) {
    if (word !== null && !words.has(word.word)) words.set(word.word, word);
  }
  const methods = read.flatMap(({ method }) => method ?? []);
  const states = read.flatMap(({ state }) => state ?? []);
  return {
    words: [...words.values()],
    nouns: nounsOf(headText),
    states: new Set(methods.length > 0 ? [...states, "cooked"] : states),
    methods: new Set(methods),
    levels: levelsOf(folded),
  };
}

interface ReadWord {
  /** Null for a state or a filler. */
  readonly word: NameWord | null;
  readonly state: FoodState | null;
  readonly method: CookMethod | null;
}

/** "Chicken skin" and "bacon fat" are no chicken and no bacon; "low fat" and "with skin" are handling. */
const PART_OF =
  /(?<=[a-z] )(?<!\b(?:with|and|no|less|low|lower|reduced|half|full|extra|visible|lean) )(?:skin|fat|bone|rind)s?$/u;

interface Bounds {
  readonly headEnd: number;
  /** Where the head's last word begins. */
  readonly last: number;
  /** Where it begins if it names a part: "skin" of "chicken skin". */
  readonly part: number;
  readonly asideAt: number;
}

function readWord(raw: string, at: number, bounds: Bounds): ReadWord {
  const word = oneSpelling(raw);
  const state = STATE_WORDS.get(raw) ?? STATE_WORDS.get(word) ?? null;
  // A "chuck roast" is a raw joint; "roast chuck" is not.
  const method = raw === "roast" && at === bounds.last ? null : (METHOD_WORDS.get(raw) ?? null);
  const said = state === null && !FILLER_WORDS.has(raw);
  const manner = METHOD_WORDS.has(raw) || (at !== bounds.part && isManner(raw, word));
  const head = at < bounds.headEnd;
  // "Hot sauce" is a sauce; "stock, hot" is any stock.
  const nameWord = {
    word,
    head,
    manner: manner || (!head && raw === "hot"),
    aside: at > bounds.asideAt,
  };
  return { word: said ? nameWord : null, state, method };
}

function isManner(raw: string, word: string): boolean {
  if (MANNER_WORDS.has(raw) || MANNER_WORDS.has(word)) return true;
  if (raw.length < 5 || CHANGING_WORDS.has(raw)) return false;
  return /[^e]ed$/u.test(raw);
}

/** The last word that tells what it is, before a comma, before "in" or "with", and before "of". */
function nounsOf(headText: string): ReadonlySet<string> {
  const what = headText.split(/ (?:in|with|for|from) /u)[0] ?? "";
  const parts = [what, what.split(" of ")[0] ?? ""];
  return new Set(
    parts.flatMap((part) => {
      const telling = (part.match(/[a-z]+/gu) ?? []).filter(
        (raw) => !STATE_WORDS.has(raw) && !FILLER_WORDS.has(raw) && !METHOD_WORDS.has(raw),
      );
      const noun =
        telling.findLast((raw) => !isManner(raw, oneSpelling(raw))) ?? telling[telling.length - 1];
      return noun === undefined ? [] : [oneSpelling(noun)];
    }),
  );
}

/** A whole name as comparable texts, the strictest first. */
export interface NameKeys {
  /** As written but for capitals, accents and gaps: "peppers" is not "pepper". */
  readonly written: string;
  /** With every word in the singular and one spelling. */
  readonly single: string;
  /** As written, without words of cut and size: "diced peppers" is "peppers". */
  readonly plain: string;
}

export function nameKeys(text: string): NameKeys {
  const words = foldName(text).match(/[a-z]+|\d+/gu) ?? [];
  const plain = words.filter((word) => !FILLER_WORDS.has(word) && !isManner(word, word));
  return {
    written: words.join(""),
    single: words.map(oneSpelling).join(""),
    plain: plain.join(""),
  };
}

export function oneSpelling(word: string): string {
  const single = singular(word);
  return SPELLINGS.get(single) ?? SPELLINGS.get(word) ?? single;
}

/** A rough English singular: it need not be a word, only the same for both forms. */
function singular(word: string): string {
  if (word.length <= 3 || /(?:ss|us|is)$/u.test(word)) return word;
  if (word.endsWith("ies")) return `${word.slice(0, -3)}y`;
  if (/(?:oes|ches|shes|xes|sses)$/u.test(word)) return word.slice(0, -2);
  return word.endsWith("s") ? word.slice(0, -1) : word;
}

function levelsOf(folded: string): NameLevels {
  const { pct, saysFat } = readFat(folded);
  const lowFat =
    /\b(?:(?:low|lower|reduced|half|less)[ -]?fat|lite|skim|skimmed|extra[ -]lean)\b/u.test(
      folded,
    ) ||
    // "Light tuna" is the colour of the fish.
    /\blight\b(?! (?:tuna|meat))/u.test(folded);
  return {
    fatPct: pct,
    saysFat,
    lowFat: lowFat || pct === 0,
    fullFat: /\bfull[ -]?(?:fat|cream)\b|\bwhole[ -]milk\b/u.test(folded),
    lowSalt:
      /\b(?:(?:low|lower|reduced|less|no)[ -]?(?:added )?(?:salt|sodium)|salt[ -]free|unsalted|no[ -]salt)\b/u.test(
        folded,
      ),
    skin: skinOf(folded),
    liquid: liquidOf(folded),
  };
}

function liquidOf(folded: string): "out" | "in" | null {
  if (/\bundrained\b|\bwith (?:its|their|the) (?:liquid|juice)\b/u.test(folded)) return "in";
  return /\bdrained\b/u.test(folded) ? "out" : null;
}

function skinOf(folded: string): "on" | "off" | null {
  if (/\b(?:skinless|skinned|skin (?:off|removed)|without skin|no skin)\b/u.test(folded))
    return "off";
  return /\b(?:skin[ -]?on|with skin|and skin|skin left on)\b/u.test(folded) ? "on" : null;
}

/** "5% fat", "95% lean", "85/15", "fat free", "2%": per cent of fat. */
function readFat(folded: string): { readonly pct: number | null; readonly saysFat: boolean } {
  const lean = /(\d{2}) ?(?:%|per ?cent)? ?lean\b/u.exec(folded);
  if (lean !== null) return { pct: 100 - Number(lean[1]), saysFat: true };
  const pair = /\b(\d{2}) ?\/ ?(\d{1,2})\b/u.exec(folded);
  if (pair !== null && Number(pair[1]) + Number(pair[2]) === 100) {
    return { pct: Number(pair[2]), saysFat: true };
  }
  const fat = /(\d{1,2}(?:\.\d)?) ?(?:%|per ?cent) ?(?:milk)?fat/u.exec(folded);
  if (fat !== null) return { pct: Number(fat[1]), saysFat: true };
  if (/\b(?:fat.?free|non.?fat|no fat)\b/u.test(folded)) return { pct: 0, saysFat: true };
  const bare = /(\d{1,2}(?:\.\d)?) ?(?:%|per ?cent)/u.exec(folded);
  return { pct: bare === null ? null : Number(bare[1]), saysFat: false };
}

/** "Gluten-free": a food of its own, and never the food that it is free of. "Free-range" is not meant. */
const FREE_FROM = /\b([a-z]{3,})(?<!fat|salt|sodium)[ -]free\b(?![ -](?:range|flowing))/gu;
const COMPOUND = new RegExp(`\\b(${COMPOUNDS.join("|")})(?=e?s?\\b)`, "gu");
const CUT_MEAT = new RegExp(`\\b(${CUTS}) meat\\b`, "gu");
const MEAT = new RegExp(`\\b(?:${MINCED_MEATS})\\b`, "u");
const MINCE_OF = new RegExp(`\\b(?:mince|minced|ground) (${MINCED_MEATS})\\b`, "gu");
/** What follows is of another food, or none: "plus extra for frying", "or use lard". */
const AFTERTHOUGHT = /(?:,| \() ?or .*$|\b(?:plus|such as|ideally|preferably)\b.*$/u;

function foldName(text: string): string {
  const folded = fold(text.slice(0, MAX_CHARS))
    .replace(/'s?(?![a-z])/gu, "")
    .replaceAll("&", " and ")
    .replace(AFTERTHOUGHT, "")
    .replace(COMPOUND, (words) => words.replace(" ", ""))
    // A weight; "gram flour" is none.
    .replace(/(?<=\d ?)gram(?:me)?s?\b/gu, "")
    .replace(/\b(?:corn|grain|grass)[ -]fed\b|\b(?:soft|medium|hard)[ -](?=boiled)/gu, "")
    .replace(CUT_MEAT, "$1")
    .replace(FREE_FROM, "$1free");
  if (!MEAT.test(folded)) return folded;
  return folded.replace(MINCE_OF, "$1 mince").replace(/\b(?:ground|minced)\b/gu, "mince");
}
