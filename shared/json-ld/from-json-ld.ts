import { fail, type Outcome, ok } from "../outcome.ts";
import { RECIPE_LIMITS } from "../recipe/problems.ts";
import { layOut } from "../recipe/write-layout.ts";
import { excerpt } from "../words/problems.ts";
import {
  bareName,
  findRecipe,
  type Graph,
  lineOf,
  propertyOf,
  textsOf,
  valuesOf,
} from "./graph.ts";
import { parseBounded } from "./parse.ts";
import { plainLine, plainLines } from "./plain-text.ts";
import { readAllInstructions } from "./read-instructions.ts";
import { readParts } from "./read-parts.ts";
import { timesNote } from "./read-times.ts";
import { readYields } from "./read-yields.ts";
import { JSON_LD_LIMITS, type JsonLdProblem, type JsonLdRemark, type JsonObject } from "./types.ts";
import { ALLERGENS_SAY, partName, partsSentence } from "./words.ts";

/** A recipe of a document in our plain-text form, for `readRecipe`. */
export interface FromJsonLd {
  readonly text: string;
  readonly remarks: readonly JsonLdRemark[];
}

/**
 * Reads the one schema.org Recipe of a JSON-LD document, wherever in it it stands, and writes it in our
 * plain-text form; what that form has no place for is remarked on. Markup becomes plain text. Bounded by
 * `JSON_LD_LIMITS`, whatever the document refers to.
 */
export function fromJsonLd(text: string): Outcome<FromJsonLd, JsonLdProblem> {
  const parsed = parseBounded(text);
  if (!parsed.ok) return parsed;
  const found = findRecipe(parsed.value);
  if (!found.ok) return found;
  const { graph, recipe } = found.value;
  const title = ["name", "headline", "alternateName"]
    .map((name) => lineOf(graph, recipe, name))
    .find((line) => /[\p{L}\p{N}]/u.test(line));
  return title === undefined
    ? fail({ code: "recipe without name" })
    : ok(written(graph, recipe, title));
}

function written(graph: Graph, recipe: JsonObject, title: string): FromJsonLd {
  const yields = readYields(graph, recipe);
  const { parts, notes: ofParts, nodes, areIgnored } = readParts(graph, recipe);
  const instructions = readAllInstructions(graph, recipe, nodes);
  const tags = tagsOf(graph, recipe);
  const times = timesNote(graph, recipe);
  const notes = [
    ...descriptionOf(graph, recipe, partsSentence(parts.map(partName))),
    ...ofParts,
    ...instructions.notes,
    times,
    yields.otherwise === "" ? "" : `Yield: ${yields.otherwise}`,
  ];
  const remarks: JsonLdRemark[] = [];
  if (areIgnored) remarks.push({ code: "parts ignored" });
  if (tags.length > RECIPE_LIMITS.tags) {
    remarks.push({ code: "tags cut", max: RECIPE_LIMITS.tags });
  }
  if (times !== "") remarks.push({ code: "times as note" });
  if (propertyOf(recipe, "nutrition") !== null) remarks.push({ code: "nutrition ignored" });
  return {
    text: layOut({
      title,
      yieldLine: yields.line,
      tags: tags.slice(0, RECIPE_LIMITS.tags),
      parts,
      steps: instructions.steps,
      keeping: instructions.keeping,
      reheating: instructions.reheating,
      notes: notes.filter((note) => note !== "").flatMap(shortEnough),
    }),
    remarks: [...remarks, ...leftOut(recipe)],
  };
}

/** A document of ours says its parts and allergens there too, which are read from the recipe itself. */
function descriptionOf(graph: Graph, recipe: JsonObject, parts: string): readonly string[] {
  const [said] = valuesOf(graph, recipe, "description");
  return textsOf(graph, said ?? null)
    .flatMap(plainLines)
    .filter((line) => line !== parts && !line.startsWith(ALLERGENS_SAY));
}

function tagsOf(graph: Graph, recipe: JsonObject): readonly string[] {
  const said = valuesOf(graph, recipe, "keywords")
    .flatMap((value) => textsOf(graph, value).slice(0, 1))
    .flatMap((text) => plainLine(text).split(/[,;]/u))
    .map((tag) => tag.trim().toLowerCase());
  return [...new Set(said)].filter((tag) => tag !== "" && tag.length < RECIPE_LIMITS.lineChars - 8);
}

/** A note too long for a line is cut between sentences, else between words. */
function shortEnough(note: string): readonly string[] {
  const max = RECIPE_LIMITS.lineChars;
  if (note.length <= max) return [note];
  const room = note.slice(0, max - 8);
  const sentence = Math.max(...[". ", "! ", "? "].map((end) => room.lastIndexOf(end) + 1));
  const cut = sentence > 0 ? sentence : room.lastIndexOf(" ");
  const at = cut > 0 ? cut : room.length;
  return [note.slice(0, at).trim(), ...shortEnough(note.slice(at).trim())];
}

const TAKEN = new Set([
  "name",
  "headline",
  "alternateName",
  "description",
  "keywords",
  "recipeYield",
  "yield",
  "recipeIngredient",
  "ingredients",
  "recipeInstructions",
  "hasPart",
  "prepTime",
  "cookTime",
  "totalTime",
  "nutrition",
]);

function leftOut(recipe: JsonObject): readonly JsonLdRemark[] {
  const properties = Object.keys(recipe)
    .filter((key) => !key.startsWith("@"))
    .map(bareName)
    .filter((name) => !TAKEN.has(name))
    .slice(0, JSON_LD_LIMITS.names)
    .map((name) => excerpt(plainLine(name)));
  return properties.length === 0 ? [] : [{ code: "left out", properties }];
}
