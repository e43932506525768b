import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FoodBook, foodBook, withOwnFoods } from "../../../shared/food/book.ts";
import { findFood } from "../../../shared/food/find.ts";
import { type Food, PACK_LABEL } from "../../../shared/food/types.ts";
import { foodId } from "../../../shared/ids.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const table = loadFoodBook();
const pattern = table.foods.find((food) => food.id === "greek-yoghurt-plain-fat-free-0-fat");

function own(name: string, id = `own-${name}`): Food {
  if (pattern === undefined) throw new Error("the pattern food is gone from the table");
  return {
    ...pattern,
    id: foodId(id),
    name,
    otherNames: [],
    state: "ready",
    source: { table: PACK_LABEL, number: "" },
    waterG: null,
  };
}

const firstIn = (book: FoodBook, text: string) => findFood(book, text)[0]?.food.id ?? null;
const idsIn = (book: FoodBook, text: string) => findFood(book, text).map(({ food }) => food.id);
const inTable = (name: string) => firstIn(table, name);

describe("finding a food in a group's book", () => {
  const barley = own("High-protein barley wrap");
  const yoghurt = own("Greek yoghurt, strained, vanilla bean");
  const mine = withOwnFoods(table, [barley, yoghurt]);

  it.each(["high-protein barley wrap", "high protein barley wraps", "barley wrap", "barly wrap"])(
    "finds the group's own food by its words, in the plural and over a slip: %s",
    (text) => {
      expect(firstIn(mine, text)).toBe(barley.id);
    },
  );

  it("finds the table's food by its whole name, and offers the own food of a like name beside it", () => {
    expect(firstIn(mine, "Greek yoghurt")).toBe(inTable("Greek yoghurt"));
    expect(idsIn(mine, "Greek yoghurt")).toContain(yoghurt.id);
    expect(firstIn(mine, "strained Greek yoghurt, vanilla bean")).toBe(yoghurt.id);
  });

  it("puts the own food first where both bear the name, and keeps the table's food in reach", () => {
    const thigh = own("Chicken thighs");
    const book = withOwnFoods(table, [thigh]);
    expect(idsIn(book, "chicken thighs").slice(0, 2)).toEqual([
      thigh.id,
      inTable("chicken thighs"),
    ]);
    expect(firstIn(book, "chicken thigh, skinless, raw")).toBe(inTable("chicken thighs"));
  });

  it("asks for two words at least of a long own name, and for none that is not its own", () => {
    for (const text of ["wrap", "chicken barley wrap", "barley"]) {
      expect(idsIn(mine, text), text).not.toContain(barley.id);
    }
  });

  it("finds another group's foods in no other book", () => {
    expect(idsIn(withOwnFoods(table, [own("Oat bar")]), "barley wrap")).toEqual([]);
    expect(idsIn(table, "barley wrap")).toEqual([]);
  });

  it("never takes a word of the table for a slip of a group's own", () => {
    const pearls = withOwnFoods(table, [own("Pearl")]);
    expect(firstIn(pearls, "pears")).toBe(inTable("pears"));
    expect(idsIn(withOwnFoods(table, [own("Brocoli")]), "broccoli").slice(0, 1)).toEqual([
      inTable("broccoli"),
    ]);
  });

  it("reads the table's names once, however many groups have foods of their own", () => {
    let reads = 0;
    const counted = table.foods.slice(0, 50).map((food) =>
      Object.defineProperty({ ...food }, "name", {
        get: () => {
          reads += 1;
          return food.name;
        },
      }),
    );
    const base = foodBook(counted);
    findFood(withOwnFoods(base, [own("First group's bar")]), "chicken");
    const afterFirst = reads;
    for (let group = 0; group < 20; group += 1) {
      findFood(withOwnFoods(base, [own(`Bar of group ${group}`)]), "chicken thigh");
    }
    expect(afterFirst).toBeGreaterThanOrEqual(50);
    expect(reads).toBe(afterFirst);
  });

  it("finds every food of the table by its name, and every own food by its, whatever a group calls its foods", () => {
    const words = ["chicken", "thigh", "raw", "Greek", "yoghurt", "oat", "bar", "protein", "flour"];
    const name = fc
      .uniqueArray(fc.constantFrom(...words), { minLength: 1, maxLength: 4 })
      .map((parts) => parts.join(" "));
    const tableNames = fc.constantFrom(...table.foods.map((food) => food.name));
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.oneof(name, tableNames), { minLength: 1, maxLength: 3 }),
        fc.constantFrom(...table.foods),
        (names, food) => {
          const owns = names.map((each, i) => own(each, `own-${i}`));
          const book = withOwnFoods(table, owns);
          for (const each of owns) expect(firstIn(book, each.name), each.name).toBe(each.id);
          const found = idsIn(book, food.name);
          const namesakes = names.filter((each) => each === food.name).length;
          expect(found[namesakes], food.name).toBe(food.id);
        },
      ),
      { numRuns: 60 },
    );
  });
});
