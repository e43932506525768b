import { classify } from "../recipe/classify.ts";
import { isSwapLine } from "../recipe/read-ingredient.ts";
import type { ReadMakes } from "../recipe/read-makes.ts";
import type { MakesMore } from "../recipe/types.ts";
import type { PartPieces } from "../recipe/write-layout.ts";
import { waysToSplit } from "../recipe/write-text.ts";
import { type Graph, isOfType, lineOf, textsOf, valuesOf } from "./graph.ts";
import { isObject } from "./parse.ts";
import { plainLines } from "./plain-text.ts";
import { isKeeping } from "./read-instructions.ts";
import type { JsonObject } from "./types.ts";
import { isHeading, withoutBullet } from "./words.ts";

/** The parts of a document's recipe. */
export interface FoundParts {
  readonly parts: readonly PartPieces[];
  /** What parts say that is no statement about keeping. */
  readonly notes: readonly string[];
  /** The recipes that the parts were taken from. */
  readonly nodes: readonly JsonObject[];
  /** The parts' lines are not those of the list, which was taken. */
  readonly areIgnored: boolean;
}

/** With its bullet a line must still fit the reader's. */
const LINE_CHARS = 590;

/** The recipes under `hasPart` where they hold the same lines as the list does, else the list. */
export function readParts(graph: Graph, recipe: JsonObject): FoundParts {
  const list = linesOf(graph, recipe);
  const own = valuesOf(graph, recipe, "hasPart")
    .filter(isObject)
    .filter((part) => part !== recipe && isOfType(part, "Recipe"))
    .map((node) => readPart(graph, node))
    .filter(({ part }) => part.lines.length > 0);
  const ownLines = own.flatMap(({ texts }) => texts);
  const areSame = list.length === 0 || list.join("\n") === ownLines.join("\n");
  if (own.length === 0 || !areSame) {
    return { parts: fromList(list), notes: [], nodes: [], areIgnored: own.length > 0 };
  }
  return {
    parts: own.map(({ part }) => part),
    notes: own.flatMap(({ notes }) => notes),
    nodes: own.map(({ node }) => node),
    areIgnored: false,
  };
}

/** The ingredients as texts, one text for all cut at its line ends. A swap stands on a line of its own below. */
function linesOf(graph: Graph, node: JsonObject): readonly string[] {
  const values = ["recipeIngredient", "ingredients"]
    .map((name) => valuesOf(graph, node, name))
    .find((found) => found.length > 0);
  const texts = (values ?? []).flatMap((value) => textsOf(graph, value).slice(0, 1));
  const entries = texts.map(plainLines).filter((lines) => lines.length > 0);
  return entries.length === 1 ? withSwapsBelow(entries.flat()) : entries.map(asOneEntry);
}

/** White space in an entry parts nothing, but swaps from what they are for. */
function asOneEntry(lines: readonly string[]): string {
  return lines.join(lines.slice(1).every(isSwapLine) ? "\n" : " ");
}

function withSwapsBelow(lines: readonly string[]): readonly string[] {
  const entries: string[] = [];
  for (const line of lines) {
    const isBelow = entries.length > 0 && isSwapLine(line);
    if (isBelow) entries[entries.length - 1] += `\n${line}`;
    else entries.push(line);
  }
  return entries;
}

interface OwnPart {
  readonly node: JsonObject;
  readonly part: PartPieces;
  readonly texts: readonly string[];
  readonly notes: readonly string[];
}

function readPart(graph: Graph, node: JsonObject): OwnPart {
  const texts = linesOf(graph, node);
  const [description = null] = valuesOf(graph, node, "description");
  const said = textsOf(graph, description).flatMap(plainLines);
  const keeping = said.filter(isKeeping);
  return {
    node,
    part: { ...headed(lineOf(graph, node, "name")), lines: texts.map(splitLong), keeping },
    texts,
    notes: said.filter((line) => !keeping.includes(line)),
  };
}

/** A part by its name as a heading; the first has none where nobody gave it one. */
function headed(name: string): Pick<PartPieces, "name" | "optional" | "makes"> {
  const kind = classify(`${name.slice(0, LINE_CHARS)}:`, "ingredients");
  if (kind.kind === "part" && kind.name !== "") {
    const makes = inGrams(kind.makes);
    // "(makes more than you need, use half)" stays in the name, to be read with its lines.
    const isWhole = makes !== null || kind.makes === null;
    return { name: isWhole ? kind.name : name, optional: kind.optional, makes };
  }
  return { name: name.replaceAll(":", "").trim() || "Base", optional: false };
}

function inGrams(makes: ReadMakes | null): MakesMore | null {
  if (makes?.used?.kind !== "grams" || makes.madeG === null) return null;
  return { madeG: makes.madeG, usedG: makes.used.grams };
}

/** A list in which a line that ends in a colon is the heading of what follows. */
function fromList(list: readonly string[]): readonly PartPieces[] {
  const parts: (Pick<PartPieces, "name" | "optional" | "makes"> & {
    readonly lines: PartPieces["lines"][number][];
  })[] = [];
  for (const entry of list) {
    const text = withoutBullet(entry);
    if (isHeading(text)) {
      parts.push({ ...headed(text.replace(/ ?:(?= ?\(|$)/u, "")), lines: [] });
      continue;
    }
    if (parts.length === 0) parts.push({ name: "Base", optional: false, lines: [] });
    parts.at(-1)?.lines.push(splitLong(text));
  }
  return parts.map((part) => ({ ...part, keeping: [] }));
}

/** Swaps are below the line where they were, or where it would be too long for one. */
function splitLong(entry: string): PartPieces["lines"][number] {
  const [text = "", ...swaps] = entry.split("\n");
  if (swaps.length > 0 || text.length <= LINE_CHARS) return { text, swaps };
  return waysToSplit(text)[0] ?? { text, swaps };
}
