import type { Food } from "../food/types.ts";
import { fleshKind, wordsOfName } from "./meat-kind.ts";
import { MEAT_YIELDS, type MeatYield } from "./meat-yields.ts";
import type { Basis, HeatMethod } from "./types.ts";

/** Moist heat and dry heat: a yield of one does not stand in for one of the other. */
const MOIST: ReadonlySet<HeatMethod> = new Set(["braise", "boil", "poach", "steam"]);

export function isMoist(method: HeatMethod): boolean {
  return MOIST.has(method);
}

const SAME_CUT: Readonly<Record<string, string>> = {
  ground: "mince",
  minced: "mince",
  tenderloin: "fillet",
  chop: "loin",
  butt: "shoulder",
  shrimp: "prawn",
  sole: "flatfish",
  flounder: "flatfish",
  plaice: "flatfish",
  haddock: "cod",
  patty: "patty",
  burger: "patty",
  meatball: "patty",
  kofta: "patty",
};
/** What keeps its own weight in its own way: the yield of the plain meat is not that of these. */
const OF_ITS_OWN = ["bacon", "sausage", "ham", "liver", "heart", "gizzard", "giblet", "mince"];

const ROWS = MEAT_YIELDS.map((row) => ({ row, words: row.words.split(" ") }));

/**
 * The published cooking yield for raw meat, poultry or fish by a method; the row with most words of the
 * food first, then the method itself before one of the same kind of heat. Null where none is published.
 */
export function meatYield(food: Food, lineText: string, method: HeatMethod): Basis | null {
  const kind = fleshKind(food);
  if (kind === null) return null;
  const words = wordsFor(food, kind, lineText);
  // Back bacon is lean: the published rows are of streaky bacon.
  if (words.has("bacon") && words.has("back")) return null;
  const own = OF_ITS_OWN.filter((word) => words.has(word));
  let best: MeatYield | null = null;
  let bestRank = 0;
  for (const { row, words: wanted } of ROWS) {
    const near = nearness(row.method, method);
    const fits = wanted.every((word) => words.has(word)) && own.every((w) => wanted.includes(w));
    const rank = near === 0 || !fits ? 0 : 3 * wanted.length + near;
    if (rank > bestRank) {
      best = row;
      bestRank = rank;
    }
  }
  return best === null ? null : { factor: best.percent / 100, source: best.source };
}

/** 2 for the method itself, 1 for one of the same kind of heat, 0 for none. */
function nearness(published: HeatMethod, asked: HeatMethod): number {
  if (published === asked || published === "cook") return 2;
  return MOIST.has(published) === MOIST.has(asked) ? 1 : 0;
}

/** Fat per cent below which the table calls a mince low in fat, and above which high. */
const FAT_BANDS: Readonly<Record<string, readonly [low: number, high: number]>> = {
  beef: [12, 22],
  pork: [10, 27],
  turkey: [8, 100],
};

function wordsFor(food: Food, kind: string, lineText: string): ReadonlySet<string> {
  const shapes = wordsOfName(lineText).filter((word) => SAME_CUT[word] === "patty");
  const said = [kind, ...wordsOfName(food.name), ...shapes];
  const words = new Set(said.map((word) => SAME_CUT[word] ?? word));
  const fatPct = fatPctIn(food.name);
  const band = FAT_BANDS[kind];
  if (words.has("mince") && fatPct !== null && band !== undefined) {
    words.delete("lean");
    if (fatPct < band[0]) words.add("lean");
    if (fatPct > band[1]) words.add("fatty");
  }
  return words;
}

/** "beef mince, 15 % fat, raw" and "93% lean": per cent of fat; null when the name does not say. */
function fatPctIn(name: string): number | null {
  const lean = /(\d{2}) ?% lean/u.exec(name);
  if (lean !== null) return 100 - Number(lean[1]);
  const fat = /(\d{1,2}(?:\.\d)?) ?% fat/u.exec(name);
  return fat === null ? null : Number(fat[1]);
}
