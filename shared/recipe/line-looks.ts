import { readAmount } from "../quantity/read-amount.ts";
import { amountLast } from "./read-ingredient.ts";

/** Whether a line without a mark names an amount of something, right or wrong. */
export function hasAmount(text: string): boolean {
  if (/^\S{1,12} ?(?:minutes?|mins?|hours?|hrs?)\b/iu.test(text)) return false;
  if (amountLast(text)?.ok === true) return true;
  const read = readAmount(text);
  // A wrong amount still is one: its fault must be told.
  return read.ok || (read.problem.code !== "no number" && read.problem.code !== "not a number");
}

/** Ingredients are shorter. */
const LINE_CHARS = 140;

/** Whether a line reads as sentences, not as the name of a food. */
export function looksLikeProse(text: string): boolean {
  const words = text.split(" ").length;
  if (text.length > LINE_CHARS || /https?:\/\/|www\./iu.test(text)) return true;
  if (/[.!?…]["”')]?$/u.test(text) && words >= 5) return true;
  return words >= 8 && /[.!?] \p{Lu}/u.test(text);
}

const FIGURES =
  /\b(?:kcal|calories|cals|kj|macros|nutrition)\b|\bper (?:portion|serving|person|head)\b|\d ?g (?:of )?(?:protein|carbs?|carbohydrates?|fat|fibre|fiber)[ ,;|/]*(?:$|[\d(])/iu;
const TIMES =
  /^(?:prep(?:aration)?|cook(?:ing)?|total|active|hands[- ]on|ready|resting|marinating|time)\b.{0,30}\d.{0,12}\b(?:m|mins?|minutes?|h|hrs?|hours?)\b/iu;
const KINDS = /^(?:difficulty|cuisine|course|category|source|author|by|cost|equipment|diet) ?:/iu;

/** Whether a line is about the recipe: its times, its figures per portion, where it is from. */
export function isAboutRecipe(text: string): boolean {
  return FIGURES.test(text) || TIMES.test(text) || KINDS.test(text);
}
