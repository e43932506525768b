import type { SpoonSet, Unit } from "./types.ts";

/** The avoirdupois pound in grams: exact (NIST SP 811 app. B; Handbook 44 app. C). */
const POUND_G = 453.59237;

/** The US cup in millilitres: a sixteenth of the gallon of 231 cubic inches, exact (NIST Handbook 44 app. C). */
const US_CUP_ML = 236.5882365;

const MASS_G: Readonly<Partial<Record<Unit, number>>> = {
  mg: 0.001,
  g: 1,
  kg: 1000,
  oz: POUND_G / 16,
  lb: POUND_G,
};

/** Sizes that do not depend on the spoon set; pint, quart, gallon and fluid ounce are US customary. */
const VOLUME_ML: Readonly<Partial<Record<Unit, number>>> = {
  ml: 1,
  cl: 10,
  dl: 100,
  l: 1000,
  "fl oz": US_CUP_ML / 8,
  pint: US_CUP_ML * 2,
  quart: US_CUP_ML * 4,
  gallon: US_CUP_ML * 16,
};

type SpoonUnit = "tsp" | "tbsp" | "cup";

/** US customary spoons are exact parts of the gallon; label sizes: 21 CFR 101.9(b)(5)(viii). */
const SPOONS_ML: Readonly<Record<SpoonSet, Readonly<Record<SpoonUnit, number>>>> = {
  us: { tsp: US_CUP_ML / 48, tbsp: US_CUP_ML / 16, cup: US_CUP_ML },
  metric: { tsp: 5, tbsp: 15, cup: 250 },
  label: { tsp: 5, tbsp: 15, cup: 240 },
};

/** Grams of one mass unit, exact; null for any other unit. */
export function massUnitG(unit: Unit): number | null {
  return MASS_G[unit] ?? null;
}

/** Millilitres of one volume unit, exact; null for any other unit (a pinch is not a volume). */
export function volumeUnitMl(unit: Unit, spoons: SpoonSet): number | null {
  if (unit === "tsp" || unit === "tbsp" || unit === "cup") return SPOONS_ML[spoons][unit];
  return VOLUME_ML[unit] ?? null;
}
