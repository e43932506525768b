import type { Component, LineChoice } from "./types.ts";

/** What is left of a component that makes more than goes in. */
export interface Leftover {
  readonly component: string;
  readonly madeG: number;
  readonly leftG: number;
}

/** What is left over of these components at a size. */
export function leftoverOf(components: readonly Component[], factor: number): readonly Leftover[] {
  return components.flatMap(({ name, makes }) => {
    const leftG = makes ? (makes.madeG - makes.usedG) * factor : 0;
    return makes && leftG > 0 ? [{ component: name, madeG: makes.madeG * factor, leftG }] : [];
  });
}

/** A choice of which only the part is eaten that its component gives to the recipe. */
export function usedOf({ makes }: Component, choice: LineChoice): LineChoice {
  if (!makes || !(makes.usedG < makes.madeG)) return choice;
  return { ...choice, uptake: (choice.uptake * makes.usedG) / makes.madeG };
}
