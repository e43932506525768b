import { fromJsonLd } from "../../shared/json-ld/from-json-ld.ts";
import type { JsonLdProblem, JsonLdRemark } from "../../shared/json-ld/types.ts";
import { type Outcome, ok } from "../../shared/outcome.ts";
import { listed } from "../kit/say-problem.ts";

/** What a coach sent, as plain text. */
export interface PlainText {
  readonly text: string;
  /** What of a document did not come over as it stood, as sentences; empty for plain text. */
  readonly notes: readonly string[];
}

/**
 * A schema.org recipe in JSON becomes text in our form; any other text stays as it is. The problem is
 * sentences for the coach.
 */
export function plainTextOf(sent: string): Outcome<PlainText, readonly string[]> {
  const start = sent.replace(/^\uFEFF/u, "").trimStart();
  const isObject = start.startsWith("{");
  if (!isObject && !start.startsWith("[")) return ok({ text: sent, notes: [] });
  const read = fromJsonLd(start);
  if (read.ok) {
    const notes = ["Read from a schema.org recipe.", ...read.value.remarks.map(sayRemark)];
    return ok({ text: read.value.text, notes });
  }
  // "[Lentil pot]" is a title in brackets, not a document.
  if (!isObject && read.problem.code === "not json") return ok({ text: sent, notes: [] });
  return { ok: false, problem: [sayProblem(read.problem)] };
}

function sayProblem(problem: JsonLdProblem): string {
  switch (problem.code) {
    case "not json":
      return "That starts like JSON and is not whole JSON: copy the whole document, or write the recipe as plain text.";
    case "json too long":
      return `That document has ${problem.chars} characters, more than ${problem.max}: send the recipe's own part of it alone.`;
    case "json too deep":
      return `That document is nested more than ${problem.max} deep: send the recipe's own part of it alone.`;
    case "json too big":
      return `That document holds more than ${problem.max} values: send the recipe's own part of it alone.`;
    case "no recipe":
      return "There is no schema.org Recipe in that document: send one with “@type”: “Recipe”, or write the recipe as plain text.";
    case "several recipes":
      return `That document holds ${problem.recipes} recipes${namesOf(problem.names)}: send one at a time.`;
    case "recipe without name":
      return "The recipe in that document has no name: give it one under “name”.";
  }
}

function namesOf(names: readonly string[]): string {
  const named = names.filter((name) => name !== "");
  return named.length === 0 ? "" : ` (${listed(named)})`;
}

function sayRemark(remark: JsonLdRemark): string {
  switch (remark.code) {
    case "nutrition ignored":
      return "Its nutrition figures were not taken over: figures are worked out from the foods.";
    case "times as note":
      return "Its times stand in a note.";
    case "parts ignored":
      return "Its parts do not hold the same lines as its list of ingredients: the list was taken.";
    case "tags cut":
      return `It had more keywords than ${remark.max}: the first ${remark.max} are tags.`;
    case "left out":
      return `Left out, for want of a place: ${remark.properties.join(", ")}.`;
  }
}
