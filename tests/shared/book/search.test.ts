import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { BookIndex } from "../../../shared/book/book-index.ts";
import { searchBook } from "../../../shared/book/search.ts";
import type { BookQuery, BookResult } from "../../../shared/book/types.ts";
import { ALLERGENS } from "../../../shared/food/types.ts";
import { anyText } from "../../kit/any-text.ts";
import { bookOf, pot, query } from "./kit.ts";

const BOOK = bookOf([
  `${pot("Crème brûlée oats", "200 g rolled oats", "400 g whole milk")}\nTags: breakfast`,
  pot("Chicken and barley pot", "600 g skinless chicken thighs", "200 g pearl barley"),
  pot("Barley salad", "300 g pearl barley", "200 g tomatoes", "20 g olive oil"),
  pot("Bean stew", "400 g butter beans", "200 g tomatoes", "50 g butter"),
  pot("Aubergine bake", "500 g aubergine", "100 g cheddar"),
  pot("Potato cakes", "500 g potatoes", "2 eggs"),
]);

const titles = (found: BookResult["found"]) => found.map(({ entry }) => entry.title);
const find = (rest: Partial<BookQuery>, book: BookIndex = BOOK) =>
  titles(searchBook(book, query(rest)).found);

describe("searching a book by words", () => {
  it("finds by words in any order, whatever their case, accents and number", () => {
    expect(find({ words: "BARLEY chicken" })).toEqual(["Chicken and barley pot"]);
    expect(find({ words: "creme brulee" })).toEqual(["Crème brûlée oats"]);
    expect(find({ words: "potatoes cake" })).toEqual(["Potato cakes"]);
    expect(find({ words: "tomato" })).toEqual(["Barley salad", "Bean stew"]);
  });

  it("finds a food by another name of it", () => {
    expect(find({ words: "eggplant" })).toEqual(["Aubergine bake"]);
  });

  it("puts a title before a tag, and a tag before a food", () => {
    const book = bookOf([
      pot("Zucchini pan", "400 g courgette", "50 g oats"),
      `${pot("Morning bowl", "200 g rice")}\nTags: oats`,
      pot("Oats and milk", "200 g rice"),
    ]);
    expect(find({ words: "oats" }, book)).toEqual([
      "Oats and milk",
      "Morning bowl",
      "Zucchini pan",
    ]);
  });

  it("says where a word was found that the title has not", () => {
    const [oats] = searchBook(BOOK, query({ words: "breakfast milk" })).found;
    expect(oats?.tags).toEqual(["breakfast"]);
    expect(oats?.foods).toEqual(["whole milk"]);
  });

  it("takes a word that nothing has for the nearest, and says so", () => {
    const result = searchBook(BOOK, query({ words: "chikcen" }));
    expect(titles(result.found)).toEqual(["Chicken and barley pot"]);
    expect(result.mended).toEqual([{ typed: "chikcen", taken: "chicken" }]);
  });

  it("never mends a short word, nor one that something has", () => {
    expect(find({ words: "stow" })).toEqual([]);
    expect(searchBook(BOOK, query({ words: "barley" })).mended).toEqual([]);
  });

  it("wants every word", () => {
    expect(find({ words: "barley pineapple" })).toEqual([]);
  });

  it("lists at most as many as asked, and counts all", () => {
    const { found, foundCount } = searchBook(BOOK, query({}), 2);
    expect(titles(found)).toEqual(["Aubergine bake", "Barley salad"]);
    expect(foundCount).toBe(6);
  });
});

describe("searching a book by what is in hand", () => {
  const uses = (...names: string[]) =>
    searchBook(BOOK, query({ uses: names })).found.map(({ entry, uses, needs }) => [
      entry.title,
      uses,
      needs,
    ]);

  it("puts what uses the most of it first, then what is made of it for the most part", () => {
    expect(uses("chicken", "barley", "tomatoes")).toEqual([
      ["Chicken and barley pot", ["skinless chicken thighs", "pearl barley"], 0],
      ["Barley salad", ["pearl barley", "tomatoes"], 1],
      ["Bean stew", ["tomatoes"], 2],
    ]);
  });

  it("takes a cut for its animal, and not one food for another that has its word", () => {
    expect(uses("chicken").map(([title]) => title)).toEqual(["Chicken and barley pot"]);
    expect(uses("butter")).toEqual([["Bean stew", ["butter"], 2]]);
    expect(uses("beans")).toEqual([["Bean stew", ["butter beans"], 2]]);
  });

  it("counts what nobody knows by its own name", () => {
    const book = bookOf([pot("Odd pan", "100 g zorble paste", "100 g rice")]);
    expect(find({ uses: ["zorble paste"] }, book)).toEqual(["Odd pan"]);
    expect(find({ uses: ["zorble"] }, book)).toEqual([]);
  });

  it("counts optional foods, foods to taste and tap water as needed by nobody", () => {
    const book = bookOf([
      pot("Rice", "300 g rice", "600 g water", "salt to taste", "20 g butter (optional)"),
    ]);
    const [rice] = searchBook(book, query({ uses: ["rice"] })).found;
    expect(rice?.needs).toBe(0);
  });

  it("takes nothing to taste for a use: pepper to taste uses up no peppers", () => {
    const book = bookOf([
      pot("Red tray", "2 red peppers", "300 g rice"),
      pot("Plain soup", "300 g red lentils", "pepper, to taste"),
    ]);
    const found = searchBook(book, query({ uses: ["peppers"] })).found;
    expect(found.map(({ entry }) => entry.title)).toEqual(["Red tray"]);
  });

  it("names what no recipe uses", () => {
    expect(searchBook(BOOK, query({ uses: ["barley", "unobtainium"] })).unused).toEqual([
      "unobtainium",
    ]);
  });
});

describe("searching a book by figures and allergens", () => {
  const odd = pot("Odd pan", "100 g zorble paste", "800 g skinless chicken thighs");
  const book = bookOf([odd, pot("Plain pan", "800 g skinless chicken thighs")]);
  const both = (rest: Partial<BookQuery>) => {
    const { found, notKnown } = searchBook(book, query(rest));
    return [titles(found), titles(notKnown)];
  };

  it("takes an incomplete sum for enough where only a floor is asked", () => {
    expect(both({ proteinG: { from: 30, to: null } })).toEqual([["Odd pan", "Plain pan"], []]);
  });

  it("says that it is not known where more of it might be too much, or enough", () => {
    expect(both({ energyKcal: { from: null, to: 600 } })).toEqual([["Plain pan"], ["Odd pan"]]);
    expect(both({ proteinG: { from: 200, to: null } })).toEqual([[], ["Odd pan"]]);
  });

  it("leaves out an incomplete sum that is too much already", () => {
    expect(both({ energyKcal: { from: null, to: 100 } })).toEqual([[], []]);
  });

  it("never calls a recipe with an unknown food free of anything", () => {
    for (const allergen of ALLERGENS) {
      const { found } = searchBook(book, query({ freeOf: [allergen] }));
      expect(titles(found)).not.toContain("Odd pan");
    }
  });

  it("never calls a recipe free of what a food of it may hide", () => {
    const tins = bookOf([pot("Tuna rice", "200 g tuna, canned in water, drained", "200 g rice")]);
    const result = searchBook(tins, query({ freeOf: ["soy"] }));
    expect([titles(result.found), titles(result.notKnown)]).toEqual([[], ["Tuna rice"]]);
  });

  it("takes wheat for gluten", () => {
    const pasta = bookOf([pot("Pasta", "300 g dry pasta")]);
    const { foundCount, notKnownCount } = searchBook(pasta, query({ freeOf: ["gluten"] }));
    expect([foundCount, notKnownCount]).toEqual([0, 0]);
  });
});

describe("any search", () => {
  const anyQuery = fc.record({
    words: anyText,
    uses: fc.array(anyText, { maxLength: 20 }),
    freezes: fc.constantFrom(true, false, null),
    freeOf: fc.subarray([...ALLERGENS]),
  });

  it("never throws, gives the same twice, and shows what it counts", () => {
    fc.assert(
      fc.property(anyQuery, (rest) => {
        const result = searchBook(BOOK, query(rest), 3);
        expect(searchBook(BOOK, query(rest), 3)).toEqual(result);
        expect(result.found).toHaveLength(Math.min(3, result.foundCount));
        expect(result.foundCount + result.notKnownCount).toBeLessThanOrEqual(6);
      }),
      { numRuns: 100 },
    );
  });

  it("finds no recipe that contains what it must be free of", () => {
    fc.assert(
      fc.property(fc.subarray([...ALLERGENS], { minLength: 1 }), (freeOf) => {
        const { found, notKnown } = searchBook(BOOK, query({ freeOf }));
        for (const { entry } of [...found, ...notKnown]) {
          const held = entry.allergens.contains.map(({ allergen }) => allergen);
          expect(held.filter((one) => freeOf.includes(one))).toEqual([]);
        }
      }),
    );
  });
});
