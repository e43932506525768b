import { fail, type Outcome, ok } from "../outcome.ts";
import { JSON_LD_LIMITS, type JsonLdProblem, type JsonObject, type JsonValue } from "./types.ts";

/** Parses JSON of bounded length, depth and number of values. Of a key given twice the last counts. */
export function parseBounded(text: string): Outcome<JsonValue, JsonLdProblem> {
  const { chars, depth, values } = JSON_LD_LIMITS;
  if (text.length > chars) {
    return fail({ code: "json too long", chars: text.length, max: chars });
  }
  const parsed = parse(text.replace(/^\uFEFF/u, ""));
  if (!parsed.ok) return parsed;
  let count = 0;
  const open: { readonly value: JsonValue; readonly depth: number }[] = [
    { value: parsed.value, depth: 0 },
  ];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    count += 1;
    if (next.depth > depth) return fail({ code: "json too deep", max: depth });
    if (count > values) return fail({ code: "json too big", max: values });
    for (const value of childrenOf(next.value)) open.push({ value, depth: next.depth + 1 });
  }
  return parsed;
}

function parse(text: string): Outcome<JsonValue, JsonLdProblem> {
  try {
    // The border: whatever JSON.parse returns is a JSON value.
    return ok(JSON.parse(text) as JsonValue);
  } catch {
    return fail({ code: "not json" });
  }
}

/** The values directly inside a list or an object. */
export function childrenOf(value: JsonValue): readonly JsonValue[] {
  if (isList(value)) return value;
  return isObject(value) ? Object.values(value) : [];
}

export function isList(value: JsonValue): value is readonly JsonValue[] {
  return Array.isArray(value);
}

export function isObject(value: JsonValue): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
