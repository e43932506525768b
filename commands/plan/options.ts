import { fold } from "../../shared/words/fold.ts";
import type { Completer, Option } from "../kit/command.ts";
import { optionalText, requiredText } from "../kit/options.ts";

const completeMealName: Completer = async ({ stores, member }, typed) => {
  const rules = await stores.meals.list(member.id);
  return rules
    .filter(({ name }) => fold(name).includes(fold(typed)))
    .map(({ name }) => ({ label: name, value: name }));
};

export const dayOption: Option = {
  name: "day",
  description: "Which day, such as Thu, tomorrow or 15 Oct",
  required: true,
  kind: "text",
};

export const mealOption: Option = {
  name: "meal",
  description: "Which meal, such as lunch; all of that day if you leave it out",
  required: false,
  kind: "text",
  complete: completeMealName,
};

/** The options that name the meals of one day or of a span of days. */
export const spanOptions: readonly Option[] = [
  dayOption,
  {
    name: "until",
    description: "The last day, for more than one day",
    required: false,
    kind: "text",
  },
  mealOption,
];

export const dayText = requiredText("day", 40);
export const spanInput = { day: dayText, until: optionalText(40), meal: optionalText(30) };
