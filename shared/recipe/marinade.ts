import { readStep } from "./read-step.ts";
import type { Recipe } from "./types.ts";

/** How long something lies in its marinade, in the fridge. */
export interface Marinade {
  readonly leastMinutes: number;
  readonly mostMinutes: number;
  /** Whose figures: the recipe's, or the usual ones where it states none or only one of the two. */
  readonly least: "stated" | "usual";
  readonly most: "stated" | "usual";
}

/** Common practice, no published source: taste gets in from half an hour on, acid turns flesh mushy after a day. */
const USUAL = { leastMinutes: 30, mostMinutes: 24 * 60 } as const;
/**
 * Poultry and cut meat keep two days in a marinade in the fridge (USDA FSIS, "Poultry: Basting, Brining, and
 * Marinating", from memory): nothing that a recipe says goes beyond.
 */
const LONGEST_MINUTES = 48 * 60;
const OVERNIGHT_MINUTES = 8 * 60;

const MARINATES = /\bmarinat(?:e|ing)\b|\b(?:in|into) (?:the|its|their) marinade\b/iu;
/** "The marinated chicken" is done with it. */
const UP_TO =
  /\b(?:up to|at most|no (?:more|longer) than|not (?:more|longer) than|max(?:imum)?)\b/iu;
const RANGE =
  /(\d[\d.,]*)(?: ?(?:minutes?|mins?|hours?|hrs?|h))? ?(?:[-–]|to) ?\d[\d.,]* ?(?:minutes?|mins?|hours?|hrs?|h)\b/iu;

/** The window of a recipe's marinade, from its steps; null when nothing is marinated. */
export function marinadeOf(recipe: Recipe): Marinade | null {
  for (const { text } of recipe.steps) {
    const sentences = text.slice(0, 600).split(/(?<=[.;!?])\s+/u);
    const at = sentences.findIndex((sentence) => MARINATES.test(sentence));
    const sentence = sentences[at];
    if (sentence === undefined) continue;
    // "Coat with the marinade. Chill for 2 hours": the next sentence may say how long.
    const own = windowIn(sentence);
    const next = sentences[at + 1] ?? "";
    return (
      own ??
      (/\b(?:chill|fridge|refrigerat|leave)/iu.test(next) ? windowIn(next) : null) ?? {
        ...USUAL,
        least: "usual",
        most: "usual",
      }
    );
  }
  return null;
}

function windowIn(sentence: string): Marinade | null {
  const from = sentence.search(MARINATES);
  const said = from < 0 ? sentence : `${sentence.slice(from)} ${sentence.slice(0, from)}`;
  const minutes = minutesIn(said);
  const [first] = minutes;
  const last = minutes.at(-1);
  if (first === undefined || last === undefined) return null;
  if (minutes.length > 1 && last > first) return bounded(first, last);
  if (UP_TO.test(said))
    return { ...bounded(Math.min(USUAL.leastMinutes, first), first), least: "usual" };
  return { ...bounded(first, Math.max(first, USUAL.mostMinutes)), most: "usual" };
}

function minutesIn(said: string): readonly number[] {
  const minutes = [...readStep(said).minutes];
  const range = RANGE.exec(said);
  // A step keeps the upper end of a range only.
  const [low] =
    range === null ? [] : readStep(range[0].replace(/ ?(?:[-–]|to) ?\d[\d.,]*/iu, "")).minutes;
  if (low !== undefined && minutes[0] !== undefined && low < minutes[0]) minutes.unshift(low);
  const days = /\b(\d{1,2}) ?days?\b/iu.exec(said);
  if (days !== null) minutes.push(Number(days[1]) * 24 * 60);
  if (/\bover ?night\b/iu.test(said)) minutes.push(OVERNIGHT_MINUTES);
  return minutes;
}

function bounded(least: number, most: number): Marinade {
  const mostMinutes = Math.min(most, LONGEST_MINUTES);
  return {
    leastMinutes: Math.min(least, mostMinutes),
    mostMinutes,
    least: "stated",
    most: "stated",
  };
}
