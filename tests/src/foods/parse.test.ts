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
  });

  it("names every fault with its line, all at once", () => {
    const faults = faultsOf(
      table(
        GOOD.replace("; 1.5;", "; 1,5;").replace("vegetable", "greens"),
        GOOD.replace("; 83;", "; 93;").replace("leek-raw", "leek-two").replaceAll("leek", "reek"),
        GOOD.replace("leek-raw", "leek-three"),
        GOOD.replace("leek-raw; leek, raw; leeks | baby leek", "leek-four; baby leek; "),
        `${GOOD} one cell; too many`,
      ),
    );
    expect(faults).toContain("Line 4: protein g is not a number (blank means missing).");
    expect(faults).toContain("Line 4: keeping class is no known keeping class.");
    expect(faults.find((fault) => fault.startsWith("Line 5"))).toContain(
      "add up to 109.0 g in 100 g",
    );
    expect(faults.some((fault) => fault.startsWith("Line 6"))).toBe(false);
    expect(faults).toContain('Line 7: "baby leek" stands already on line 6.');
    expect(faults.some((fault) => fault.startsWith("Line 8"))).toBe(true);
  });

  it("refuses an unknown allergen and half of a weight of one", () => {
    expect(faultsOf(table(GOOD.replace("56; ; ;", "56; celeriac; ;"))).join()).toContain(
      "no known allergen",
    );
    expect(faultsOf(table(GOOD.replace("leek; 89;", "; 89;"))).join()).toContain("fill in both");
  });

  it("refuses a table without its header", () => {
    expect(faultsOf(GOOD).join()).toContain("must name the columns");
    expect(faultsOf("").join()).toContain("must name the columns");
  });
});

describe("the food table that comes with the bot", () => {
  const { foods, byId } = loadFoodBook();

  it("holds at least 150 foods, each found by its id", () => {
    expect(foods.length).toBeGreaterThanOrEqual(150);
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

  it("gives raw meat, poultry and fish a keeping class that says so", () => {
    for (const food of foods.filter((one) => one.state === "cooked")) {
      expect(food.keepingClass, food.name).not.toMatch(/^raw-/u);
    }
    for (const food of foods.filter((one) => /^(?:chicken|turkey).*, raw$/u.test(one.name))) {
      expect(food.keepingClass, food.name).toMatch(/^raw-(?:poultry|minced-meat)$/u);
    }
  });
});
