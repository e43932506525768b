import type { Food } from "../../../shared/food/types.ts";
import { foodId } from "../../../shared/ids.ts";

/** A food typed from a pack, invented. */
export const packed: Food = {
  id: foodId("own1"),
  name: "Stone mill crispbread",
  otherNames: [],
  source: { table: "pack label", number: "" },
  state: "ready",
  per100g: {
    energyKcal: 350,
    proteinG: 10,
    fatG: 1.5,
    saturatedFatG: null,
    carbohydrateG: 80,
    fibreG: 15,
    sugarsG: null,
    sodiumMg: 480,
  },
  waterG: null,
  alcoholG: 0,
  densityGPerMl: null,
  one: { word: "slice", grams: 11 },
  measures: [],
  refusePct: 0,
  allergens: null,
  mayHide: ["sesame"],
  keepingClass: "shelf-stable",
};
