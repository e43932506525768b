import { type AllergyAlert, alertsFor } from "../../shared/allergen/alerts.ts";
import type { BookQuery, BookResult, FoundRecipe } from "../../shared/book/types.ts";
import type { Allergen } from "../../shared/food/types.ts";
import type { Profile } from "../../shared/people/types.ts";
import { count } from "../../shared/words/plural.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { writePress } from "../kit/press.ts";
import { type Choice, type Part, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { allergyMark } from "./allergen-parts.ts";
import type { FindRequest } from "./find-query.ts";
import { and, figuresOf, sayFreezing, sayQuery } from "./find-words.ts";

/** Rows of a reply in all. */
export const SHOWN = 10;
const NAMES_IN_NOTE = 4;
/** Limits of the platform. */
const LABEL_CHARS = 90;
const HINT_CHARS = 100;

type Avoids = Pick<Profile, "allergens">;

/** What was found: what fits first, then, apart, what nobody knows whether it does. */
export function foundReply(result: BookResult, request: FindRequest, profile: Avoids): Reply {
  const { query, remarks } = request;
  const unsure = result.notKnown.slice(0, Math.max(0, SHOWN - result.found.length));
  const rowsOf = (list: readonly FoundRecipe[]) => list.map((one) => rowOf(one, query, profile));
  const parts: Part[] = [];
  if (result.found.length > 0) parts.push(rows(null, rowsOf(result.found)));
  if (unsure.length > 0) parts.push(rows("Not known whether it fits", rowsOf(unsure)));
  const lines = [...said(result), ...remarks, ...more(result, unsure.length)];
  if (lines.length > 0) parts.push(text(...lines));
  const shown = [...result.found, ...unsure];
  return reply(headingOf(result, query), {
    parts,
    cautions: cautionsFor(query, shown.length),
    choices: shown.length === 0 ? [] : [cardChoice(shown, query, profile)],
  });
}

function headingOf({ foundCount, notKnownCount, found }: BookResult, query: BookQuery): string {
  const asked = sayQuery(query);
  const of = asked === "" ? "" : `${query.words === "" ? ":" : " for"} ${asked}`;
  if (foundCount > found.length) return `The first ${found.length} of ${foundCount} recipes${of}`;
  if (foundCount > 0) return `${count(foundCount, "recipe")}${of}`;
  return notKnownCount > 0 ? `No recipe is known to fit ${asked}.` : `No recipe fits ${asked}.`;
}

function said({ mended, unused, foundCount, notKnownCount }: BookResult): readonly string[] {
  return [
    ...mended.map(
      ({ typed, taken }) => `No recipe has “${excerpt(typed)}”; “${taken}” was taken instead.`,
    ),
    ...(unused.length === 0 ? [] : [`No recipe uses ${and(unused)}.`]),
    ...(foundCount + notKnownCount === 0
      ? ["Ask for less at once, or type /recipe find alone to see all."]
      : []),
  ];
}

function more(result: BookResult, unsureShown: number): readonly string[] {
  const unsure = result.notKnownCount - unsureShown;
  const known = result.foundCount - result.found.length;
  return [
    ...(known > 0
      ? [`${known} more: add a word or a figure, or pick by name in /recipe card.`]
      : []),
    ...(unsure > 0
      ? [
          `Of ${count(unsure, "more recipe")} it is not known whether ${unsure === 1 ? "it fits" : "they fit"}.`,
        ]
      : []),
  ];
}

function cautionsFor({ freeOf }: BookQuery, shown: number): readonly string[] {
  if (shown === 0) return [];
  return [
    ...(freeOf.length === 0
      ? []
      : [
          "“Free of” goes by the food table and by names, optional parts included: the packs decide.",
        ]),
    "Figures are estimates for a portion as written, optional parts included.",
  ];
}

function rowOf(found: FoundRecipe, query: BookQuery, profile: Avoids): Row {
  const { entry } = found;
  const notes = [
    allergyMark(profile, entry.allergens) ?? "",
    ...doubts(found, query.freeOf, profile.allergens),
    ...why(found),
    sayFreezing(entry),
  ];
  const note = notes.filter((one) => one !== "").join("; ");
  return { label: entry.title, figure: figuresOf(entry, query.style), note };
}

/** What keeps it from being free of what was asked, or would in a swap; not what its mark says already. */
function doubts(
  { entry, notKnown }: FoundRecipe,
  freeOf: readonly Allergen[],
  own: readonly Allergen[],
): readonly string[] {
  const isMarked = freeOf.every((one) => own.includes(one));
  const alerts = alertsFor(freeOf, entry.allergens).filter(
    ({ kind }) => !(isMarked && (kind === "may hide" || kind === "not known")),
  );
  return [
    ...alerts.map(sayDoubt),
    ...(notKnown.includes("energy") ? ["energy not known whole"] : []),
    ...(notKnown.includes("protein") ? ["protein not known whole"] : []),
  ];
}

function sayDoubt(alert: AllergyAlert): string {
  const foods = and(alert.foods, 2);
  switch (alert.kind) {
    case "contains":
      return `contains ${and(alert.allergens)}: ${foods}`;
    case "may hide":
      return `may hide ${and(alert.allergens)}: ${foods}`;
    case "not known":
      return `not known what is in: ${foods}`;
    case "in a swap":
      return `but a swap contains ${and(alert.allergens)}: ${foods}`;
    case "swap may hide":
      return `but a swap may hide ${and(alert.allergens)}: ${foods}`;
    case "swap not known":
      return `but not known what is in a swap: ${foods}`;
  }
}

function why({ uses, needs, foods, tags }: FoundRecipe): readonly string[] {
  return [
    uses.length === 0 ? "" : `uses ${and(uses, NAMES_IN_NOTE)}`,
    needs === null ? "" : needs === 0 ? "needs nothing else" : `needs ${count(needs, "other")}`,
    foods.length === 0 ? "" : `has ${and(foods, NAMES_IN_NOTE)}`,
    tags.length === 0 ? "" : `tagged ${and(tags, NAMES_IN_NOTE)}`,
  ];
}

function cardChoice(shown: readonly FoundRecipe[], query: BookQuery, profile: Avoids): Choice {
  return {
    id: writePress("recipe card", "show"),
    placeholder: "See a card",
    options: shown.map(({ entry }) => ({
      value: entry.id,
      label: cut(entry.title, LABEL_CHARS),
      hint: cut(
        [allergyMark(profile, entry.allergens) ?? "", figuresOf(entry, query.style)]
          .filter((one) => one !== "")
          .join(" · "),
        HINT_CHARS,
      ),
    })),
  };
}

function cut(said: string, most: number): string {
  return said.length > most ? `${said.slice(0, most - 1)}…` : said;
}
