import { RECIPE_LIMITS } from "../recipe/problems.ts";
import { readKeeping } from "../recipe/read-keeping.ts";
import { type Graph, isOfType, lineOf, textsOf, valuesOf } from "./graph.ts";
import { isObject } from "./parse.ts";
import { plainLine, plainLines } from "./plain-text.ts";
import type { JsonObject, JsonValue } from "./types.ts";

/** What a document's instructions say, sorted into our places. */
export interface FoundInstructions {
  readonly steps: string[];
  readonly keeping: string[];
  readonly reheating: string[];
  readonly notes: string[];
}

type Place = keyof FoundInstructions;

/** Something still to be read, and the section it stands in. */
interface Open {
  readonly value: JsonValue;
  readonly place: Place;
  /** The section's name where it is none of ours ("For the sauce"). */
  readonly section: string;
}

const PLACES: readonly (readonly [name: RegExp, place: Place])[] = [
  [/\breheat/iu, "reheating"],
  [/^(?:keeping|storage|storing|to store|how to store)\b/iu, "keeping"],
  [/^(?:notes?|tips?)$/iu, "notes"],
];
const STEPS = /^(?:steps?|method|directions?|instructions?)?$/iu;
const NUMBER = /^(?:(?:step )?\d{1,2}[.):] ?(?=\D)|[-*•] )/iu;

/** The instructions of a recipe's parts, each named by its part, and then of the whole. */
export function readAllInstructions(
  graph: Graph,
  recipe: JsonObject,
  parts: readonly JsonObject[],
): FoundInstructions {
  const all = [
    ...parts.map((part) => readInstructions(graph, part, lineOf(graph, part, "name"))),
    readInstructions(graph, recipe, ""),
  ];
  return {
    steps: all.flatMap(({ steps }) => steps),
    keeping: all.flatMap(({ keeping }) => keeping),
    reheating: all.flatMap(({ reheating }) => reheating),
    notes: all.flatMap(({ notes }) => notes),
  };
}

/** Instructions as a text, a list of texts, steps, or sections of them, to any depth. */
function readInstructions(graph: Graph, recipe: JsonObject, section: string): FoundInstructions {
  const found: FoundInstructions = { steps: [], keeping: [], reheating: [], notes: [] };
  const seen = new Set<JsonValue>();
  const labelled = new Set<string>();
  const root: Omit<Open, "value"> = { place: "steps", section };
  const open = below(valuesOf(graph, recipe, "recipeInstructions"), root);
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { value } = next;
    if (!isObject(value)) {
      takeText(found, next, labelledTexts(plainTexts(value), next.section, labelled));
      continue;
    }
    // Else a section that holds itself would never end.
    if (seen.has(value)) continue;
    seen.add(value);
    const inside = childrenIn(graph, next, value);
    if (inside !== null) open.push(...inside);
    else takeText(found, next, labelledTexts([stepText(graph, value)], next.section, labelled));
  }
  return found;
}

/** Last first, as they are taken from the end. */
function below(values: readonly JsonValue[], at: Omit<Open, "value">): Open[] {
  return values.map((value) => ({ value, place: at.place, section: at.section })).reverse();
}

/** What stands inside a section, a list or a step that is made of directions; null for a plain step. */
function childrenIn(graph: Graph, at: Open, node: JsonObject): readonly Open[] | null {
  const place = isOfType(node, "HowToTip") ? "notes" : at.place;
  const items = ["itemListElement", "item", "steps", "step"]
    .map((name) => valuesOf(graph, node, name))
    .find((values) => values.length > 0);
  if (isOfType(node, "HowToSection")) return below(items ?? [], sectionOf(graph, node));
  if (items !== undefined && lineOf(graph, node, "text") === "") {
    return below(items, { place, section: at.section });
  }
  return place === at.place ? null : below(textsOf(graph, node), { place, section: "" });
}

function sectionOf(graph: Graph, node: JsonObject): Omit<Open, "value"> {
  const name = lineOf(graph, node, "name").replace(/ ?:$/u, "");
  const place = PLACES.find(([pattern]) => pattern.test(name))?.[1] ?? "steps";
  return { place, section: place === "steps" && !STEPS.test(name) ? name : "" };
}

function plainTexts(value: JsonValue): readonly string[] {
  return typeof value === "string"
    ? plainLines(value).map((line) => line.replace(NUMBER, "").trim())
    : [];
}

function stepText(graph: Graph, node: JsonObject): string {
  const [text] = textsOf(graph, node);
  return text === undefined ? lineOf(graph, node, "description") : plainLine(text);
}

/** The first step of a section of another name says which it is. */
function labelledTexts(
  texts: readonly string[],
  section: string,
  labelled: Set<string>,
): readonly string[] {
  const [first, ...rest] = texts.filter((text) => text !== "");
  if (first === undefined || section === "" || labelled.has(section)) return texts;
  labelled.add(section);
  return [`${section}: ${first}`, ...rest];
}

function takeText(found: FoundInstructions, { place }: Open, texts: readonly string[]): void {
  for (const text of texts.filter((line) => line !== "")) {
    if (place === "keeping") takeKeeping(found, text);
    else found[place].push(text);
  }
}

/** Sentences that state how long something keeps; the rest is a note. */
function takeKeeping(found: FoundInstructions, text: string): void {
  const sentences = isKeeping(text) ? [text] : text.split(/(?<=[.;!]) /u);
  for (const sentence of sentences) {
    found[isKeeping(sentence) ? "keeping" : "notes"].push(sentence);
  }
}

/** Whether a text that fits a line of ours states how long something keeps. */
export function isKeeping(text: string): boolean {
  return text.length <= RECIPE_LIMITS.lineChars && readKeeping(text) !== null;
}
