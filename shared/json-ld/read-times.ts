import { count } from "../words/plural.ts";
import { type Graph, lineOf } from "./graph.ts";
import type { JsonObject } from "./types.ts";

/** ISO 8601 durations from seconds to days; a year of cooking is none. */
const DURATION =
  /^P(?:(\d{1,2})D)?(?:T(?:(\d{1,4})H)?(?:(\d{1,5})M)?(?:(\d{1,6})(?:\.\d{1,9})?S)?)?$/u;

/** The times a document states, as a note: "Preparation 20 minutes, cooking 1 hour."; "" for none. */
export function timesNote(graph: Graph, recipe: JsonObject): string {
  const said = [
    { word: "preparation", minutes: minutesOf(lineOf(graph, recipe, "prepTime")) },
    { word: "cooking", minutes: minutesOf(lineOf(graph, recipe, "cookTime")) },
    { word: "in all", minutes: minutesOf(lineOf(graph, recipe, "totalTime")) },
  ]
    .filter(({ minutes }) => minutes > 0)
    .map(({ word, minutes }) => `${word} ${written(minutes)}`)
    .join(", ");
  return said === "" ? "" : `${said.slice(0, 1).toUpperCase()}${said.slice(1)}.`;
}

function minutesOf(text: string): number {
  const match = DURATION.exec(text);
  if (match === null) return 0;
  const [days, hours, minutes, seconds] = match.slice(1).map((figure) => Number(figure ?? 0));
  const all = (days ?? 0) * 1440 + (hours ?? 0) * 60 + (minutes ?? 0) + (seconds ?? 0) / 60;
  return Math.round(all);
}

function written(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  return [hours === 0 ? "" : count(hours, "hour"), rest === 0 ? "" : count(rest, "minute")]
    .filter((piece) => piece !== "")
    .join(" ");
}
