import { z } from "zod";
import { allergensInRecipe } from "../../shared/allergen/find.ts";
import { toJsonLd } from "../../shared/json-ld/to-json-ld.ts";
import { withEuEnergy } from "../../shared/label/eu.ts";
import { labelExtras } from "../../shared/label/extras.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import { writeRecipeText } from "../../shared/recipe/write-text.ts";
import { fold } from "../../shared/words/fold.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { requiredText, wordText } from "../kit/options.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { completeRecipe, recipeOrRefuse } from "../kit/recipe-options.ts";
import { type ReplyFile, reply, text } from "../kit/reply.ts";
import { sayScaleProblem } from "../kit/say-problem.ts";

const FORMS = ["text", "json-ld"] as const;
type FileForm = (typeof FORMS)[number];

export const recipeFile = command({
  path: ["recipe", "file"],
  description: "A recipe as a file to keep or take elsewhere: plain text, or schema.org JSON-LD",
  who: "everyone",
  options: [
    {
      name: "recipe",
      description: "Which recipe",
      required: true,
      kind: "text",
      complete: completeRecipe,
    },
    {
      name: "as",
      description: "Plain text, or JSON-LD for websites and programs; text if you leave it out",
      required: false,
      kind: "text",
      choices: FORMS,
    },
  ],
  input: z.object({
    recipe: requiredText("recipe", 200),
    as: wordText(FORMS, "Type as:text or as:json-ld.").optional(),
  }),
  handle: async (context, { recipe, as = "text" }) => {
    const published = await recipeOrRefuse(context, recipe);
    const { title } = published.recipe;
    return reply(`${title}, revision ${published.revisionNumber}, as ${NAMES[as]}:`, {
      parts: [
        text(
          as === "text"
            ? "Plain text, as /recipe publish reads it."
            : "Figures in it are of one portion as written. /recipe publish reads it, too.",
          ...(await pickedByHand(context, published)),
        ),
      ],
      files: [fileOf(context, published, as)],
    });
  },
});

const NAMES: Readonly<Record<FileForm, string>> = { text: "a text file", "json-ld": "JSON-LD" };

function fileOf({ foods, group }: Context, { recipe }: PublishedRecipe, as: FileForm): ReplyFile {
  const name = nameOf(recipe.title);
  if (as === "text") {
    return { name: `${name}.txt`, text: writeRecipeText(recipe), mediaType: "text/plain" };
  }
  const scaled = scaleRecipe(recipe, foods, { by: { kind: "as written" }, without: [], swaps: {} });
  if (!scaled.ok) throw new Refusal(sayScaleProblem(scaled.problem));
  const figures = nutritionOf(scaled.value, foods);
  const extras = labelExtras(scaled.value, foods, figures).perPortion;
  // The energy that the group's cards show.
  const perPortion =
    group.labelStyle === "us" ? figures.perPortion : withEuEnergy(figures.perPortion, extras);
  const document = toJsonLd(recipe, { perPortion, allergens: allergensInRecipe(recipe, foods) });
  return {
    name: `${name}.json`,
    text: `${JSON.stringify(document, null, 2)}\n`,
    mediaType: "application/ld+json",
  };
}

/** "smoky-bean-pot"; what has no Latin letters is "recipe". */
function nameOf(title: string): string {
  const words = fold(title).match(/[a-z0-9]+/gu) ?? [];
  const name = words.join("-").slice(0, 50).replace(/-$/u, "");
  return name === "" ? "recipe" : name;
}

/** A file holds the names of foods; which entry of the table the coach picked for one is the book's own. */
async function pickedByHand(
  { stores, group }: Context,
  { id }: PublishedRecipe,
): Promise<readonly string[]> {
  const source = await stores.recipes.source(group.id, id);
  const names = Object.keys(source?.takenFor ?? {});
  if (names.length === 0) return [];
  return [`Picked by hand here, so to be picked again where it is read: ${names.join(", ")}.`];
}
