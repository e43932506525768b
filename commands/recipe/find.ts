import { z } from "zod";
import { count } from "../../shared/words/plural.ts";
import { command } from "../kit/command.ts";
import { optionalText } from "../kit/options.ts";
import type { RecipeSummary } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";
import { type Reply, reply, rows, text } from "../kit/reply.ts";

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
  handle: async ({ stores, group }, { words = "" }) => {
    // One more than is shown tells whether there are more.
    const found = await stores.recipes.search(group.id, words, SHOWN + 1);
    return found.length === 0 ? nothingFound(words) : listed(found, words);
  },
});

function nothingFound(words: string): Reply {
  return words === ""
    ? reply("There are no recipes yet.", {
        parts: [text("The coach publishes them with /recipe publish.")],
      })
    : reply(`No recipe fits “${words}”.`, {
        parts: [text("Type fewer words, or /recipe find alone to see all.")],
      });
}

function listed(found: readonly RecipeSummary[], words: string): Reply {
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
        shown.map((recipe) => ({
          label: recipe.title,
          figure: count(recipe.portions, "portion"),
          ...(recipe.tags.length === 0 ? {} : { note: recipe.tags.join(", ") }),
        })),
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
          hint: count(portions, "portion"),
        })),
      },
    ],
  });
}
