import { fail, type Outcome, ok } from "../outcome.ts";
import { excerpt } from "../words/problems.ts";
import { childrenOf, isList, isObject } from "./parse.ts";
import { plainLine } from "./plain-text.ts";
import { JSON_LD_LIMITS, type JsonLdProblem, type JsonObject, type JsonValue } from "./types.ts";

/** A document with its nodes by their `@id`. References are followed at most `steps.left` times in all. */
export interface Graph {
  readonly nodes: ReadonlyMap<string, JsonObject>;
  readonly steps: { left: number };
}

/** Far more than a document of 5,000 values needs, unless it refers to itself. */
const STEPS_MAX = 50_000;

const PREFIX = /^(?:https?:\/\/(?:www\.)?schema\.org\/|schema:)/u;
const PREFIXES = ["", "schema:", "https://schema.org/", "http://schema.org/"];

/** A node's own value under a schema.org name, with or without the vocabulary's address before it. */
export function propertyOf(node: JsonObject, name: string): JsonValue {
  for (const prefix of name.startsWith("@") ? [""] : PREFIXES) {
    if (Object.hasOwn(node, `${prefix}${name}`)) return node[`${prefix}${name}`] ?? null;
  }
  return null;
}

/** A property's name without the vocabulary's address. */
export function bareName(key: string): string {
  return key.replace(PREFIX, "");
}

export function isOfType(node: JsonObject, type: string): boolean {
  const said = propertyOf(node, "@type");
  const types = isList(said) ? said.slice(0, 20) : [said];
  return types.some((one) => typeof one === "string" && bareName(one) === type);
}

/** All values of a property in order: lists flattened, references followed, `@value` and `@list` opened. */
export function valuesOf(graph: Graph, node: JsonObject, name: string): readonly JsonValue[] {
  const found: JsonValue[] = [];
  const followed = new Set<string>();
  const open: JsonValue[] = [propertyOf(node, name)];
  for (let value = open.pop(); value !== undefined; value = open.pop()) {
    graph.steps.left -= 1;
    if (graph.steps.left < 0) break;
    const inside = opened(graph, value, followed);
    if (inside === null) found.push(value);
    else open.push(...[...inside].reverse());
  }
  return found.filter((value) => value !== null);
}

/** What a wrapper holds; null for a value of its own. */
function opened(
  graph: Graph,
  value: JsonValue,
  followed: Set<string>,
): readonly JsonValue[] | null {
  if (isList(value)) return value;
  if (!isObject(value)) return null;
  for (const key of ["@list", "@set", "@value"]) {
    if (Object.hasOwn(value, key)) return [value[key] ?? null];
  }
  const id = propertyOf(value, "@id");
  const isReference = typeof id === "string" && Object.keys(value).length === 1;
  if (!isReference) return null;
  const target = graph.nodes.get(id);
  if (target === undefined || followed.has(id)) return [];
  followed.add(id);
  return [target];
}

/** Every text a value says: itself, or what a node's `text`, `name` or `value` says; as written. */
export function textsOf(graph: Graph, value: JsonValue): readonly string[] {
  if (typeof value === "string") return [value];
  if (typeof value === "number") return Number.isFinite(value) ? [String(value)] : [];
  if (!isObject(value)) return [];
  for (const name of ["text", "name", "value"]) {
    const said = valuesOf(graph, value, name).filter(isScalar).map(String);
    if (said.length > 0) return said;
  }
  return [];
}

function isScalar(value: JsonValue): boolean {
  return typeof value === "string" || (typeof value === "number" && Number.isFinite(value));
}

/** The first text of a property as one plain line; "" when it has none. */
export function lineOf(graph: Graph, node: JsonObject, name: string): string {
  for (const value of valuesOf(graph, node, name)) {
    for (const text of textsOf(graph, value)) {
      const line = plainLine(text);
      if (line !== "") return line;
    }
  }
  return "";
}

/** The one recipe of a document, wherever it stands; recipes inside it are its parts. */
export function findRecipe(
  root: JsonValue,
): Outcome<{ readonly graph: Graph; readonly recipe: JsonObject }, JsonLdProblem> {
  const nodes = new Map<string, JsonObject>();
  const recipes = new Set<JsonObject>();
  const open: { readonly value: JsonValue; readonly inRecipe: boolean }[] = [
    { value: root, inRecipe: false },
  ];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    let { inRecipe } = next;
    if (isObject(next.value)) {
      keepFullest(nodes, next.value);
      const isRecipe = isOfType(next.value, "Recipe");
      if (isRecipe && !inRecipe) recipes.add(next.value);
      inRecipe ||= isRecipe;
    }
    for (const value of [...childrenOf(next.value)].reverse()) open.push({ value, inRecipe });
  }
  const graph: Graph = { nodes, steps: { left: STEPS_MAX } };
  const [recipe, ...others] = withoutParts(graph, eachOnce(graph, recipes));
  if (recipe === undefined) return fail({ code: "no recipe" });
  if (others.length === 0) return ok({ graph, recipe });
  const names = [recipe, ...others]
    .slice(0, JSON_LD_LIMITS.names)
    .map((one) => excerpt(lineOf(graph, one, "name")));
  return fail({ code: "several recipes", names, recipes: others.length + 1 });
}

/** Of several nodes with one `@id` the one that says most. */
function keepFullest(nodes: Map<string, JsonObject>, node: JsonObject): void {
  const id = propertyOf(node, "@id");
  const size = Object.keys(node).length;
  if (typeof id !== "string" || size === 1) return;
  const before = nodes.get(id);
  if (before === undefined || size > Object.keys(before).length) nodes.set(id, node);
}

function eachOnce(graph: Graph, recipes: ReadonlySet<JsonObject>): readonly JsonObject[] {
  const fullest = [...recipes].map((recipe) => {
    const id = propertyOf(recipe, "@id");
    const best = typeof id === "string" ? graph.nodes.get(id) : undefined;
    return best !== undefined && isOfType(best, "Recipe") ? best : recipe;
  });
  return [...new Set(fullest)];
}

/** A recipe that another one names as its part is none of its own. */
function withoutParts(graph: Graph, recipes: readonly JsonObject[]): readonly JsonObject[] {
  if (recipes.length < 2) return recipes;
  const parts = new Set<JsonValue>();
  for (const recipe of recipes) {
    for (const part of valuesOf(graph, recipe, "hasPart")) if (part !== recipe) parts.add(part);
  }
  const whole = recipes.filter((recipe) => !parts.has(recipe));
  return whole.length === 0 ? recipes : whole;
}
