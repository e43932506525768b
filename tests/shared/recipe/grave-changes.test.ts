import { describe, expect, it } from "vitest";
import { graveChanges } from "../../../shared/recipe/grave-changes.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

const TEXT = `Lamb pot
Makes 4 portions

- 600 g lamb, diced
- 200 g carrots
- 20 g olive oil

Steps
1. Simmer for 60 minutes.

Keeps 3 days in the fridge
Freezes 3 months
`;

const changed = (from: string, to: string) =>
  graveChanges(recipeOf(TEXT), recipeOf(TEXT.replace(from, to)), FOODS);

describe("changes that may hurt", () => {
  it("are none where only amounts, names or longer keeping change", () => {
    expect(changed("200 g carrots", "100 g carrots")).toEqual([]);
    expect(changed("- 200 g carrots\n", "")).toEqual([]);
    expect(graveChanges(recipeOf(TEXT.replace("3 days", "2 days")), recipeOf(TEXT), FOODS)).toEqual(
      [],
    );
  });

  it("are allergens that it did not have, with the foods that bring them", () => {
    expect(changed("200 g carrots", "200 g plain yogurt")).toEqual([
      { code: "allergens", of: "contains", new: [{ allergen: "milk", foods: ["plain yogurt"] }] },
    ]);
  });

  it("are allergens of a new swap too, for who takes it", () => {
    expect(changed("20 g olive oil", "20 g olive oil or 20 g butter")).toEqual([
      { code: "allergens", of: "contains", new: [{ allergen: "milk", foods: ["butter"] }] },
    ]);
  });

  it("are foods of which nobody knows what is in them", () => {
    const found = changed("200 g carrots", "200 g wonder sauce");
    expect(found).toEqual([{ code: "unknown foods", foods: ["wonder sauce"] }]);
  });

  it("are fewer days in the fridge, said or brought in by a food, and freezing that got worse", () => {
    expect(changed("Keeps 3 days", "Keeps 2 days")).toEqual([
      { code: "keeps shorter", beforeDays: 3, afterDays: 2 },
    ]);
    expect(changed("Freezes 3 months", "Does not freeze: it splits")).toEqual([
      { code: "freezes worse", before: "well", after: "no", reason: "it splits" },
    ]);
  });
});
