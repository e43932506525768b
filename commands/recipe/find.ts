import { z } from "zod";
import { completeFoods, completeRecipes } from "../../shared/book/complete.ts";
import { searchBook } from "../../shared/book/search.ts";
import { ALLERGENS } from "../../shared/food/types.ts";
import { fold } from "../../shared/words/fold.ts";
import { type Completer, command, type Suggestion } from "../kit/command.ts";
import { optionalText, yesNo } from "../kit/options.ts";
import { reply, text } from "../kit/reply.ts";
import { readFind } from "./find-query.ts";
import { foundReply, SHOWN } from "./find-reply.ts";

const OFFERED = 25;

const completeWords: Completer = async ({ recipeBook }, typed) => {
  const book = await recipeBook.soon();
  if (book === null) return [];
  return completeRecipes(book, typed, OFFERED).map(({ title }) => ({ label: title, value: title }));
};

const completeUses: Completer = async ({ recipeBook }, typed) => {
  const book = await recipeBook.soon();
  if (book === null) return [];
  return lastOf(typed, (piece) => completeFoods(book, piece, OFFERED));
};

const completeFreeOf: Completer = async ({ member }, typed) => {
  const own = member.profile.allergens.length > 0 ? ["mine"] : [];
  return lastOf(typed, (piece) =>
    [...own, ...ALLERGENS].filter((name) => name.startsWith(fold(piece))),
  );
};

/** Offers for the last of several names, with those before it kept as typed. */
function lastOf(
  typed: string,
  offers: (piece: string) => readonly string[],
): readonly Suggestion[] {
  const at = Math.max(typed.lastIndexOf(","), typed.lastIndexOf(";")) + 1;
  const before = at === 0 ? "" : `${typed.slice(0, at).trim()} `;
  return offers(typed.slice(at).trim())
    .slice(0, OFFERED)
    .map((name) => ({ label: before + name, value: before + name }));
}

export const recipeFind = command({
  path: ["recipe", "find"],
  description: "Recipes of this group: by words, by what you have, by figures, by what you avoid",
  who: "everyone",
  options: [
    {
      name: "words",
      description: "Words of titles, tags or foods; leave all out to see all recipes",
      required: false,
      kind: "text",
      complete: completeWords,
    },
    {
      name: "uses",
      description:
        "Foods you have, such as chicken thigh, rice, yoghurt: what uses most comes first",
      required: false,
      kind: "text",
      complete: completeUses,
    },
    {
      name: "energy",
      description: "Kcal a portion, such as 400-600 or under 500",
      required: false,
      kind: "text",
    },
    {
      name: "protein",
      description: "Grams of protein a portion, such as at least 30",
      required: false,
      kind: "text",
    },
    {
      name: "freezes",
      description: "Only what freezes well, or only what does not",
      required: false,
      kind: "yes-no",
    },
    {
      name: "free-of",
      description:
        "Allergens it must not have, such as milk, nuts; or mine, for those you told /me",
      required: false,
      kind: "text",
      complete: completeFreeOf,
    },
  ],
  input: z.object({
    words: optionalText(100),
    uses: optionalText(200),
    energy: optionalText(60),
    protein: optionalText(60),
    freezes: yesNo.optional(),
    "free-of": optionalText(200),
  }),
  handle: async ({ recipeBook, member, group }, asked) => {
    const request = readFind(asked, {
      own: member.profile.allergens,
      style: group.labelStyle,
    });
    const book = await recipeBook.whole();
    if (book.entries.length === 0) {
      return reply("There are no recipes yet.", {
        parts: [text("The coach publishes them with /recipe publish.")],
      });
    }
    return foundReply(searchBook(book, request.query, SHOWN), request, member.profile);
  },
});
