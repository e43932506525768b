import { centreRatio } from "./conduction.ts";
import { COOKED_DISH, type Composition, thermalOf } from "./properties.ts";

/** What food is put away in. */
export const CONTAINERS = ["flat bag", "shallow box", "deep tub", "pot"] as const;
export type Container = (typeof CONTAINERS)[number];

/** A container of food as it is filled. */
export interface Filled {
  readonly container: Container;
  /** Depth of the food, or thickness of a bag lying flat, centimetres. */
  readonly depthCm: number;
  readonly massG: number;
  readonly food?: Composition;
}

/** What takes the heat away. */
export interface Surroundings {
  readonly temperatureC: number;
  /** Watts per square metre and kelvin. */
  readonly surfaceWM2K: number;
}

/**
 * Still air in a fridge at 4 °C, convection and radiation together: 5 to 10 W/m2K in the literature on
 * domestic refrigeration (from memory). The lower third, since boxes stand close; a fridge full of warm
 * food is warmer than this besides.
 */
export const FRIDGE: Surroundings = { temperatureC: 4, surfaceWM2K: 7 };

/** Ice and water around the container, stirred now and then: hundreds of W/m2K (from memory; the low end). */
export const ICE_BATH: Surroundings = { temperatureC: 0, surfaceWM2K: 200 };

/** Two-stage cooling, FDA Food Code 3-501.14(A): 57 to 21 °C within 2 h, and to 5 °C within 6 h in all. */
export const TWO_STAGE = { fromC: 57, middleC: 21, toC: 5, middleH: 2, totalH: 6 } as const;

/** Food is taken off the heat and filled hot; the count begins here, a little before the rule's. */
const START_C = 60;

export interface Cooling {
  /** Hours until the centre is at 21 °C. */
  readonly toMiddleH: number;
  /** Hours until the centre is at 5 °C. */
  readonly toColdH: number;
  readonly passes: boolean;
}

/** The smallest change that makes the cooling pass. */
export type CoolingAdvice =
  /** Fill no deeper than this, over so many containers of the same base. */
  | { readonly kind: "shallower"; readonly depthCm: number; readonly containers: number }
  /** First an ice bath for so long, then the fridge; over so many containers. */
  | {
      readonly kind: "ice bath";
      readonly minutes: number;
      readonly depthCm: number;
      readonly containers: number;
    };

/**
 * How the centre of a container of hot food cools in a fridge: conduction in a body of constant
 * properties (those of the food half way down), from 60 °C throughout. A stew that can move inside cools
 * faster, so the figure is on the safe side for it. Expect 30 % either way.
 */
export function coolingOf(filled: Filled, around: Surroundings = FRIDGE): Cooling {
  const toMiddleH = hoursTo(filled, around, START_C, TWO_STAGE.middleC);
  const toColdH = hoursTo(filled, around, START_C, TWO_STAGE.toC);
  return {
    toMiddleH,
    toColdH,
    passes: toMiddleH <= TWO_STAGE.middleH && toColdH <= TWO_STAGE.totalH,
  };
}

/** Depths that are tried, centimetres: below one nobody fills a box. */
const DEPTHS_CM = [5, 4, 3, 2.5, 2, 1.5, 1];

/** What makes it pass: nothing when it does (null), else shallower boxes, else an ice bath first. */
export function coolingAdvice(filled: Filled): CoolingAdvice | null {
  if (coolingOf(filled).passes) return null;
  const thinner = DEPTHS_CM.filter((depthCm) => depthCm < filled.depthCm);
  const depths = [filled.depthCm, ...thinner];
  for (const depthCm of depths.filter((depth) => depth >= 2.5 || depth === filled.depthCm)) {
    const bath = afterBath(split(filled, depthCm));
    if (bath !== null) {
      const containers = containersFor(filled, depthCm);
      return { kind: "ice bath", minutes: bath, depthCm, containers };
    }
  }
  const depthCm = thinner.find((depth) => coolingOf(split(filled, depth)).passes);
  return depthCm === undefined
    ? null
    : { kind: "shallower", depthCm, containers: containersFor(filled, depthCm) };
}

/** Minutes in an ice bath after which the fridge finishes in time; null when it does not get there. */
function afterBath(filled: Filled): number | null {
  const toMiddleH = hoursTo(filled, ICE_BATH, START_C, TWO_STAGE.middleC);
  if (toMiddleH > TWO_STAGE.middleH) return null;
  // The centre is the last to know: at 21 °C inside the rest of it is colder, so the fridge is ahead of this.
  const restH = hoursTo(filled, FRIDGE, TWO_STAGE.middleC, TWO_STAGE.toC);
  const bathToColdH = hoursTo(filled, ICE_BATH, START_C, TWO_STAGE.toC);
  if (toMiddleH + restH <= TWO_STAGE.totalH) return Math.ceil((toMiddleH * 60) / 5) * 5;
  return bathToColdH <= TWO_STAGE.totalH ? Math.ceil((bathToColdH * 60) / 5) * 5 : null;
}

function split(filled: Filled, depthCm: number): Filled {
  return { ...filled, depthCm, massG: (filled.massG * depthCm) / filled.depthCm };
}

function containersFor(filled: Filled, depthCm: number): number {
  return Math.ceil(filled.depthCm / depthCm - 1e-9);
}

/** Hours until the centre has gone from one temperature to another; Infinity when it never gets there. */
function hoursTo(filled: Filled, around: Surroundings, fromC: number, toC: number): number {
  const wanted = (toC - around.temperatureC) / (fromC - around.temperatureC);
  if (wanted <= 0) return Number.POSITIVE_INFINITY;
  const ratio = centreAfter(filled, around, (fromC + toC) / 2);
  let high = 0.25;
  while (ratio(high) > wanted && high < 1000) high *= 2;
  let low = 0;
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    if (ratio(middle) > wanted) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * The centre of a finite body: the product of the infinite bodies it is the intersection of (Cengel,
 * Heat Transfer, section 4-4): depth times both widths of a square base, or depth times a round pot.
 */
function centreAfter(
  filled: Filled,
  around: Surroundings,
  meanC: number,
): (hours: number) => number {
  const thermal = thermalOf(filled.food ?? COOKED_DISH, meanC);
  const depthM = filled.depthCm / 100;
  const areaM2 = filled.massG / 1000 / thermal.densityKgM3 / depthM;
  const ratio = (shape: "slab" | "cylinder", lengthM: number) => {
    const biot = (around.surfaceWM2K * lengthM) / thermal.conductivityWMK;
    return (hours: number) =>
      centreRatio(shape, biot, (thermal.diffusivityM2S * hours * 3600) / lengthM ** 2);
  };
  const depth = ratio("slab", depthM / 2);
  if (filled.container === "pot") {
    const round = ratio("cylinder", Math.sqrt(areaM2 / Math.PI));
    return (hours) => depth(hours) * round(hours);
  }
  const side = ratio("slab", Math.sqrt(areaM2) / 2);
  return (hours) => depth(hours) * side(hours) ** 2;
}
