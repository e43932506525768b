import { type AllergyAlert, alertsFor, groupByFoods } from "../../shared/allergen/alerts.ts";
import type { AllergenIn, AllergensFound, ReadableLine } from "../../shared/allergen/find.ts";
import { US_NINE } from "../../shared/allergen/lists.ts";
import type { FoodBook } from "../../shared/food/book.ts";
import type { Allergen } from "../../shared/food/types.ts";
import { type RiskKind, risksAtTable, type TableRisk } from "../../shared/people/table-risk.ts";
import type { Profile, Vulnerable } from "../../shared/people/types.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { excerpt } from "../../shared/words/problems.ts";
import type { Row } from "../kit/reply.ts";
import { listed } from "../kit/say-problem.ts";

/** Names of foods in one sentence; the rest is counted. */
const NAMES_SHOWN = 6;

/** "a, b and c"; of a long list the first and how many more. */
function together(names: readonly string[]): string {
  const shown = names.slice(0, NAMES_SHOWN).map(excerpt);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(", ")} and ${more} more`;
  return joined(shown);
}

function joined(names: readonly string[]): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} and ${last}`;
}

/** The allergens of a card in one row: what the US nine and the EU fourteen demand, and how sure it is. */
export function allergenRows(found: AllergensFound): readonly Row[] {
  const { contains, mayHide, unknown } = found;
  const isOpen = unknown.length > 0;
  const held = new Set(contains.map(({ allergen }) => allergen));
  const hidden = mayHide.filter(({ allergen }) => !held.has(allergen));
  const unnamedInUs = contains.map(({ allergen }) => allergen).filter(isUnnamedInUs(contains));
  const notes = [
    hidden.length === 0 ? "" : `may hide: ${withFoods(hidden)}`,
    isOpen ? `not known: ${together(unknown)}` : "",
    unnamedInUs.length === 0 ? "" : `a US pack need not name ${joined(unnamedInUs)}`,
    "the packs decide",
  ].filter((note) => note !== "");
  return [{ label: "allergens", figure: figureOf(contains, isOpen), note: notes.join("; ") }];
}

/** With an unknown food in it a list is never whole, and never reads as "free of". */
function figureOf(contains: readonly AllergenIn[], isOpen: boolean): string {
  if (contains.length === 0) return isOpen ? "not known" : "none known";
  return `${isOpen ? "at least " : ""}${allergenNames(contains).join(", ")}`;
}

/** "wheat (gluten)" where the gluten is all of wheat; a name of its own where it is of other cereals too. */
function allergenNames(contains: readonly AllergenIn[]): readonly string[] {
  const glutenIsWheat = isGlutenOfWheat(contains);
  return contains
    .filter(({ allergen }) => allergen !== "gluten" || !glutenIsWheat)
    .map(({ allergen }) => (allergen === "wheat" && glutenIsWheat ? "wheat (gluten)" : allergen));
}

function isGlutenOfWheat(contains: readonly AllergenIn[]): boolean {
  const foodsOf = (one: Allergen) => contains.find(({ allergen }) => allergen === one)?.foods ?? [];
  const wheat = foodsOf("wheat");
  return wheat.length > 0 && foodsOf("gluten").every((food) => wheat.includes(food));
}

/** Sulphites are outside the nine, and named in the US all the same (21 CFR 101.100(a)(4), from memory). */
function isUnnamedInUs(contains: readonly AllergenIn[]): (allergen: Allergen) => boolean {
  const named = new Set<Allergen>([...US_NINE.flatMap(({ covers }) => covers), "sulphites"]);
  if (isGlutenOfWheat(contains)) named.add("gluten");
  return (allergen) => !named.has(allergen);
}

function withFoods(list: readonly AllergenIn[]): string {
  return groupByFoods(list)
    .map(({ allergens, foods }) => `${joined(allergens)} (${together(foods)})`)
    .join(", ");
}

/** Loud sentences for a member: what they avoid and the recipe contains, may hide, or nobody knows. */
export function allergyAlerts(
  profile: Pick<Profile, "allergens">,
  found: AllergensFound,
): readonly string[] {
  return alertsFor(profile.allergens, found).map((alert) => sayAlert(alert, profile.allergens));
}

function sayAlert(alert: AllergyAlert, avoided: readonly Allergen[]): string {
  const foods = together(alert.foods);
  switch (alert.kind) {
    case "contains":
      return `Contains ${joined(alert.allergens)}, which you avoid: ${foods}.`;
    case "may hide":
      return `May hide ${joined(alert.allergens)}, which you avoid: ${foods}. Read the pack.`;
    case "not known":
      return `Not known whether ${avoidedIn(avoided)} in: ${foods}. Read the pack.`;
    case "in a swap":
      return `Not in it as shown, but a swap contains ${joined(alert.allergens)}, which you avoid: ${foods}.`;
    case "swap may hide":
      return `A swap may hide ${joined(alert.allergens)}, which you avoid: ${foods}. Read the pack.`;
    case "swap not known":
      return `Not known whether ${avoidedIn(avoided)} in a swap: ${foods}. Read the pack.`;
  }
}

function avoidedIn(avoided: readonly Allergen[]): string {
  return avoided.length > 3 ? "what you avoid is" : `${listed(avoided)}, which you avoid, is`;
}

/** The gravest thing a member should know of a recipe in a list, in a few words; null when there is none. */
export function allergyMark(
  profile: Pick<Profile, "allergens">,
  found: AllergensFound,
): string | null {
  const [first] = alertsFor(profile.allergens, found);
  switch (first?.kind) {
    case "contains": {
      const all = alertsFor(profile.allergens, found).flatMap((alert) =>
        alert.kind === "contains" ? alert.allergens : [],
      );
      return `contains ${joined([...new Set(all)])}, which you avoid`;
    }
    case "may hide":
      return `may hide ${joined(first.allergens)}, which you avoid`;
    case "not known":
      return `not known for what you avoid: ${together(first.foods.slice(0, 2))}`;
    default:
      return null;
  }
}

/** Loud sentences for a member with vulnerable people at the table; empty for any other. */
export function tableAlerts(
  profile: Pick<Profile, "vulnerable">,
  shown: {
    readonly recipe: Recipe;
    readonly lines: readonly ReadableLine[];
    readonly foods: FoodBook;
  },
): readonly string[] {
  return risksAtTable(profile.vulnerable, shown.recipe, shown.lines, shown.foods).map(sayRisk);
}

const WHO: Readonly<Record<Vulnerable, string>> = {
  pregnant: "in pregnancy",
  "under five": "under five",
  "over 65": "over 65",
  "weak immune system": "with a weak immune system",
};

function sayRisk({ kind, foods, who }: TableRisk): string {
  const { what, instead } = RISK_WORDS[kind];
  const named = together(foods);
  const which = named === what.toLowerCase() ? "" : ` (${named})`;
  const whom = listed(who.map((one) => WHO[one]));
  return `${what}${which}: not ${whom}, and they eat with you. ${instead}`;
}

const RISK_WORDS: Readonly<Record<RiskKind, { readonly what: string; readonly instead: string }>> =
  {
    "raw egg": {
      what: "Raw egg",
      instead: "Use pasteurised egg, or cook it until white and yolk are firm.",
    },
    "soft-cooked egg": {
      what: "Soft egg",
      instead: "Cook theirs until white and yolk are firm.",
    },
    "raw animal food": {
      what: "Raw meat, fish or shellfish",
      instead: "No step shown cooks it. Cook theirs through.",
    },
    undercooked: {
      what: "Meat or fish that is not cooked through",
      instead: "Cook theirs through, by a thermometer.",
    },
    sprouts: {
      what: "Raw or half-cooked sprouts",
      instead: "Cook them until steaming hot throughout, or leave them out.",
    },
    unpasteurised: {
      what: "Unpasteurised milk or juice, and cheese of it",
      instead: "Use pasteurised.",
    },
    "soft cheese": {
      what: "Soft cheese of raw milk",
      instead: "The pack must say pasteurised; safest is cheese heated until it steams.",
    },
    "smoked fish": {
      what: "Smoked fish from the fridge",
      instead: "Heat it to 74 °C, until steaming hot throughout.",
    },
    "ready-to-eat meat": {
      what: "Cold sliced or cured meat",
      instead: "Heat it to 74 °C, until steaming hot throughout.",
    },
    "raw flour": {
      what: "Raw flour",
      instead: "No step shown bakes or cooks it. Flour is a raw food.",
    },
    honey: {
      what: "Honey",
      instead: "Never before the first birthday, cooked or not.",
    },
    "fish high in mercury": {
      what: "Fish high in mercury",
      instead: "Take salmon, cod or sardines.",
    },
  };
