import { isYieldLine, readYield } from "../recipe/read-yield.ts";
import { type Graph, lineOf, textsOf, valuesOf } from "./graph.ts";
import { isObject } from "./parse.ts";
import { plainLine } from "./plain-text.ts";
import type { JsonObject, JsonValue } from "./types.ts";

/** What a document says of the yield, as a line of our form. */
export interface FoundYield {
  /** Null where nothing said can be a yield. */
  readonly line: string | null;
  /** What was said instead, for the notes; "" for nothing. */
  readonly otherwise: string;
}

const SAYINGS_MAX = 20;

/**
 * The yield line that tells most: with a cooked weight, else with a word of its own, else the first. A
 * yield that nobody can take ("4-6") is written as it stands, so that its fault is told.
 */
export function readYields(graph: Graph, recipe: JsonObject): FoundYield {
  const said = [...valuesOf(graph, recipe, "recipeYield"), ...valuesOf(graph, recipe, "yield")]
    .slice(0, SAYINGS_MAX)
    .flatMap((value) => sayingOf(graph, value))
    .filter((text) => text !== "");
  const lines = said.flatMap((text) => [asLine(text), asLine(text.replace(/[,;(].*$/u, ""))]);
  const good = lines.filter((line) => readYield(line, 1).ok);
  const best = good.find(hasWeight) ?? good.find(hasOwnWord) ?? good[0];
  const line = best ?? lines.find(isYieldLine) ?? null;
  return { line, otherwise: line === null ? (said[0] ?? "") : "" };
}

/** A quantity says its number and its unit apart. */
function sayingOf(graph: Graph, value: JsonValue): readonly string[] {
  if (!isObject(value)) return textsOf(graph, value).slice(0, 1).map(plainLine);
  const number = lineOf(graph, value, "value");
  const words = [number, lineOf(graph, value, "unitText")].join(" ").trim();
  return number === "" ? textsOf(graph, value).slice(0, 1).map(plainLine) : [words];
}

function asLine(text: string): string {
  return isYieldLine(text) ? text : `Makes ${text.trim()}`;
}

function hasWeight(line: string): boolean {
  const read = readYield(line, 1);
  return read.ok && read.value.yieldG !== null;
}

function hasOwnWord(line: string): boolean {
  const read = readYield(line, 1);
  return read.ok && read.value.portionWord !== "portion";
}
