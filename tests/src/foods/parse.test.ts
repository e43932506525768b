import { describe, expect, it } from "vitest";
import { loadFoodBook } from "../../../src/foods/load.ts";
import { FoodTableFaults, parseFoodTable } from "../../../src/foods/parse.ts";

const HEADER =
  "id; name; other names; number; state; kcal; protein g; fat g; saturated g; carbohydrate g; fibre g; sugars g; sodium mg; water g; alcohol g; density g/ml; one; one g; measures; refuse %; allergens; may hide; keeping class; note";
const GOOD =
  "leek-raw; leek, raw; leeks | baby leek; 11246; raw; 61; 1.5; 0.3; ; 14.15; 1.8; 3.9; 20; 83; ; 0.376; leek; 89; large=120 | cup, sliced=89; 56; ; ; vegetable;";

const table = (...rows: string[]): string => ["# a comment", "", HEADER, ...rows].join("\n");

function faultsOf(text: string): readonly string[] {
  try {
    parseFoodTable(text);
  } catch (error) {
    if (error instanceof FoodTableFaults) return error.faults;
    throw error;
  }
  return [];
}

describe("reading the food table", () => {
  it("reads a row, and a blank cell as missing", () => {
    const [leek] = parseFoodTable(table(GOOD));
    expect(leek?.name).toBe("leek, raw");
    expect(leek?.otherNames).toEqual(["leeks", "baby leek"]);
    expect(leek?.per100g.proteinG).toBe(1.5);
    expect(leek?.per100g.saturatedFatG).toBeNull();
    expect(leek?.one).toEqual({ word: "leek", grams: 89 });
    expect(leek?.source).toEqual({ table: "USDA SR28", number: "11246" });
    expect(leek?.measures).toEqual([
      { name: "large", grams: 120 },
      { name: "cup, sliced", grams: 89 },
    ]);
    expect(leek?.waterG).toBe(83);
    expect(leek?.allergens).toEqual([]);
    expect(leek?.mayHide).toEqual([]);
  });

  it("reads no alcohol where the cell is blank, since every food with some is known", () => {
    const [leek, drunk] = parseFoodTable(
      table(GOOD, GOOD.replaceAll("leek", "drunk").replace("; 83; ;", "; 60; 10.5;")),
    );
    expect(leek?.alcoholG).toBe(0);
    expect(drunk?.alcoholG).toBe(10.5);
  });

  it("names every fault with its line, all at once", () => {
    const faults = faultsOf(
      table(
        GOOD.replace("; 1.5;", "; 1,5;").replace("vegetable", "greens"),
        GOOD.replace("; 83;", "; 93;").replace("leek-raw", "leek-two").replaceAll("leek", "reek"),
        GOOD.replace("leek-raw", "leek-three"),
        GOOD.replace("leek-raw; leek, raw; leeks | baby leek", "leek-four; baby leek; "),
        `${GOOD} a note; too many`,
      ),
    );
    expect(faults).toContain("Line 4: protein g is not a number (blank means missing).");
    expect(faults).toContain("Line 4: keeping class is no known keeping class.");
    expect(faults.find((fault) => fault.startsWith("Line 5"))).toContain(
      "add up to 109.0 g in 100 g",
    );
    expect(faults.some((fault) => fault.startsWith("Line 6"))).toBe(false);
    expect(faults).toContain('Line 7: "baby leek" stands already on line 6.');
    expect(faults).toContain("Line 8: has 25 cells, and there are 24 columns.");
  });

  it("refuses an unknown allergen and half of a weight of one", () => {
    expect(faultsOf(table(GOOD.replace("56; ; ;", "56; celeriac; ;"))).join()).toContain(
      "no known allergen",
    );
    expect(faultsOf(table(GOOD.replace("leek; 89;", "; 89;"))).join()).toContain("fill in both");
  });

  it.each([
    ["alcohol counted in the 100 g", "; 83; ;", "; 83; 4;", "and alcohol add up to 103.0 g"],
    ["more saturated fat than fat", "; 0.3; ;", "; 0.3; 0.5;", "saturated g is above fat g"],
    ["more fibre than carbohydrate", "; 1.8;", "; 15;", "fibre g is above carbohydrate g"],
    ["energy left blank", "; 61;", "; ;", "kcal must not be blank"],
    ["a density of nothing", "; 0.376;", "; 0;", "density g/ml must be above 0"],
    ["a measure without its grams", "large=120", "large", "measures must be written name=grams"],
    ["a measure of no weight", "large=120", "large=0", "measures must weigh more than 0 g"],
    ["a measure twice", "large=120", "large=120 | large=130", 'measures have "large" twice'],
    ["sizes out of order", "large=120", "large=120 | small=130", "do not go down"],
    ["an unknown allergen that may hide", "56; ; ;", "56; ; nuts;", "may hide has a word"],
    ["an allergen that is in it and hides", "56; ; ;", "56; milk; milk;", "cannot hide as well"],
    ["an allergen twice", "56; ; ;", "56; milk, milk; ;", "an allergen is named twice"],
    ["wheat without gluten", "56; ; ;", "56; wheat; ;", "wheat is a cereal with gluten"],
    ["a keeping class left blank", "; vegetable;", "; ;", "keeping class is no known"],
    ["no refuse", "; 56; ;", "; ; ;", "refuse % must not be blank"],
  ])("refuses %s, with its line", (_, good, bad, fault) => {
    expect(GOOD).toContain(good);
    const [first = ""] = faultsOf(table(GOOD.replace(good, bad)));
    expect(first).toMatch(/^Line 4: /u);
    expect(first).toContain(fault);
  });

  it("allows sugars above carbohydrate, since sugars are analysed and carbohydrate is not", () => {
    expect(faultsOf(table(GOOD.replace("; 3.9;", "; 14.5;")))).toEqual([]);
  });

  it("refuses a table without its header", () => {
    expect(faultsOf(GOOD).join()).toContain("must name the columns");
    expect(faultsOf("").join()).toContain("must name the columns");
  });
});

describe("the food table that comes with the bot", () => {
  const { foods, byId } = loadFoodBook();

  it("holds at least 560 foods, each found by its id", () => {
    expect(foods.length).toBeGreaterThanOrEqual(560);
    for (const food of foods) expect(byId(food.id)).toBe(food);
  });

  it("has an energy figure for every food, and no figure that is not a number", () => {
    for (const food of foods) {
      expect(food.per100g.energyKcal, food.name).not.toBeNull();
      for (const figure of Object.values(food.per100g)) {
        expect(figure === null || (Number.isFinite(figure) && figure >= 0), food.name).toBe(true);
      }
    }
  });

  it("keeps a missing figure missing", () => {
    const quinoa = foods.find((food) => food.source.number === "20035");
    expect(quinoa?.per100g.sugarsG).toBeNull();
  });

  it("marks the allergens that the law names", () => {
    const allergensOf = (number: string) =>
      foods.find((food) => food.source.number === number)?.allergens;
    expect(allergensOf("01088")).toEqual(["milk"]);
    expect(allergensOf("01123")).toEqual(["egg"]);
    expect(allergensOf("15236")).toEqual(["fish"]);
    expect(allergensOf("15270")).toEqual(["crustaceans"]);
    expect(allergensOf("15172")).toEqual(["molluscs"]);
    expect(allergensOf("12061")).toEqual(["tree nuts"]);
    expect(allergensOf("16098")).toEqual(["peanut"]);
    expect(allergensOf("16126")).toEqual(["soy"]);
    expect(allergensOf("12166")).toEqual(["sesame"]);
    expect(allergensOf("11143")).toEqual(["celery"]);
    expect(allergensOf("02046")).toEqual(["mustard"]);
    expect(allergensOf("16123")).toEqual(["soy", "wheat", "gluten"]);
    expect(allergensOf("20120")).toEqual(["wheat", "gluten"]);
    expect(allergensOf("08120")).toEqual(["gluten"]);
    expect(allergensOf("14096")).toEqual(["sulphites"]);
  });

  it("says what a made food may hide, and never what it is known to hold", () => {
    const mayHide = (number: string) =>
      foods.find((food) => food.source.number === number)?.mayHide ?? [];
    expect(mayHide("06194")).toEqual(expect.arrayContaining(["wheat", "gluten", "milk", "soy"]));
    expect(mayHide("06971")).toContain("gluten");
    expect(mayHide("16124")).toEqual(["wheat", "gluten"]);
    expect(mayHide("16112")).toContain("gluten");
    expect(mayHide("09152")).toEqual(["sulphites"]);
    expect(mayHide("20081")).toContain("lupin");
    expect(mayHide("07063")).toEqual(expect.arrayContaining(["wheat", "gluten", "sulphites"]));
    expect(mayHide("11282")).toEqual([]);
    for (const food of foods) {
      const known = food.allergens ?? [];
      expect(
        food.mayHide.filter((one) => known.includes(one)),
        food.name,
      ).toEqual([]);
    }
  });

  it("calls every dairy food, fish, nut and egg by its allergen", () => {
    // By the source's own groups: its number starts with 01 for dairy and egg, 15 for fish and
    // shellfish, 12 for nuts and seeds.
    const lacking = foods.filter(({ source, allergens, name }) => {
      const has = (...any: readonly string[]) =>
        any.some((one) => allergens?.some((a) => a === one));
      if (source.number.startsWith("01")) return !has("milk", "egg");
      if (source.number.startsWith("15")) return !has("fish", "crustaceans", "molluscs");
      const nut = /almond|cashew|walnut|pecan|hazelnut|pistachio|pine nut/u.test(name);
      return nut && !has("tree nuts");
    });
    expect(lacking.map((food) => food.name)).toEqual([]);
  });

  it("calls everything of wheat, rye, barley and oats a cereal with gluten", () => {
    const lacking = foods.filter(
      ({ name, allergens }) =>
        /\b(?:wheat|wholewheat|rye|barley|oats?|spelt|bulgur|couscous|pasta|bread|bagel|muffin|naan|pitta|bun|beer|flour tortilla|soy sauce)\b/u.test(
          name,
        ) &&
        !/gluten-free|pasta sauce/u.test(name) &&
        !allergens?.includes("gluten"),
    );
    expect(lacking.map((food) => food.name)).toEqual([]);
  });

  it("knows both the dry and the cooked food where a recipe may mean either", () => {
    const cooked = foods.filter((food) => food.state === "cooked");
    expect(cooked.length).toBeGreaterThanOrEqual(150);
    for (const [dry, boiled] of [
      ["20044", "20045"],
      ["20120", "20121"],
      ["20035", "20137"],
      ["16056", "16057"],
      ["20031", "20032"],
      ["16062", "16063"],
      ["23472", "23476"],
      ["15028", "15029"],
      ["11167", "11168"],
    ]) {
      const states = [dry, boiled].map(
        (n) => foods.find((food) => food.source.number === n)?.state,
      );
      expect(states).toEqual(["raw", "cooked"]);
    }
  });

  it("gives raw meat, poultry and fish a keeping class that says so", () => {
    for (const food of foods.filter((one) => one.state === "cooked")) {
      expect(food.keepingClass, food.name).not.toMatch(/^raw-/u);
    }
    for (const food of foods.filter((one) => /^(?:chicken|turkey).*, raw$/u.test(one.name))) {
      expect(food.keepingClass, food.name).toMatch(/^raw-(?:poultry|minced-meat)$/u);
    }
  });
});
