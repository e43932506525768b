import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { alertsFor } from "../../shared/allergen/alerts.ts";
import { allergensIn } from "../../shared/allergen/find.ts";
import { EU_FOURTEEN, US_NINE } from "../../shared/allergen/lists.ts";
import { namedIn } from "../../shared/allergen/named.ts";
import { findFood } from "../../shared/food/find.ts";
import { ALLERGENS, type Allergen } from "../../shared/food/types.ts";
import { loadFoodBook } from "../../src/foods/load.ts";

const FOODS = loadFoodBook();

function ask(foodText: string) {
  const [best] = findFood(FOODS, foodText, 1);
  return { choice: { foodText, foodId: best?.food.id ?? null }, others: [] };
}

const covered = (list: typeof US_NINE) => new Set(list.flatMap(({ covers }) => covers));

describe("US Food Allergen Labeling and Consumer Protection Act 2004 and FASTER Act 2021", () => {
  it("has nine major food allergens, sesame the ninth", () => {
    expect(US_NINE.map(({ name }) => name)).toEqual([
      "milk",
      "eggs",
      "fish",
      "crustacean shellfish",
      "tree nuts",
      "peanuts",
      "wheat",
      "soybeans",
      "sesame",
    ]);
  });
  it("leaves molluscs, celery, mustard, sulphites, lupin and gluten beside wheat out", () => {
    const outside = ALLERGENS.filter((one) => !covered(US_NINE).has(one));
    expect(outside).toEqual(["molluscs", "gluten", "celery", "mustard", "sulphites", "lupin"]);
  });
});

describe("Regulation (EU) No 1169/2011, 2011, Annex II", () => {
  it("has fourteen entries, which cover all words that foods are marked with", () => {
    expect(EU_FOURTEEN).toHaveLength(14);
    expect([...covered(EU_FOURTEEN)].sort()).toEqual([...ALLERGENS].sort());
  });
  it("has no allergen twice, and every US one too", () => {
    for (const list of [US_NINE, EU_FOURTEEN]) {
      const all = list.flatMap(({ covers }) => covers);
      expect(all).toHaveLength(new Set(all).size);
    }
    for (const one of covered(US_NINE)) expect(covered(EU_FOURTEEN).has(one)).toBe(true);
  });
  it("counts wheat, rye, barley and oats as cereals containing gluten (entry 1)", () => {
    for (const name of [
      "plain flour",
      "dry couscous",
      "pearl barley",
      "rolled oats",
      "dry pasta",
    ]) {
      const found = allergensIn([ask(name)], FOODS);
      expect(
        found.contains.map(({ allergen }) => allergen),
        name,
      ).toContain("gluten");
    }
  });
});

// Which ingredients bring which allergens. The groups follow the two laws above; the ingredients of made
// foods (soy sauce brewed with wheat, fish in Worcestershire sauce) are from memory: common practice of
// the trade, no published table. "contains" must be found as contained; "shown" must be found as
// contained or as what foods of the kind may hide.
const DERIVED: readonly (readonly [
  names: readonly string[],
  contains: readonly Allergen[],
  shown?: readonly Allergen[],
])[] = [
  [["whole milk", "buttermilk", "sour cream", "plain yogurt", "cheddar", "butter"], ["milk"]],
  [["whey protein powder", "ricotta", "feta", "cottage cheese"], ["milk"]],
  [["egg", "egg whites", "hard boiled egg"], ["egg"]],
  [["mayonnaise"], ["egg"], ["mustard"]],
  [["ranch dressing"], ["egg"], ["milk"]],
  [["Caesar dressing"], ["egg"], ["milk", "fish"]],
  [["egg noodles"], ["egg", "wheat", "gluten"]],
  [
    ["plain flour", "breadcrumbs", "couscous", "bulgur", "pasta"],
    ["wheat", "gluten"],
  ],
  [
    ["flour tortillas", "naan", "white bread"],
    ["wheat", "gluten"],
  ],
  [["pearl barley", "rolled oats"], ["gluten"]],
  [["soy sauce"], ["soy", "wheat", "gluten"]],
  [["tamari"], ["soy"], ["wheat"]],
  [["firm tofu", "edamame", "soya milk"], ["soy"]],
  [["miso"], ["soy"], ["gluten"]],
  [["Worcestershire sauce"], ["fish"], ["gluten"]],
  [["fish sauce", "anchovies", "cod", "salmon fillet", "canned tuna"], ["fish"]],
  [["oyster sauce"], ["molluscs"], ["soy", "wheat", "gluten"]],
  [["scallops"], ["molluscs"]],
  [["prawns", "shrimp"], ["crustaceans"]],
  [["tahini", "hummus", "sesame oil", "sesame seeds"], ["sesame"]],
  [["peanut butter", "peanuts", "groundnut oil"], ["peanut"]],
  [["almonds", "almond milk", "cashews", "walnuts"], ["tree nuts"]],
  [["pesto"], ["tree nuts", "milk"]],
  [["prepared mustard", "mustard powder"], ["mustard"]],
  [["curry powder"], [], ["mustard"]],
  [["celery", "celery seed"], ["celery"]],
  [["chicken stock cube"], [], ["celery", "wheat", "soy", "milk"]],
  [["red wine", "white wine", "raisins"], ["sulphites"]],
  [["wine vinegar", "lemon juice"], [], ["sulphites"]],
];

describe("allergens of foods of the real table", () => {
  const cases = DERIVED.flatMap(([names, contains, shown = []]) =>
    names.map((name) => ({ name, contains, shown })),
  );
  it.each(cases)("finds in $name $contains and at least as hidden $shown", (one) => {
    const line = ask(one.name);
    expect(line.choice.foodId, "is not in the table").not.toBeNull();
    const found = allergensIn([line], FOODS);
    const contained = found.contains.map(({ allergen }) => allergen);
    const hidden = found.mayHide.map(({ allergen }) => allergen);
    expect(contained).toEqual(expect.arrayContaining([...one.contains]));
    expect([...contained, ...hidden]).toEqual(expect.arrayContaining([...one.shown]));
  });

  it.each([
    "chicken breast",
    "beef mince",
    "white rice",
    "potatoes",
    "broccoli",
    "tomatoes",
    "apple",
    "olive oil",
    "salt",
    "black beans",
    "coconut milk",
    "corn tortillas",
    "quinoa",
    "honey",
  ])("finds none in %s, and knows it", (name) => {
    const found = allergensIn([ask(name)], FOODS);
    expect(found.contains).toEqual([]);
    expect(found.unknown).toEqual([]);
  });

  it("marks every allergen that a food's own name says, throughout the table", () => {
    const missed = FOODS.foods.flatMap(({ name, otherNames, allergens }) =>
      [name, ...otherNames].flatMap((one) =>
        namedIn(one)
          .filter((said) => allergens?.includes(said) !== true)
          .map((said) => `${one}: ${said}`),
      ),
    );
    expect(missed).toEqual([]);
  });

  it("marks gluten wherever it marks wheat, and never both as contained and as hidden", () => {
    for (const { name, allergens, mayHide } of FOODS.foods) {
      if (allergens?.includes("wheat") === true) expect(allergens, name).toContain("gluten");
      expect(
        mayHide.filter((one) => allergens?.includes(one)),
        name,
      ).toEqual([]);
    }
  });

  it("never loses an allergen by adding a food of the table", () => {
    const line = fc
      .constantFrom(...FOODS.foods)
      .map(({ id, name }) => ({ choice: { foodText: name, foodId: id }, others: [] }));
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), line, (lines, added) => {
        const before = allergensIn(lines, FOODS).contains.map(({ allergen }) => allergen);
        const after = allergensIn([...lines, added], FOODS).contains.map(
          ({ allergen }) => allergen,
        );
        expect(after).toEqual(expect.arrayContaining(before));
      }),
    );
  });

  it("alerts everybody who avoids anything to a food that is not in the table", () => {
    const stranger = { choice: { foodText: "zorble paste", foodId: null }, others: [] };
    const line = fc
      .constantFrom(...FOODS.foods)
      .map(({ id, name }) => ({ choice: { foodText: name, foodId: id }, others: [] }));
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 6 }),
        fc.subarray([...ALLERGENS], { minLength: 1 }),
        (lines, avoided) => {
          const alerts = alertsFor(avoided, allergensIn([...lines, stranger], FOODS));
          expect(alerts).toContainEqual({ kind: "not known", foods: ["zorble paste"] });
        },
      ),
    );
  });
});
