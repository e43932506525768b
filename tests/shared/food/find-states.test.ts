import { describe, expect, it } from "vitest";
import { findFood } from "../../../shared/food/find.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const book = loadFoodBook();
const best = (text: string): string | null => findFood(book, text)[0]?.food.id ?? null;
const found = (text: string) => findFood(book, text).map(({ food }) => food.id);
const named = (name: string): string => {
  const food = book.foods.find((each) => each.name === name);
  if (food === undefined) throw new Error(`the table has no "${name}"`);
  return food.id;
};

describe("finding a food in the state that was said", () => {
  it.each([
    ["grilled chicken breast", "chicken breast, skinless, grilled, cooked"],
    ["chicken breast, poached", "chicken breast, skinless, stewed, cooked"],
    ["fried onions", "onion, fried, cooked"],
    ["steamed broccoli", "broccoli, boiled, cooked"],
    ["cooked penne", "pasta, cooked"],
    ["jasmine rice", "white rice, long-grain, dry"],
    ["crab meat", "crab, cooked"],
    ["roasted cashews", "cashews, roasted, unsalted"],
    ["jalapeños from a jar", "jalapeños, canned, with their liquid"],
  ])("takes the way of cooking at its word: %s", (text, name) => {
    expect(best(text)).toBe(named(name));
  });

  it.each([
    ["fried aubergine", "is never the boiled one"],
    ["mung beans", "are dry, and never the boiled ones"],
    ["beef chuck, diced", "is raw, and never the braised one"],
    ["canned peaches", "are not fresh ones"],
    ["ground chilli", "is no fresh chilli"],
    ["dried parsley", "is no fresh parsley"],
    ["plums", "are no prunes"],
    ["fresh lasagne", "is not cooked dry pasta"],
  ])("finds nothing where the table has another state only: %s %s", (text) => {
    expect(found(text)).toEqual([]);
  });

  it.each(["chicken", "beef mince", "quinoa", "egg", "courgette", "salmon", "lentils", "prawns"])(
    "puts no cooked food first where nothing is said: %s",
    (text) => {
      expect(findFood(book, text)[0]?.food.state).not.toBe("cooked");
    },
  );
});

describe("finding a food by what is said of fat, salt and skin", () => {
  it.each([
    ["2% milk", "semi-skimmed milk, 2 % fat"],
    ["80/20 ground beef", "beef mince, 20 % fat, raw"],
    ["minced beef (5%)", "beef mince, 5 % fat, raw"],
    ["fat-free sour cream", "soured cream, fat-free"],
    ["low-sodium chicken broth", "chicken stock, reduced-salt, ready to use"],
    ["chicken drumsticks, skin on", "chicken drumstick with skin, raw"],
  ])("takes the entry that is it: %s", (text, name) => {
    expect(best(text)).toBe(named(name));
  });

  it.each(["light coconut milk", "low-fat feta", "fat-free cream cheese", "low-sodium beef stock"])(
    "finds nothing where the table has the fat or salty one only: %s",
    (text) => {
      expect(found(text)).toEqual([]);
    },
  );
});

describe("finding a food that a name only sounds like", () => {
  it.each([
    "rice pudding",
    "mincemeat",
    "onion rings",
    "crab sticks",
    "baby corn",
    "bacon fat",
    "roast potatoes",
    "stuffed peppers",
    "chocolate covered almonds",
    "gluten-free flour",
    "gram flour",
    "perch fillets",
    "bream",
    "tamarind",
    "wafers",
    "macaroons",
    "partridge",
    "mango chutney",
  ])("finds nothing: %s", (text) => {
    expect(found(text)).toEqual([]);
  });

  it.each([
    ["zuchini", "courgette, raw"],
    ["mange tout", "mangetout, raw"],
    ["wholewheatpasta", "wholewheat pasta, dry"],
    ["cornflour, mixed with cold water", "cornflour"],
    ["olive oil, plus butter for the dish", "olive oil"],
    ["turmeric powder", "turmeric"],
  ])("reads over other spellings, gaps and asides: %s", (text, name) => {
    expect(best(text)).toBe(named(name));
  });
});

describe("finding a food that is said to be free of something", () => {
  it.each([
    "eggless mayonnaise",
    "egg-free mayonnaise",
    "vegan mayonnaise",
    "dairy free butter",
    "peanut-free butter",
    "nut free pesto",
    "gluten-free soy sauce",
    "wheat-free bread",
    "meatless mince",
    "veggie sausages",
    "fish-free fish sauce",
    "pesto without nuts",
    "sugar-free ketchup",
  ])("never takes the food with it: %s", (text) => {
    expect(found(text)).toEqual([]);
  });

  it("takes free-range and fat-free for what they are", () => {
    expect(best("large free-range eggs")).toBe(named("egg, whole, raw"));
    expect(best("fat free milk")).toBe(named("skimmed milk, fat-free"));
  });
});
