import { z } from "zod";
import type { Completer, Option } from "../kit/command.ts";
import { optionalText, requiredText, wordText, yesNo } from "../kit/options.ts";
import { completeTableFood } from "./food-options.ts";

/** Longer names do not fit into a list on a phone. */
const NAME_MAX = 60;
const BOX_MAX = 60;

const completePer: Completer = async (_, typed) =>
  ["100 g", "100 ml", "serving 30 g", "serving 250 ml"]
    .filter((per) => per.includes(typed.trim().toLowerCase()))
    .map((per) => ({ label: per, value: per }));

function box(name: string, description: string, required = false): Option {
  return { name, description, required, kind: "text" };
}

/** The boxes of a label, in the order of a pack; the platform allows 25. */
export const ADD_OPTIONS: readonly Option[] = [
  box(
    "name",
    "What recipes call it, such as Rye crispbread; a name used before gets the new label",
    true,
  ),
  {
    ...box("per", "What the figures are for: 100 g, 100 ml, serving 30 g, 2 tbsp (32 g)", true),
    complete: completePer,
  },
  box("energy", "With its unit: 520 kJ, 124 kcal or 520 kJ / 124 kcal", true),
  box("protein", "Such as 12 g, 0,5 g or <0.5 g", true),
  box("fat", "Such as 3.5 g", true),
  box("carbohydrate", "As the pack has it; style: says whether fibre is in it", true),
  box("saturates", "Saturated fat, such as 1.2 g"),
  box("sugars", "Such as 4.1 g"),
  box("fibre", "Such as 6 g; left out is not known"),
  box("salt", "Salt such as 1.2 g, or sodium 480 mg; left out is not known"),
  box("alcohol", "Such as 12.5 % vol"),
  {
    ...box(
      "style",
      "eu: fibre apart from carbohydrate; us: fibre inside; the group's if you leave it out",
    ),
    choices: ["us", "eu"],
  },
  box("density", "For labels by volume and for spoons: 1.03 g/ml or 1 tbsp = 15 g"),
  box("one", "What one weighs, such as 1 slice = 35 g"),
  box("allergens", "From the pack: milk, soy; none if it has none; left out is not known"),
  box("may-hide", "What the pack says it may contain: nuts, sesame; none"),
  {
    ...box("like", "The table food it is like: how it keeps is taken from that"),
    complete: completeTableFood,
  },
  {
    name: "sure",
    description: "Yes: the pack really says so, odd as it looks",
    required: false,
    kind: "yes-no",
  },
];

const word = optionalText(BOX_MAX);

export const addInput = z.object({
  name: requiredText("name", NAME_MAX),
  per: requiredText("per", BOX_MAX),
  energy: requiredText("energy", BOX_MAX),
  protein: requiredText("protein", BOX_MAX),
  fat: requiredText("fat", BOX_MAX),
  carbohydrate: requiredText("carbohydrate", BOX_MAX),
  saturates: word,
  sugars: word,
  fibre: word,
  salt: word,
  alcohol: word,
  style: wordText(["us", "eu"], "Type style:us or style:eu.").optional(),
  density: word,
  one: word,
  allergens: optionalText(500),
  "may-hide": optionalText(500),
  like: optionalText(100),
  sure: yesNo.optional(),
});
