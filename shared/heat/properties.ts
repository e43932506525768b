/** What 100 g of a food consist of, grams. What is missing from 100 counts as ash. */
export interface Composition {
  readonly waterG: number;
  readonly proteinG: number;
  readonly fatG: number;
  /** Without fibre. */
  readonly carbohydrateG: number;
  readonly fibreG: number;
}

export interface Thermal {
  readonly densityKgM3: number;
  readonly specificHeatJKgK: number;
  readonly conductivityWMK: number;
  readonly diffusivityM2S: number;
}

type Part = keyof Composition | "ashG";
type Poly = readonly [number, number, number];

/**
 * Density (kg/m3), specific heat (kJ/kg K) and conductivity (W/m K) of food parts as polynomials of the
 * temperature in degrees Celsius: Choi and Okos, "Effects of temperature and composition on the thermal
 * properties of foods" (1986), as given in ASHRAE Handbook, Refrigeration, "Thermal properties of foods",
 * table 1 and 2. The coefficients are from memory; tests hold them to published values of whole foods.
 */
const DENSITY: Readonly<Record<Part, Poly>> = {
  waterG: [997.18, 3.1439e-3, -3.7574e-3],
  proteinG: [1329.9, -0.5184, 0],
  fatG: [925.59, -0.41757, 0],
  carbohydrateG: [1599.1, -0.31046, 0],
  fibreG: [1311.5, -0.36589, 0],
  ashG: [2423.8, -0.28063, 0],
};
const SPECIFIC_HEAT: Readonly<Record<Part, Poly>> = {
  waterG: [4.1289, -9.0864e-5, 5.4731e-6],
  proteinG: [2.0082, 1.2089e-3, -1.3129e-6],
  fatG: [1.9842, 1.4733e-3, -4.8008e-6],
  carbohydrateG: [1.5488, 1.9625e-3, -5.9399e-6],
  fibreG: [1.8459, 1.8306e-3, -4.6509e-6],
  ashG: [1.0926, 1.8896e-3, -3.6817e-6],
};
const CONDUCTIVITY: Readonly<Record<Part, Poly>> = {
  waterG: [0.57109, 1.7625e-3, -6.7036e-6],
  proteinG: [0.17881, 1.1958e-3, -2.7178e-6],
  fatG: [0.18071, -2.7604e-4, -1.7749e-7],
  carbohydrateG: [0.20141, 1.3874e-3, -4.3312e-6],
  fibreG: [0.18331, 1.2497e-3, -3.1683e-6],
  ashG: [0.32962, 1.4011e-3, -2.9069e-6],
};

const PARTS: readonly Part[] = ["waterG", "proteinG", "fatG", "carbohydrateG", "fibreG", "ashG"];

/** A cooked dish of meat, grain and vegetables, where its own composition is not known: mostly water. */
export const COOKED_DISH: Composition = {
  waterG: 72,
  proteinG: 11,
  fatG: 5,
  carbohydrateG: 10,
  fibreG: 1.5,
};

/**
 * Thermal properties of an unfrozen food at a temperature: mass-weighted specific heat, volume-weighted
 * (parallel) conductivity. About 10 % off measured values (ASHRAE gives 6 to 10 %, from memory).
 */
export function thermalOf(food: Composition, temperatureC: number): Thermal {
  const at = ([a, b, c]: Poly) => a + b * temperatureC + c * temperatureC ** 2;
  const massOf = (part: Part) => massShare(food, part);
  const volumeOf = (part: Part) => massOf(part) / at(DENSITY[part]);
  const sum = (of: (part: Part) => number) => PARTS.reduce((total, part) => total + of(part), 0);
  const volume = sum(volumeOf);
  const densityKgM3 = 1 / volume;
  const specificHeatJKgK = 1000 * sum((part) => massOf(part) * at(SPECIFIC_HEAT[part]));
  const conductivityWMK = sum((part) => (volumeOf(part) / volume) * at(CONDUCTIVITY[part]));
  return {
    densityKgM3,
    specificHeatJKgK,
    conductivityWMK,
    diffusivityM2S: conductivityWMK / (densityKgM3 * specificHeatJKgK),
  };
}

function massShare(food: Composition, part: Part): number {
  const known = food.waterG + food.proteinG + food.fatG + food.carbohydrateG + food.fibreG;
  // Rounded tables may add up to a little more than 100.
  const whole = Math.max(100, known);
  return (part === "ashG" ? whole - known : food[part]) / whole;
}
