import { describe, expect, it } from "vitest";
import { recipeDocument, toText } from "../../../src/store/documents.ts";
import { keptRecipes } from "../../../src/store/kept-recipes.ts";
import { recipe } from "./kit.ts";

/** A revision's row as the database gives it; `title` is what its document says. */
function row(id: string, title: string) {
  const columns = { titleFold: "", searchFold: "", portions: 6, tags: "[]", withdrawnAt: null };
  return {
    id,
    recipeId: "pot",
    number: 1,
    causeId: id,
    publishedById: null,
    publishedAt: new Date(0),
    document: toText(recipeDocument, recipe({ title })),
    sourceText: "",
    keepingWords: [],
    takenFor: "{}",
    recipe: { id: "pot", groupId: "g", title, ...columns },
  };
}

describe("recipes that were read before", () => {
  it("are the same object as long as the revision is", () => {
    const read = keptRecipes();
    const first = read(row("r1", "Pot"));
    expect(first.recipe.title).toBe("Pot");
    expect(read(row("r1", "Pot")).recipe).toBe(first.recipe);
    expect(read(row("r2", "Pot, again")).recipe.title).toBe("Pot, again");
  });

  it("are read anew when another text bears the same id", () => {
    const read = keptRecipes();
    read(row("r1", "Pot"));
    expect(read(row("r1", "Soup")).recipe.title).toBe("Soup");
  });

  it("make room for others, the one asked for longest ago first", () => {
    const read = keptRecipes(2);
    const [one, two] = [read(row("r1", "One")), read(row("r2", "Two"))];
    read(row("r1", "One"));
    read(row("r3", "Three"));
    expect(read(row("r1", "One")).recipe).toBe(one.recipe);
    expect(read(row("r2", "Two")).recipe).not.toBe(two.recipe);
  });
});
