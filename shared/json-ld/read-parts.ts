import { classify } from "../recipe/classify.ts";
import type { PartPieces } from "../recipe/write-layout.ts";
import { waysToSplit } from "../recipe/write-text.ts";
import { type Graph, isOfType, lineOf, textsOf, valuesOf } from "./graph.ts";
import { isObject } from "./parse.ts";
import { plainLine, plainLines } from "./plain-text.ts";
import { isKeeping } from "./read-instructions.ts";
import type { JsonObject } from "./types.ts";

/** The parts of a document's recipe. */
export interface FoundParts {
  readonly parts: readonly PartPieces[];
  /** What parts say that is no statement about keeping. */
  readonly notes: readonly string[];
  /** The parts' lines are not those of the list, which was taken. */
  readonly areIgnored: boolean;
}

/** With its bullet a line must still fit the reader's. */
const LINE_CHARS = 590;
const BULLET = /^(?:[-*•‣·–—▢□☐]|\+) ?(?=[\p{L}\d½¼¾⅓⅔(])/u;

/** The recipes under `hasPart` where they hold the same lines as the list does, else the list. */
export function readParts(graph: Graph, recipe: JsonObject): FoundParts {
  const list = linesOf(graph, recipe);
  const nodes = valuesOf(graph, recipe, "hasPart").filter(
    (part) => isObject(part) && part !== recipe && isOfType(part, "Recipe"),
  ) as readonly JsonObject[];
  const own = nodes
    .map((node) => readPart(graph, node))
    .filter(({ part }) => part.lines.length > 0);
  const ownLines = own.flatMap(({ texts }) => texts);
  const areSame = list.length === 0 || list.join("\n") === ownLines.join("\n");
  return own.length > 0 && areSame
    ? {
        parts: own.map(({ part }) => part),
        notes: own.flatMap(({ notes }) => notes),
        areIgnored: false,
      }
    : { parts: fromList(list), notes: [], areIgnored: own.length > 0 };
}

/** The ingredients as texts: one text for all is cut at its line ends. */
function linesOf(graph: Graph, node: JsonObject): readonly string[] {
  const values = ["recipeIngredient", "ingredients"]
    .map((name) => valuesOf(graph, node, name))
    .find((found) => found.length > 0);
  const texts = (values ?? []).flatMap((value) => textsOf(graph, value).slice(0, 1));
  const lines = texts.length === 1 ? plainLines(texts[0] ?? "") : texts.map(plainLine);
  return lines.filter((line) => line !== "");
}

interface OwnPart {
  readonly part: PartPieces;
  readonly texts: readonly string[];
  readonly notes: readonly string[];
}

function readPart(graph: Graph, node: JsonObject): OwnPart {
  const texts = linesOf(graph, node);
  const said = textsOf(graph, lineSource(graph, node)).flatMap(plainLines);
  const keeping = said.filter(isKeeping);
  return {
    part: { ...headed(lineOf(graph, node, "name")), lines: texts.map(splitLong), keeping },
    texts,
    notes: said.filter((line) => !keeping.includes(line)),
  };
}

function lineSource(graph: Graph, node: JsonObject) {
  return valuesOf(graph, node, "description")[0] ?? null;
}

/** A part by its name as a heading; the first has none where nobody gave it one. */
function headed(name: string): { readonly name: string; readonly optional: boolean } {
  const kind = classify(`${name.slice(0, LINE_CHARS)}:`, "ingredients");
  if (kind.kind === "part" && kind.name !== "") {
    return { name: kind.name, optional: kind.optional };
  }
  return { name: name.replaceAll(":", "").trim() || "Base", optional: false };
}

/** A list in which a line that ends in a colon is the heading of what follows. */
function fromList(list: readonly string[]): readonly PartPieces[] {
  const parts: { name: string; optional: boolean; lines: PartPieces["lines"][number][] }[] = [];
  for (const entry of list) {
    const text = entry.replace(BULLET, "");
    if (/:(?: ?\(optional\))?$/iu.test(text)) {
      parts.push({ ...headed(text.replace(/ ?:(?= ?\(|$)/u, "")), lines: [] });
      continue;
    }
    if (parts.length === 0) parts.push({ name: "Base", optional: false, lines: [] });
    parts.at(-1)?.lines.push(splitLong(text));
  }
  return parts.filter(({ lines }) => lines.length > 0).map((part) => ({ ...part, keeping: [] }));
}

/** A line with so many swaps that it is too long for one has them below it. */
function splitLong(text: string): PartPieces["lines"][number] {
  const [apart] = waysToSplit(text);
  return text.length <= LINE_CHARS || apart === undefined ? { text, swaps: [] } : apart;
}
