import { describe, expect, it } from "vitest";
import { groupId } from "../../../shared/ids.ts";
import { recipeDocument, toText } from "../../../src/store/documents.ts";
import { keptFinds, keptRecipes } from "../../../src/store/kept-recipes.ts";
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

describe("recipes that were found before", () => {
  const g = groupId("g");

  function counted(most?: number) {
    const asked: string[] = [];
    const find = keptFinds(async (group, typed) => {
      asked.push(`${group}/${typed}`);
      return typed === "nothing" ? null : keptRecipes()(row("r1", typed));
    }, most);
    return { asked, find };
  }

  it("are looked for once under a version of the group's recipes, and anew under the next", async () => {
    const { asked, find } = counted();
    const first = await find(g, "pot", 1);
    expect(await find(g, "pot", 1)).toBe(first);
    expect(asked).toEqual(["g/pot"]);
    expect(await find(g, "pot", 2)).not.toBe(first);
    expect(asked).toEqual(["g/pot", "g/pot"]);
  });

  it("are no other group's, and no other words'", async () => {
    const { asked, find } = counted();
    for (const [group, typed] of [
      ["g", "pot"],
      ["h", "pot"],
      ["g", "soup"],
    ] as const)
      await find(groupId(group), typed, 1);
    expect(asked).toEqual(["g/pot", "h/pot", "g/soup"]);
  });

  it("are looked for each time where no version is named, and where there was none", async () => {
    const { asked, find } = counted();
    await find(g, "pot");
    await find(g, "pot");
    await find(g, "nothing", 1);
    expect(await find(g, "nothing", 1)).toBeNull();
    expect(asked).toHaveLength(4);
  });

  it("make room for others, the one asked for longest ago first", async () => {
    const { asked, find } = counted(2);
    for (const typed of ["one", "two", "one", "three", "one", "two"]) await find(g, typed, 1);
    expect(asked).toEqual(["g/one", "g/two", "g/three", "g/two"]);
  });
});
