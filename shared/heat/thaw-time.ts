import type { Shape } from "./conduction.ts";
import { type Filled, FRIDGE, type Surroundings } from "./cool.ts";
import { COOKED_DISH, thermalOf } from "./properties.ts";

/** Heat of melting of ice, kJ/kg (textbook constant). */
const ICE_KJ_KG = 333.6;

/** Where water in foods begins to freeze, °C: -0.8 to -2 for most (ASHRAE Handbook, Refrigeration; from memory). */
const FREEZING_POINT_C = -1.5;

/** Share of the water that freezes at -18 °C: about nine tenths (ASHRAE; from memory). */
const FROZEN_SHARE = 0.9;

/** Plank's shape factors P and R. */
const SHAPE: Readonly<Record<Shape, { readonly p: number; readonly r: number }>> = {
  slab: { p: 1 / 2, r: 1 / 8 },
  cylinder: { p: 1 / 4, r: 1 / 16 },
  sphere: { p: 1 / 6, r: 1 / 24 },
};

export interface PhaseChange {
  readonly shape: Shape;
  /** Whole thickness or diameter, metres. */
  readonly sizeM: number;
  readonly densityKgM3: number;
  readonly latentKJKg: number;
  /** Of the layer the heat has to pass: frozen when freezing, thawed when thawing. */
  readonly conductivityWMK: number;
  readonly surfaceWM2K: number;
  readonly freezingPointC: number;
  readonly aroundC: number;
}

/**
 * Hours in which a body at its freezing point freezes or thaws through, by Plank's equation (Singh and
 * Heldman, Introduction to Food Engineering, chapter 7). It leaves out the heat of warming and cooling:
 * about 10 % for thawing in a fridge, which `thawHours` adds.
 */
export function plankHours(change: PhaseChange): number {
  const { p, r } = SHAPE[change.shape];
  const drive = Math.abs(change.aroundC - change.freezingPointC);
  const resistance =
    (p * change.sizeM) / change.surfaceWM2K + (r * change.sizeM ** 2) / change.conductivityWMK;
  return ((change.densityKgM3 * change.latentKJKg * 1000) / drive) * (resistance / 3600);
}

/** Warming from -18 °C to melting besides, as a share of the melting heat: 20 K of 2 kJ/kgK in 220. */
const WARMING_SHARE = 0.18;

/**
 * How many times faster a block thaws than an endless slab of its thickness, since heat comes in from the
 * sides as well: the equivalent heat transfer dimensionality of Cleland and Earle for a brick (ASHRAE
 * Handbook, Refrigeration, "Cooling and freezing times of foods"; from memory). `ratios` are its two
 * widths over its thickness, each at least 1; `biot` is h times the whole thickness over k.
 */
export function brickFactor(biot: number, ratios: readonly [number, number]): number {
  const weight = (beta: number) => {
    const x = 2.32 * beta ** -1.77;
    return x / (biot ** 1.34 + x);
  };
  const [b1, b2] = ratios;
  const first = weight(b1) / b1 + (1 - weight(b1)) * (0.73 / b1 ** 2.5);
  const second = weight(b2) / b2 + (1 - weight(b2)) * (0.5 / b2 ** 3.69);
  return 1 + first + second;
}

/**
 * Hours a frozen container thaws in a fridge: Plank's equation for its depth, quickened by its sides.
 * Expect 30 % either way.
 */
export function thawHours(filled: Filled, around: Surroundings = FRIDGE): number {
  const food = filled.food ?? COOKED_DISH;
  const { densityKgM3, conductivityWMK } = thermalOf(food, 0);
  const depthM = filled.depthCm / 100;
  const sideM = Math.sqrt(filled.massG / 1000 / densityKgM3 / depthM);
  const thinM = Math.min(depthM, sideM);
  const biot = (around.surfaceWM2K * thinM) / conductivityWMK;
  const sides = brickFactor(biot, [sideM / thinM, Math.max(depthM, sideM) / thinM]);
  const hours = plankHours({
    shape: "slab",
    sizeM: thinM,
    densityKgM3,
    latentKJKg: (ICE_KJ_KG * FROZEN_SHARE * food.waterG) / 100,
    conductivityWMK,
    surfaceWM2K: around.surfaceWM2K,
    freezingPointC: FREEZING_POINT_C,
    aroundC: around.temperatureC,
  });
  return (hours * (1 + WARMING_SHARE)) / sides;
}
