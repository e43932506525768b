import type { KeepingClass } from "../food/types.ts";

/** One row of the keeping chart: a food once prepared, opened or cooked, in a fridge at 4 °C or below. */
export interface KeepingRow {
  /** The name a member reads: "cooked meat or poultry". */
  readonly name: string;
  /** Days in the fridge, the lower end of the published range; null where the chart sets no limit of its own. */
  readonly fridgeDays: number | null;
  /** Months of best quality at -18 °C, the lower end; null where the source gives none. */
  readonly freezerMonths: number | null;
  /** How it freezes when it is not cooked into a dish. */
  readonly freezesCold: "well" | "poorly" | "no";
  /** Why, where not "well". */
  readonly reason: string;
  readonly source: string;
}

const CHART_SOURCE = "FoodSafety.gov, Cold Food Storage Chart";
const NCHFP =
  "National Center for Home Food Preservation, foods that do not freeze well (OSU SP 50-766)";
const LEFTOVERS =
  "USDA FSIS, Leftovers and Food Safety: 3 to 4 days; freezer 3 to 4 months (freezer figure from memory)";

function row(
  name: string,
  fridgeDays: number | null,
  freezerMonths: number | null,
  source: string,
  freezes: { readonly how: "poorly" | "no"; readonly reason: string } | null = null,
): KeepingRow {
  return {
    name,
    fridgeDays,
    freezerMonths,
    freezesCold: freezes?.how ?? "well",
    reason: freezes?.reason ?? "",
    source,
  };
}

/**
 * Keeping times by class of food. The raw classes stand for the food once cooked into the recipe (a
 * batch is cooked), so they carry the leftover rule. Lower end of each published range throughout.
 */
export const KEEPING_CHART: Readonly<Record<KeepingClass, KeepingRow>> = {
  "raw-poultry": row("cooked poultry", 3, 3, LEFTOVERS),
  "raw-meat": row("cooked meat", 3, 3, LEFTOVERS),
  "raw-minced-meat": row("cooked minced meat", 3, 3, LEFTOVERS),
  "raw-fish": row(
    "cooked fish",
    3,
    2,
    "USDA FSIS handout (2006): cooked fish 3 to 4 days, freezer 2 to 3 months",
  ),
  "raw-shellfish": row("cooked shellfish", 3, 2, "as cooked fish; from memory"),
  "cooked-meat-or-poultry": row(
    "cooked meat or poultry",
    3,
    2,
    `${CHART_SOURCE}: 3 to 4 days, 2 to 6 months`,
  ),
  "cooked-fish": row(
    "cooked fish",
    3,
    2,
    "USDA FSIS handout (2006): cooked fish 3 to 4 days, freezer 2 to 3 months",
  ),
  "cooked-grain": row("cooked rice, pasta or grain", 3, 3, LEFTOVERS),
  "cooked-pulses": row("cooked beans or lentils", 3, 3, LEFTOVERS),
  "opened-can": row(
    "opened canned food",
    3,
    2,
    "USDA FSIS: opened canned food 3 to 4 days, 2 months (from memory)",
  ),
  "egg-raw": row(
    "egg, cooked into a dish",
    3,
    2,
    `${CHART_SOURCE}: egg casserole 3 to 4 days, 2 to 3 months (from memory)`,
  ),
  "egg-cooked": row("hard-cooked egg", 7, null, `${CHART_SOURCE}; ${NCHFP}`, {
    how: "no",
    reason: "cooked egg white turns rubbery",
  }),
  milk: row("milk or buttermilk", 7, 3, "USDA/FDA consumer note: milk 7 days, 3 months", {
    how: "poorly",
    reason: "milk separates",
  }),
  "soft-dairy": row(
    "soft dairy (yoghurt, sour cream, soft cheese)",
    7,
    1,
    `USDA/FDA consumer note: 1 to 2 weeks; ${NCHFP}`,
    {
      how: "poorly",
      reason: "soft dairy separates",
    },
  ),
  "hard-cheese": row(
    "hard cheese, opened",
    14,
    6,
    "Univ. of Missouri Extension MP558: sliced 2 weeks, 6 months",
  ),
  mayonnaise: row("mayonnaise, opened", 60, null, "USDA FSIS: 2 months opened, do not freeze", {
    how: "no",
    reason: "the emulsion splits",
  }),
  vegetable: row(
    "cut or cooked vegetables",
    3,
    3,
    "Extension and FDA produce advice: 3 to 5 days (from memory)",
  ),
  "salad-leaf": row("raw salad", 3, null, `${CHART_SOURCE}: mixed salads 3 to 4 days; ${NCHFP}`, {
    how: "no",
    reason: "raw salad turns limp and watery",
  }),
  fruit: row("cut fruit", 3, 3, "Extension and FDA produce advice: 3 to 5 days (from memory)"),
  "fresh-herb": row(
    "cut herbs",
    3,
    3,
    "Extension advice, herbs in oil or dressing 3 to 4 days (from memory)",
  ),
  bread: row("filled bread", 3, 3, "common practice, no published source"),
  tofu: row("tofu, opened or cooked", 3, 3, "from memory: 3 to 5 days opened"),
  "shelf-stable": row("store-cupboard food", null, null, "no limit of its own once mixed in"),
};

/**
 * Ready-to-eat food at 5 °C or below: seven calendar days, the day of preparation being day one
 * (FDA Food Code 3-501.17).
 */
export const FRIDGE_CEILING_DAYS = 7;

/** Raw animal food, for a recipe or a part of one whose steps do not cook it. */
interface RawRow {
  readonly name: string;
  readonly fridgeDays: number;
  readonly source: string;
}

function raw(name: string, fridgeDays: number, published: string): RawRow {
  return { name, fridgeDays, source: `${CHART_SOURCE}: ${published}` };
}

/** The lower end of each published range; for shellfish, whose range is from memory, the day of the fish. */
export const RAW_CHART: Readonly<Partial<Record<KeepingClass, RawRow>>> = {
  "raw-poultry": raw("raw poultry", 1, "1 to 2 days"),
  "raw-minced-meat": raw("raw minced meat", 1, "1 to 2 days"),
  "raw-meat": raw("raw meat in pieces", 3, "3 to 5 days"),
  "raw-fish": raw("raw fish", 1, "1 to 3 days"),
  "raw-shellfish": raw("raw shellfish", 1, "3 to 5 days (from memory), taken as fish"),
  "egg-raw": raw("raw egg out of its shell", 2, "2 to 4 days"),
};

/** The leftover rule, where nothing else is known: 3 to 4 days (USDA FSIS). */
export const LEFTOVER_DAYS = 3;
