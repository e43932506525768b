/** JSON as it goes over the wire, and narrow ways to look into it without trusting its shape. */
export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json | undefined;
}

export function parseJson(text: string): Json {
  return JSON.parse(text) as Json;
}

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** The value as an object; an empty one when it is something else. */
export function obj(value: Json | undefined): JsonObject {
  return isObject(value) ? value : {};
}

/** The value as a list; an empty one when it is something else. */
export function list(value: Json | undefined): readonly Json[] {
  return Array.isArray(value) ? (value as readonly Json[]) : [];
}

/** The value as text; "" when it is something else. */
export function str(value: Json | undefined): string {
  return typeof value === "string" ? value : "";
}

export function num(value: Json | undefined): number {
  return typeof value === "number" ? value : 0;
}
