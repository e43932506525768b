import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foodId } from "../../../shared/ids.ts";
import type { Recipe } from "../../../shared/recipe/types.ts";
import { type RecipeChange, whatChanged } from "../../../shared/recipe/what-changed.ts";
import { recipeOf } from "../../kit/recipes-and-context.ts";
import { anyBuiltRecipe } from "../json-ld/any-recipe.ts";

const POT = `Bean pot
Makes 6 portions
Tags: freezer

Ingredients

Base:
- 120 g flour
- 200 g carrots, sliced
- 10 g salt

Sauce (optional):
- 100 g plain yoghurt
- 5 g salt

Steps
1. Simmer for 60 minutes.
2. Stir.
3. Serve.

Keeps 3 days in the fridge
Reheat: until 74 °C throughout.
`;

const before = recipeOf(POT);
const changed = (from: string, to: string) => whatChanged(before, recipeOf(POT.replace(from, to)));
const codes = (changes: readonly RecipeChange[]) => changes.map(({ code }) => code);

describe("what changed", () => {
  it("is nothing between a recipe and itself, also when its keys come in another order", () => {
    expect(whatChanged(before, recipeOf(POT))).toEqual([]);
    const reversed = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(reversed);
      if (typeof value !== "object" || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, inner]) => [key, reversed(inner)]),
      );
    };
    expect(whatChanged(before, reversed(before) as Recipe)).toEqual([]);
  });

  it("tells that a part makes more than is used, and no more where nobody says so in another way", () => {
    const makes = { madeG: 300, usedG: 180 };
    const withMakes = (of: typeof makes | null): Recipe => ({
      ...before,
      components: before.components.map((part) => ({ ...part, makes: of })),
    });
    expect(whatChanged(before, withMakes(null))).toEqual([]);
    const [first, ...more] = whatChanged(withMakes(null), withMakes(makes));
    expect(first).toEqual({ code: "part makes", name: "Base", before: null, after: makes });
    expect(codes(more)).toEqual(["part makes"]);
    expect(whatChanged(withMakes(makes), withMakes({ ...makes }))).toEqual([]);
  });

  it.each([
    ["an amount", "120 g flour", "100 g flour", ["amount"]],
    ["a preparation", "carrots, sliced", "carrots, diced", ["preparation"]],
    ["another name of the same food", "200 g carrots", "200 g large carrots", ["name"]],
    ["a line that may be left out", "10 g salt", "10 g salt (optional)", ["optional"]],
    ["a swap", "120 g flour", "120 g flour or 110 g oats", ["swaps"]],
  ])("names the line and what of it: %s", (_, from, to, aspects) => {
    expect(changed(from, to)).toMatchObject([{ code: "line changed", aspects }]);
  });

  it("tells a line that is new from one that is gone", () => {
    expect(codes(changed("- 10 g salt\n", ""))).toEqual(["line gone"]);
    expect(codes(changed("- 10 g salt\n", "- 10 g salt\n- 15 g lemon juice\n"))).toEqual([
      "line new",
    ]);
    expect(codes(changed("200 g carrots", "200 g kale"))).toEqual(["line new", "line gone"]);
  });

  it("takes the salt of the sauce for that of the sauce", () => {
    expect(changed("- 5 g salt", "- 4 g salt")).toMatchObject([
      { before: { part: "Sauce", line: { main: { grams: 5 } } }, aspects: ["amount"] },
    ]);
  });

  it("follows a line into another part, and a part to its new name", () => {
    const moved = POT.replace("- 120 g flour\n", "").replace("- 5 g", "- 120 g flour\n- 5 g");
    expect(whatChanged(before, recipeOf(moved))).toMatchObject([
      { code: "line changed", aspects: ["part"], after: { part: "Sauce" } },
    ]);
    expect(changed("Sauce (optional):", "Dressing (optional):")).toEqual([
      { code: "part renamed", before: "Sauce", after: "Dressing" },
    ]);
  });

  it("numbers the step that is another, and tells a run where there are more or fewer", () => {
    expect(changed("2. Stir.", "2. Stir twice.")).toMatchObject([{ code: "step", number: 2 }]);
    expect(changed("2. Stir.\n", "2. Stir.\n3. Rest.\n")).toEqual([
      { code: "steps", from: 3, before: 0, after: 1 },
    ]);
    expect(changed("1. Simmer for 60 minutes.\n2. Stir.\n", "1. Bake.\n")).toEqual([
      { code: "steps", from: 1, before: 2, after: 1 },
    ]);
  });

  it.each([
    ["Makes 6", "Makes 8", "portions"],
    ["6 portions", "6 portions, 1900 g cooked", "cooked weight"],
    ["Keeps 3 days", "Keeps 4 days", "keeping"],
    ["- 5 g salt\n", "- 5 g salt\nKeeps 1 day in the fridge\n", "keeping"],
    ["Sauce (optional):", "Sauce:", "part optional"],
    ["Tags: freezer", "Tags: freezer, vegan", "tags"],
    ["Reheat: until", "Reheat: slowly until", "reheating"],
    ["Serve.\n", "Serve.\n\nNote: Good cold.\n", "notes"],
    ["Bean pot", "Bean bake", "title"],
  ])("knows “%s” from “%s”", (from, to, code) => {
    expect(codes(changed(from, to))).toEqual([code]);
  });

  it("tells that a name is counted as another food", () => {
    const line = before.components[0]?.lines[0];
    const [base, ...rest] = before.components;
    if (line === undefined || base === undefined) throw new Error("no line");
    const main = { ...line.main, foodId: foodId("own-flour") };
    const components = [{ ...base, lines: [{ ...line, main }, ...base.lines.slice(1)] }, ...rest];
    expect(whatChanged(before, { ...before, components })).toMatchObject([{ aspects: ["food"] }]);
  });

  it("lets nothing that differs pass as the same: the order of lines is wording at least", () => {
    const turned = POT.replace("- 120 g flour\n", "").replace("- 10 g", "- 120 g flour\n- 10 g");
    expect(whatChanged(before, recipeOf(turned))).toEqual([{ code: "wording" }]);
  });
});

/** The same difference, seen from the other side. */
function mirrored(change: RecipeChange): RecipeChange {
  switch (change.code) {
    case "line new":
      return { ...change, code: "line gone" };
    case "line gone":
      return { ...change, code: "line new" };
    case "part new":
      return { ...change, code: "part gone" };
    case "part gone":
      return { ...change, code: "part new" };
    case "tags":
      return { code: "tags", added: change.gone, gone: change.added };
    case "reheating":
    case "notes":
    case "wording":
      return change;
    case "part optional":
      return { ...change, optional: !change.optional };
    default: {
      const { before: had, after: has } = change;
      return { ...change, before: has, after: had } as RecipeChange;
    }
  }
}

/** Without the name by which a part is called, which may be that of either side. */
function comparable(changes: readonly RecipeChange[]): readonly string[] {
  const plain = changes.map((change) =>
    change.code === "keeping" && change.part !== null
      ? { ...change, part: "" }
      : change.code === "part optional" || change.code === "part makes"
        ? { ...change, name: "" }
        : change,
  );
  return plain.map((change) => JSON.stringify(change)).sort();
}

/** Two revisions that share some of their pieces. */
const anyTwo = fc
  .tuple(anyBuiltRecipe, anyBuiltRecipe, fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }))
  .map(([a, b, takes]): readonly [Recipe, Recipe] => {
    const [parts, steps, keeping, title, tags, notes, makes, lines] = takes;
    const [first, ...others] = a.components;
    const [other] = b.components;
    const mixed =
      first === undefined || other === undefined
        ? a.components
        : [{ ...first, lines: [...first.lines.slice(1), ...other.lines] }, ...others];
    return [
      a,
      {
        ...a,
        ...(parts ? { components: b.components } : lines ? { components: mixed } : {}),
        ...(steps ? { steps: [...a.steps.slice(1), ...b.steps] } : {}),
        ...(keeping ? { keeping: b.keeping } : {}),
        ...(title ? { title: b.title } : {}),
        ...(tags ? { tags: b.tags } : {}),
        ...(notes ? { notes: b.notes, reheating: b.reheating } : {}),
        ...(makes ? { portions: b.portions, yieldG: b.yieldG } : {}),
      },
    ];
  });

describe("what changed, whatever the recipes", () => {
  it("is empty when and only when they say the same", () => {
    fc.assert(
      fc.property(anyTwo, ([a, b]) => {
        expect(whatChanged(a, a)).toEqual([]);
        const plain = (recipe: Recipe) => JSON.stringify(recipe).replace(/"key":"[^"]*"/gu, "");
        expect(whatChanged(a, b).length === 0).toBe(plain(a) === plain(b));
      }),
    );
  });

  it("is the same seen from either side", () => {
    fc.assert(
      fc.property(anyTwo, ([a, b]) => {
        expect(comparable(whatChanged(b, a))).toEqual(comparable(whatChanged(a, b).map(mirrored)));
      }),
    );
  });
});
