import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { alertsFor } from "../../../shared/allergen/alerts.ts";
import {
  allergensIn,
  allergensInRecipe,
  type ReadableLine,
} from "../../../shared/allergen/find.ts";
import { namedIn } from "../../../shared/allergen/named.ts";
import { foodBook } from "../../../shared/food/book.ts";
import { ALLERGENS, type Food } from "../../../shared/food/types.ts";
import { foodId } from "../../../shared/ids.ts";
import { scaleRecipe } from "../../../shared/recipe/scale.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

function food(id: string, allergens: Food["allergens"], mayHide: Food["mayHide"] = []): Food {
  const [some] = FOODS.foods;
  if (some === undefined) throw new Error("the table is empty");
  return { ...some, id: foodId(id), name: id, otherNames: [], allergens, mayHide };
}

/** A book of made-up foods whose names say nothing. */
const BOOK = foodBook([
  food("plum", []),
  food("brick", ["milk"]),
  food("slab", ["wheat"]),
  food("dip", ["soy", "egg"], ["celery", "wheat"]),
  food("pack", null, ["mustard"]),
]);

const line = (text: string, ...others: string[]): ReadableLine => ({
  choice: { foodText: text, foodId: text === "stranger" ? null : foodId(text) },
  others: others.map((other) => ({ foodText: other, foodId: foodId(other) })),
});

const names = (list: readonly { allergen: string; foods: readonly string[] }[]) =>
  list.map(({ allergen, foods }) => `${allergen}: ${foods.join(", ")}`);

describe("allergens of a recipe", () => {
  it("names each allergen with the foods that bring it", () => {
    const found = allergensIn([line("plum"), line("brick"), line("dip"), line("brick")], BOOK);
    expect(names(found.contains)).toEqual(["milk: brick", "egg: dip", "soy: dip"]);
    expect(found.unknown).toEqual([]);
  });

  it("takes wheat for a cereal with gluten, in what is contained and in what may hide", () => {
    expect(names(allergensIn([line("slab")], BOOK).contains)).toEqual([
      "wheat: slab",
      "gluten: slab",
    ]);
    expect(names(allergensIn([line("dip")], BOOK).mayHide)).toEqual([
      "wheat: dip",
      "gluten: dip",
      "celery: dip",
    ]);
  });

  it("calls a food unknown when it is in no book, when its pack is unread, and when it was removed", () => {
    const gone = { choice: { foodText: "gone", foodId: foodId("gone") }, others: [] };
    const found = allergensIn([line("stranger"), line("pack"), gone, line("plum")], BOOK);
    expect(found.unknown).toEqual(["stranger", "pack", "gone"]);
    expect(names(found.mayHide)).toEqual(["mustard: pack"]);
  });

  it("keeps swaps that were not taken apart", () => {
    const found = allergensIn([line("plum", "brick", "pack")], BOOK);
    expect(found.contains).toEqual([]);
    expect(found.unknown).toEqual([]);
    expect(names(found.inSwaps.contains)).toEqual(["milk: brick"]);
    expect(found.inSwaps.unknown).toEqual(["pack"]);
  });

  it("goes by the swap that was taken", () => {
    const recipe = recipeOf(
      "Rice pan\nMakes 2 portions\n- 200 g cooked white rice\n- 20 g butter\n  or 20 g olive oil\nSteps\n1. Fry.",
    );
    const swapped = scaleRecipe(recipe, FOODS, {
      by: { kind: "as written" },
      without: [],
      swaps: { "0.1": 1 },
    });
    if (!swapped.ok) throw new Error(swapped.problem.code);
    const lines = swapped.value.components.flatMap((part) => part.lines);
    const found = allergensIn(lines, FOODS);
    expect(found.contains).toEqual([]);
    expect(names(found.inSwaps.contains)).toEqual(["milk: butter"]);
    expect(names(allergensInRecipe(recipe, FOODS).contains)).toEqual(["milk: butter"]);
  });

  const anyLine = fc
    .constantFrom("plum", "brick", "slab", "dip", "pack", "stranger")
    .map((text) => line(text));

  it("never loses an allergen, a hidden one or an unknown food by adding a line", () => {
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 8 }), anyLine, (lines, added) => {
        const before = allergensIn(lines, BOOK);
        const after = allergensIn([...lines, added], BOOK);
        for (const part of ["contains", "mayHide"] as const) {
          for (const { allergen, foods } of before[part]) {
            const now = after[part].find((one) => one.allergen === allergen);
            expect(now?.foods).toEqual(expect.arrayContaining([...foods]));
          }
        }
        expect(after.unknown).toEqual(expect.arrayContaining([...before.unknown]));
      }),
    );
  });

  it("never reads as free of what a member avoids when a food is unknown", () => {
    fc.assert(
      fc.property(
        fc.array(anyLine, { maxLength: 8 }),
        fc.subarray([...ALLERGENS], { minLength: 1 }),
        fc.nat(8),
        (lines, avoided, at) => {
          const found = allergensIn(lines.toSpliced(at, 0, line("pack")), BOOK);
          const alert = alertsFor(avoided, found).find(({ kind }) => kind === "not known");
          expect(alert?.foods).toContain("pack");
        },
      ),
    );
  });
});

describe("what a food's own name gives away", () => {
  it.each([
    ["sesame bagel", ["sesame"]],
    ["cashew spread", ["tree nuts"]],
    ["prawn crackers", ["crustaceans"]],
    ["ground nuts", ["tree nuts", "peanut"]],
    ["peanut butter", ["peanut"]],
    ["garlic butter", ["milk"]],
    ["celery salt", ["celery"]],
    ["anchovies in oil", ["fish"]],
    ["seafood mix", ["fish", "crustaceans", "molluscs"]],
    ["almond milk", ["tree nuts"]],
    ["no-salt peanut butter", ["peanut"]],
    ["gluten-free oat bread", ["gluten"]],
    ["vegan egg noodles of wheat", ["wheat"]],
    ["satay sauce", ["peanut"]],
    ["dukkah", ["tree nuts", "sesame"]],
    ["beer batter", ["gluten"]],
    ["panko crumbs", ["wheat", "gluten"]],
  ])("reads %s as %j", (name, allergens) => {
    expect([...namedIn(name)].sort()).toEqual([...allergens].sort());
  });

  it.each([
    "coconut milk",
    "cocoa butter",
    "vegan mayonnaise",
    "ginger beer",
    "bread and butter pickles",
    "butter beans",
    "butternut squash",
    "oyster mushrooms",
    "cream of tartar",
    "nutmeg",
    "buckwheat",
    "eggplant",
    "water chestnuts",
    "dairy-free spread",
    "sausages without egg",
    "walnut-sized piece of ginger",
    "vegan cheese",
    "",
  ])("does not take %s for an allergen", (name) => {
    expect(namedIn(name)).toEqual([]);
  });

  it("adds what the table has under a plainer name, and leaves an unknown food unknown", () => {
    const found = allergensIn(
      [
        { choice: { foodText: "sesame plum", foodId: foodId("plum") }, others: [] },
        { choice: { foodText: "cashew spread", foodId: null }, others: [] },
      ],
      BOOK,
    );
    expect(names(found.contains)).toEqual(["tree nuts: cashew spread", "sesame: sesame plum"]);
    expect(found.unknown).toEqual(["cashew spread"]);
  });
});

describe("what a member is told", () => {
  it("tells nothing to one who avoids nothing", () => {
    expect(alertsFor([], allergensIn([line("brick"), line("stranger")], BOOK))).toEqual([]);
  });

  it("tells first what is contained, then what may hide, then what nobody knows, then swaps", () => {
    const lines = [line("dip", "brick"), line("stranger"), line("plum", "pack")];
    expect(alertsFor(["egg", "milk", "celery", "soy"], allergensIn(lines, BOOK))).toEqual([
      { kind: "contains", allergens: ["egg", "soy"], foods: ["dip"] },
      { kind: "may hide", allergens: ["celery"], foods: ["dip"] },
      { kind: "not known", foods: ["stranger"] },
      { kind: "in a swap", allergens: ["milk"], foods: ["brick"] },
      { kind: "swap not known", foods: ["pack"] },
    ]);
  });

  it("does not tell of a swap what the recipe itself contains already", () => {
    expect(alertsFor(["milk"], allergensIn([line("brick", "brick")], BOOK))).toEqual([
      { kind: "contains", allergens: ["milk"], foods: ["brick"] },
    ]);
  });

  it("does not say that a food may hide what it is said to contain", () => {
    const book = foodBook([food("sesame slab", [], ["sesame", "milk"])]);
    const found = allergensIn([line("sesame slab")], book);
    expect(names(found.contains)).toEqual(["sesame: sesame slab"]);
    expect(names(found.mayHide)).toEqual(["milk: sesame slab"]);
  });

  it("warns who avoids gluten of wheat, and not who avoids wheat of barley", () => {
    const wheat = allergensIn([line("slab")], BOOK);
    expect(alertsFor(["gluten"], wheat)).toEqual([
      { kind: "contains", allergens: ["gluten"], foods: ["slab"] },
    ]);
    const barley = foodBook([food("grain", ["gluten"])]);
    expect(alertsFor(["wheat"], allergensIn([line("grain")], barley))).toEqual([]);
  });
});
