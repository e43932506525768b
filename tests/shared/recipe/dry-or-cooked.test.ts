import { describe, expect, test } from "vitest";
import { foodBook } from "../../../shared/food/book.ts";
import { readInHand } from "../../../shared/recipe/in-hand.ts";
import { readRecipe } from "../../../shared/recipe/read.ts";
import type { LineChoice } from "../../../shared/recipe/types.ts";
import { figuresOf, textOf } from "../../kit/cooked.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

const first = (line: string, foods = FOODS): LineChoice | undefined =>
  recipeOf(textOf([line]), foods).components[0]?.lines[0]?.main;

/** The table without its cooked rows. */
const ONLY_DRY = foodBook(FOODS.foods.filter(({ state }) => state !== "cooked"));
const ONLY_COOKED = foodBook(FOODS.foods.filter(({ state }) => state === "cooked"));

describe("a dry food written as cooked", () => {
  test("is taken for the cooked entry where the table has one", () => {
    expect(first("- 200 g cooked white rice")).toMatchObject({
      foodId: "white-rice-long-grain-cooked",
      grams: 200,
      tableGPerG: 1,
    });
  });

  test("is converted by the published factor where the table has only the dry one", () => {
    const rice = first("- 200 g cooked white rice", ONLY_DRY);
    expect(rice?.foodId).toBe("white-rice-long-grain-dry");
    expect(rice?.grams).toBe(200);
    expect((rice?.grams ?? 0) * (rice?.tableGPerG ?? 0)).toBeCloseTo(200 / 2.8, 9);
  });

  test("its figures are those of the cooked food, not of three times as much", () => {
    const lentils = figuresOf(["- 200 g cooked red lentils"]);
    // USDA SR28 16144: 358 kcal in 100 g dry; 200 g cooked are about 66 g dry.
    expect(lentils.whole.energyKcal.amount).toBeCloseTo((200 / 3.02) * 3.58, 0);
    expect(lentils.togetherG).toBe(200);
    expect(lentils.assumptions).toEqual([
      { code: "converted", food: "cooked red lentils", factor: 1 / 3.02 },
    ]);
  });

  test("is told to the coach", () => {
    const read = readRecipe(textOf(["- 200 g cooked red lentils", "- 100 g rice, cooked"]), FOODS);
    const codes = read.ok ? read.value.remarks.map(({ code }) => code) : [];
    expect(codes).toEqual(expect.arrayContaining(["converted", "taken as dry"]));
  });

  test("written dry where the table has only the cooked one, it is converted up", () => {
    const rice = first("- 100 g dry white rice", ONLY_COOKED);
    expect(rice).toMatchObject({ foodId: "white-rice-long-grain-cooked", grams: 100 });
    expect(rice?.tableGPerG).toBeCloseTo(2.8, 9);
  });

  test("counts as not found where no factor is published", () => {
    expect(first("- 200 g cooked cod", ONLY_DRY)?.foodId).toBeNull();
    expect(first("- 200 g uncooked chicken thigh", ONLY_COOKED)?.foodId).toBeNull();
  });

  test("rice from a pouch is cooked rice", () => {
    const rice = first("- 250 g microwave rice", ONLY_DRY);
    expect(rice === undefined || rice.foodId === null || rice.tableGPerG < 1).toBe(true);
    const steamed = first("- 250 g steamed rice", ONLY_DRY);
    expect(steamed === undefined || steamed.foodId === null || steamed.tableGPerG < 1).toBe(true);
  });

  test("half-cooked is not cooked, and dry wine is not dried wine", () => {
    expect(first("- 100 g uncooked white rice")?.foodId).toBe("white-rice-long-grain-dry");
    expect(first("- 100 ml dry white wine")).toMatchObject({ foodId: "white-wine", tableGPerG: 1 });
  });
});

describe("what is in hand, dry or cooked", () => {
  const DRY = recipeOf(textOf(["- 300 g dry white rice", "- 400 g chicken thighs"]));
  const COOKED = recipeOf(textOf(["- 600 g cooked white rice"]));
  const inHand = (text: string, recipe = DRY) => readInHand(text, recipe, FOODS);

  test("600 g of cooked rice for a recipe of dry rice is 214 g of it", () => {
    const read = inHand("600 g cooked rice");
    expect(read.ok && read.value.foodText).toBe("dry white rice");
    expect(read.ok && read.value.grams).toBeCloseTo(600 / 2.8, 9);
  });

  test("200 g of dry rice for a recipe of cooked rice is 560 g of it", () => {
    const read = inHand("200 g dry rice", COOKED);
    expect(read.ok && read.value.foodText).toBe("cooked white rice");
    expect(read.ok && read.value.grams).toBeCloseTo(560, 9);
  });

  test("in the recipe's own state it is taken as it is", () => {
    expect(inHand("600 g cooked rice", COOKED)).toMatchObject({ ok: true, value: { grams: 600 } });
    expect(inHand("250 g dry rice")).toMatchObject({ ok: true, value: { grams: 250 } });
    expect(inHand("250 g rice")).toMatchObject({ ok: true, value: { grams: 250 } });
  });

  test("cooked chicken is not the raw chicken of the recipe", () => {
    const read = inHand("500 g cooked chicken thighs");
    expect(!read.ok && read.problem.code).toBe("food not in recipe");
  });
});
