import { describe, expect, test } from "vitest";
import { readCooking } from "../../../shared/cooking/read-cooking.ts";
import { howIn, textOf } from "../../kit/cooked.ts";
import { recipeOf } from "../../kit/recipes-and-context.ts";

const THIGH = "- 600 g boneless skinless chicken thighs";

describe("how a food is cooked, from the words of the steps", () => {
  test.each([
    ["Roast the chicken for 30 minutes.", "roast"],
    ["Bake the thighs for 30 minutes.", "roast"],
    ["Grill the chicken for 12 minutes.", "grill"],
    ["Broil the chicken for 12 minutes.", "grill"],
    ["Pan-fry the chicken for 10 minutes.", "fry"],
    ["Brown the meat all over.", "fry"],
    ["Stir-fry the chicken for 6 minutes.", "fry"],
    ["Braise the chicken for an hour.", "braise"],
    ["Simmer the chicken for 40 minutes.", "braise"],
    ["Slow-cook the chicken for 6 hours.", "braise"],
    ["Poach the chicken for 15 minutes.", "poach"],
    ["Steam the chicken for 20 minutes.", "steam"],
    ["Air-fry the chicken at 190 °C for 18 minutes.", "air-fry"],
    ["Deep-fry the chicken for 8 minutes.", "deep-fry"],
    ["Microwave the chicken for 5 minutes.", "microwave"],
    ["Cook the chicken through.", "cook"],
  ])("%s is %s", (step, method) => {
    expect(howIn("chicken", [THIGH], [step]).method).toBe(method);
  });

  test("things named after a method, and dishes, are no method", () => {
    for (const step of [
      "Lay the chicken in a roasting tin on a baking tray.",
      "Spread the bake out in shallow boxes.",
      "Serve the chicken with the roasted peppers.",
      "Heat the oven to 200 °C.",
    ]) {
      expect(howIn("chicken", [THIGH], [step]).method, step).toBeNull();
    }
  });

  test("a step that names no food is about what is in the pot", () => {
    const steps = ["Toss the chicken with the onion in a tray.", "Roast for 30 minutes."];
    const lines = [THIGH, "- 200 g onion", "- 100 g cucumber"];
    expect(howIn("chicken", lines, steps)).toMatchObject({ method: "roast", minutes: 30 });
    expect(howIn("cucumber", lines, steps).method).toBeNull();
  });

  test("what is browned first and then simmered counts as simmered, the longer of the two", () => {
    const lines = [THIGH, "- 300 ml chicken stock"];
    const steps = ["Sear the chicken for 5 minutes, pour in the stock and simmer for 25 minutes."];
    expect(howIn("chicken thighs", lines, steps)).toMatchObject({ method: "braise", minutes: 30 });
  });

  test("two pots in one recipe are told apart", () => {
    const lines = [THIGH, "- 200 g dry white rice"];
    const steps = ["Boil the rice for 12 minutes and drain.", "Grill the chicken for 14 minutes."];
    expect(howIn("rice", lines, steps)).toMatchObject({ method: "boil", drained: true, wet: true });
    expect(howIn("chicken", lines, steps)).toMatchObject({ method: "grill", drained: false });
  });

  test("until the rice is soft tells how long, not what is cooked", () => {
    const lines = [THIGH, "- 200 g dry white rice"];
    const steps = ["Lay the chicken on the rice.", "Bake for 30 minutes, until the rice is soft."];
    expect(howIn("chicken", lines, steps).method).toBe("roast");
  });

  test("draining fat off is not draining cooking water", () => {
    const steps = ["Simmer the mince for 10 minutes.", "Drain off the fat."];
    expect(howIn("mince", ["- 500 g beef mince"], steps).drained).toBe(false);
  });

  test("standing time is not heating time", () => {
    const steps = ["Roast the chicken for 40 minutes and leave to stand for 10 minutes."];
    expect(howIn("chicken", [THIGH], steps).minutes).toBe(40);
  });

  test("a line that no step names has no method of its own, but knows the recipe's", () => {
    const lines = [THIGH, "- 300 g salmon fillet"];
    const how = howIn("salmon", lines, ["Roast the chicken for 30 minutes."]);
    expect(how).toMatchObject({ method: null, otherwise: "roast" });
  });

  test("a part is named by its heading", () => {
    const text = textOf(
      ["Base:", THIGH, "Sauce:", "- 200 g tomato", "- 100 g onion"],
      ["Grill the chicken for 12 minutes.", "Simmer the sauce for 20 minutes."],
    );
    const cooking = readCooking(recipeOf(text));
    expect(cooking.get("1.0")?.method).toBe("braise");
    expect(cooking.get("1.1")?.method).toBe("braise");
    expect(cooking.get("0.0")?.method).toBe("grill");
  });

  test("what is taken out of the pot is not in it for the next heating", () => {
    const lines = [THIGH, "- 200 g dry white rice", "- 300 ml water"];
    const steps = [
      "Fry the chicken for 10 minutes. Remove and set aside.",
      "Add the rice and water and simmer for 15 minutes.",
    ];
    expect(howIn("chicken", lines, steps)).toMatchObject({
      method: "fry",
      wet: false,
      minutes: 10,
    });
    expect(howIn("rice", lines, steps)).toMatchObject({ method: "braise", minutes: 15 });
  });

  test("taking something off the heat leaves it in the pot", () => {
    const steps = [
      "Simmer the chicken for 10 minutes. Remove from the heat.",
      "Bake for 30 minutes.",
    ];
    expect(howIn("chicken", [THIGH], steps)).toMatchObject({ method: "roast", minutes: 40 });
  });

  test("draining one pot drains no other", () => {
    const lines = ["- 300 g penne", "- 500 g beef mince", "- 500 g passata"];
    const steps = [
      "Bring a pan of water to the boil, add the penne and cook for 8 minutes. Drain well.",
      "Meanwhile brown the mince for 8 minutes. Stir in the passata and simmer for 10 minutes.",
    ];
    expect(howIn("penne", lines, steps)).toMatchObject({ wet: true, drained: true });
    expect(howIn("mince", lines, steps)).toMatchObject({ method: "braise", drained: false });
    expect(howIn("passata", lines, steps).drained).toBe(false);
  });

  test("the slow cooker braises, whatever the next step calls it", () => {
    const lines = ["- 1 kg stewing beef", "- 300 g carrots"];
    const steps = ["Put everything into the slow cooker. Cook on low for 8 hours."];
    expect(howIn("beef", lines, steps)).toMatchObject({ method: "braise", minutes: 480 });
  });

  test("where no step names any food, the heat is for all of them", () => {
    const how = howIn("chicken", [THIGH, "- 200 g onion"], ["Roast for 40 minutes at 200 °C."]);
    expect(how).toMatchObject({ method: "roast", minutes: 40 });
  });

  test("text made to be slow is read in bounded time", () => {
    const lines = Array.from({ length: 150 }, (_, index) => `- 10 g onion${index}`);
    const step = "boil drain everything simmer ".repeat(20);
    const recipe = recipeOf(
      textOf(
        lines,
        Array.from({ length: 25 }, () => step),
      ),
    );
    const start = performance.now();
    expect(readCooking(recipe).size).toBe(150);
    expect(performance.now() - start).toBeLessThan(1500);
  });
});
