import { z } from "zod";
import { allergensInRecipe } from "../../shared/allergen/find.ts";
import { count } from "../../shared/words/plural.ts";
import { command } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { optionalText } from "../kit/options.ts";
import type { RecipeSummary } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";
import { type Reply, reply, rows, text } from "../kit/reply.ts";
import { allergyMark } from "./allergen-parts.ts";

const SHOWN = 10;

export const recipeFind = command({
  path: ["recipe", "find"],
  description: "Recipes of this group by words of their title or their tags",
  who: "everyone",
  options: [
    {
      name: "words",
      description: "Words of the title or tags; leave it out to see all",
      required: false,
      kind: "text",
    },
  ],
  input: z.object({ words: optionalText(100) }),
  handle: async (context, { words = "" }) => {
    // One more than is shown tells whether there are more.
    const found = await context.stores.recipes.search(context.group.id, words, SHOWN + 1);
    if (found.length === 0) return nothingFound(words);
    return listed(found, words, await marksOf(context, found.slice(0, SHOWN)));
  },
});

/**
 * What of each recipe shown the asker avoids, by recipe id: of the recipe as written, its optional parts
 * in it. Reads the recipes only for a member who has stated something, and at most as many as are shown.
 */
async function marksOf(
  { stores, group, member, foods }: Context,
  shown: readonly RecipeSummary[],
): Promise<ReadonlyMap<string, string>> {
  const marks = new Map<string, string>();
  if (member.profile.allergens.length === 0) return marks;
  const loaded = await Promise.all(shown.map(({ id }) => stores.recipes.find(group.id, id)));
  for (const published of loaded) {
    if (published === null) continue;
    const mark = allergyMark(member.profile, allergensInRecipe(published.recipe, foods));
    if (mark !== null) marks.set(published.id, mark);
  }
  return marks;
}

function nothingFound(words: string): Reply {
  return words === ""
    ? reply("There are no recipes yet.", {
        parts: [text("The coach publishes them with /recipe publish.")],
      })
    : reply(`No recipe fits “${words}”.`, {
        parts: [text("Type fewer words, or /recipe find alone to see all.")],
      });
}

function listed(
  found: readonly RecipeSummary[],
  words: string,
  marks: ReadonlyMap<string, string>,
): Reply {
  const shown = found.slice(0, SHOWN);
  const more = found.length > SHOWN;
  const of = words === "" ? "" : ` for “${words}”`;
  const heading = more
    ? `The first ${SHOWN} recipes${of}:`
    : `${count(shown.length, "recipe")}${of}:`;
  return reply(heading, {
    parts: [
      rows(
        null,
        shown.map((recipe) => {
          const note = [marks.get(recipe.id) ?? "", recipe.tags.join(", ")]
            .filter((one) => one !== "")
            .join("; ");
          return {
            label: recipe.title,
            figure: count(recipe.portions, "portion"),
            ...(note === "" ? {} : { note }),
          };
        }),
      ),
      ...(more ? [text("There are more: add a word, or pick by name in /recipe card.")] : []),
    ],
    choices: [
      {
        id: writePress("recipe card", "show"),
        placeholder: "See a card",
        options: shown.map(({ id, title, portions }) => ({
          value: id,
          label: title.length > 90 ? `${title.slice(0, 89)}…` : title,
          hint: [marks.get(id), count(portions, "portion")].filter(Boolean).join(" · "),
        })),
      },
    ],
  });
}
