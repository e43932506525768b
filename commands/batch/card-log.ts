import { z } from "zod";
import { revisionId } from "../../shared/ids.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { FilledForm, Form } from "../kit/form.ts";
import { FORM_LIMITS } from "../kit/form.ts";
import { gramsText, optionalText, zeroOrMoreText } from "../kit/options.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";
import { type CardRequest, readPressedCard } from "../recipe/card-request.ts";
import type { LogInput } from "./log-batch.ts";

/** What a card's button logs: the very revision and size that the card showed. */
interface PressedLog {
  readonly args: readonly string[];
  readonly published: PublishedRecipe;
  readonly request: CardRequest;
}

/** Reads what a card's button carries; refuses what is none of ours, or of another group. */
export async function pressedLog(
  { stores, group }: Context,
  args: readonly string[],
): Promise<PressedLog> {
  const pressed = readPressedCard(args);
  const published = await stores.recipes.revision(group.id, revisionId(pressed.id));
  if (published === null) {
    throw new Refusal("That recipe is no longer here: type /recipe find to see which there are.");
  }
  return { args, published, request: pressed.requestFor(published.recipe) };
}

/** Asks for what a card cannot know: when it was cooked, what it weighs, what is frozen at once. */
export function cardLogForm({ args, published }: PressedLog): Form {
  return {
    id: writePress("batch log", "done", ...args),
    title: `Log: ${published.recipe.title}`.slice(0, FORM_LIMITS.titleChars),
    fields: [
      {
        name: "cooked",
        label: "When the cooking ended",
        hint: "such as now, 18:30, yesterday 18:30 or Sun 18:30",
        value: "now",
        required: true,
        isLong: false,
      },
      {
        name: "weight",
        label: "Cooked weight of it all, if you weighed it",
        hint: "such as 2.4 kg",
        value: "",
        required: false,
        isLong: false,
      },
      {
        name: "freeze",
        label: "Portions straight into the freezer",
        hint: "such as 2; none if you leave it out",
        value: "",
        required: false,
        isLong: false,
      },
    ],
  };
}

/** A field left blank counts as left out. */
function unlessBlank<T extends z.ZodType>(schema: T) {
  return z.preprocess(
    (value) => (typeof value === "string" && value.trim() === "" ? undefined : value),
    schema.optional(),
  );
}

const filledSchema = z.object({
  cooked: optionalText(40),
  weight: unlessBlank(gramsText),
  freeze: unlessBlank(zeroOrMoreText),
});

/** The form as it came back. */
export function readCardLog(filled: FilledForm): LogInput {
  const parsed = filledSchema.safeParse(filled);
  if (!parsed.success) throw new Refusal(parsed.error.issues.map(({ message }) => message));
  return parsed.data;
}
