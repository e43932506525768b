import { describe, expect, it } from "vitest";
import { risksAtTable } from "../../../shared/people/table-risk.ts";
import { VULNERABLE, type Vulnerable } from "../../../shared/people/types.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

function risks(
  text: { title?: string; lines: readonly string[]; steps: readonly string[] },
  table: readonly Vulnerable[] = VULNERABLE,
): readonly string[] {
  const recipe = recipeOf(
    [
      text.title ?? "A dish",
      "Makes 4 portions",
      "Ingredients",
      ...text.lines.map((line) => `- ${line}`),
      "Steps",
      ...text.steps.map((step, at) => `${at + 1}. ${step}`),
    ].join("\n"),
  );
  const lines = recipe.components.flatMap((part) =>
    part.lines.map(({ main, swaps }) => ({ choice: main, others: swaps })),
  );
  return risksAtTable(table, recipe, lines, FOODS).map(
    ({ kind, foods }) => `${kind}: ${foods.join(", ")}`,
  );
}

describe("what is not for the vulnerable at a table", () => {
  it("says nothing where nobody vulnerable eats along", () => {
    expect(risks({ lines: ["2 eggs", "20 g honey"], steps: ["Whisk."] }, [])).toEqual([]);
  });

  it("warns of raw egg when no step cooks it", () => {
    expect(risks({ lines: ["2 egg yolks", "100 g sugar"], steps: ["Whisk until pale."] })).toEqual([
      "raw egg: egg yolks",
    ]);
  });

  it("does not take boiling the pasta before the egg is named for cooking the egg", () => {
    const dish = { lines: ["200 g dry pasta", "2 eggs"] };
    expect(
      risks({ ...dish, steps: ["Boil the pasta and drain.", "Whisk the eggs and pour over."] }),
    ).toEqual(["raw egg: eggs"]);
    expect(risks({ ...dish, steps: ["Boil the pasta.", "Add the eggs, bake at 180 °C."] })).toEqual(
      [],
    );
  });

  it("warns of raw egg in the dishes that are made of it, whatever else is heated", () => {
    const dish = { lines: ["2 egg yolks", "50 g butter"], steps: ["Heat the egg and whisk."] };
    expect(risks({ ...dish, title: "Hollandaise" })).toEqual(["raw egg: egg yolks"]);
    expect(risks({ ...dish, title: "Egg pan" })).toEqual([]);
  });

  it("warns of egg cooked soft", () => {
    expect(
      risks({ lines: ["4 eggs", "200 g spinach"], steps: ["Poach the eggs for 3 minutes."] }),
    ).toEqual(["soft-cooked egg: eggs"]);
  });

  it("warns of raw fish beside cooked rice, and of meat served rare", () => {
    expect(
      risks({
        lines: ["300 g tuna steak", "200 g dry white rice"],
        steps: ["Boil the rice.", "Dice the tuna and serve it on the rice."],
      }),
    ).toEqual(["raw animal food: tuna steak"]);
    expect(
      risks({
        title: "Tuna poke",
        lines: ["300 g tuna steak", "200 g dry white rice"],
        steps: ["Dice the tuna.", "Boil the rice."],
      }),
    ).toEqual(["raw animal food: tuna steak"]);
    expect(
      risks({ lines: ["400 g sirloin steak"], steps: ["Sear the steak until medium-rare."] }),
    ).toEqual(["undercooked: sirloin steak"]);
  });

  it("leaves a dish that is cooked through alone, whether or not its steps name the food", () => {
    expect(
      risks({
        lines: ["900 g chicken thighs", "400 g canned white beans", "4 eggs", "30 g plain flour"],
        steps: ["Heat the oven.", "Lay the thigh on top.", "Bake all of it at 200 °C."],
      }),
    ).toEqual([]);
    expect(risks({ lines: ["500 g ground turkey"], steps: ["Simmer for 40 minutes."] })).toEqual(
      [],
    );
  });

  it("warns of sprouts, cold meats, smoked fish and soft cheese", () => {
    expect(
      risks({
        lines: [
          "100 g bean sprouts",
          "100 g ham",
          "100 g smoked salmon",
          "80 g feta",
          "60 g cheddar",
          "200 g brussels sprouts",
          "100 g smoked paprika",
        ],
        steps: ["Mix."],
      }),
    ).toEqual([
      "sprouts: bean sprouts",
      "soft cheese: feta",
      "smoked fish: smoked salmon",
      "ready-to-eat meat: ham",
    ]);
  });

  it("warns of what is unpasteurised or of raw flour, and takes pasteurised egg", () => {
    expect(
      risks({
        lines: ["200 g unpasteurised milk", "100 g plain flour", "2 pasteurised eggs"],
        steps: ["Stir to a dough and eat."],
      }),
    ).toEqual(["unpasteurised: unpasteurised milk", "raw flour: plain flour"]);
  });

  it("tells only those whom it concerns", () => {
    const sweet = { lines: ["20 g honey", "200 g rolled oats"], steps: ["Bake."] };
    expect(risks(sweet, ["under five"])).toEqual(["honey: honey"]);
    expect(risks(sweet, ["pregnant", "over 65", "weak immune system"])).toEqual([]);
    const fish = { lines: ["400 g swordfish"], steps: ["Grill."] };
    expect(risks(fish, ["pregnant"])).toEqual(["fish high in mercury: swordfish"]);
    expect(risks(fish, ["over 65"])).toEqual([]);
  });
});
