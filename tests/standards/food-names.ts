import { ABSENT_NAMES } from "./food-names-absent.ts";
import { ANIMAL_NAMES } from "./food-names-animal.ts";
import { CHECK_LIST } from "./food-names-check.ts";
import { CUPBOARD_NAMES } from "./food-names-cupboard.ts";
import { PLANT_NAMES } from "./food-names-plant.ts";

/**
 * Names of foods as people write them in recipe lines and in chat, labelled by hand before the finder
 * was measured on any of them. The numbers are NDB numbers of the US Department of Agriculture,
 * National Nutrient Database for Standard Reference, Release 28 (2015, revised May 2016). Where cooks
 * differ on what a name means, each meaning has its number. "none" stands for a name that the source
 * has no food for; beside numbers it says that finding nothing would be right as well.
 */
export interface LabelledName {
  readonly kind: string;
  readonly text: string;
  /** Numbers that may come first; empty where nothing should be found. */
  readonly numbers: readonly string[];
  readonly mayBeNothing: boolean;
}

function read(list: string): LabelledName[] {
  let kind = "";
  const names: LabelledName[] = [];
  for (const line of list.split("\n")) {
    if (line.startsWith("## ")) kind = line.slice(3);
    const at = line.lastIndexOf(" = ");
    if (at < 0) continue;
    const labels = line.slice(at + 3).split(" ");
    names.push({
      kind,
      text: line.slice(0, at),
      numbers: labels.filter((label) => label !== "none"),
      mayBeNothing: labels.includes("none"),
    });
  }
  return names;
}

const ALL = [ANIMAL_NAMES, PLANT_NAMES, CUPBOARD_NAMES, ABSENT_NAMES].flatMap(read);

/** Every second name, from the first: what the finder may be tuned on. */
export const TUNING_HALF = ALL.filter((_, at) => at % 2 === 0);
/** The others: only ever measured. */
export const TEST_HALF = ALL.filter((_, at) => at % 2 === 1);
/** Named later, for a measure that no mending has seen. */
export const CHECK_NAMES = read(CHECK_LIST);
