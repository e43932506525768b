import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ScaleCaution } from "../../../shared/recipe/cautions.ts";
import { marinadeOf } from "../../../shared/recipe/marinade.ts";
import { scaleRecipe } from "../../../shared/recipe/scale.ts";
import { OVEN_TRAY, readTray, type Tray } from "../../../shared/recipe/tray.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

function cautions(text: string, portions: number, tray?: Tray): readonly ScaleCaution[] {
  const by = { kind: "portions", portions } as const;
  const outcome = scaleRecipe(recipeOf(text), FOODS, { by, without: [], swaps: {}, tray });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value.cautions;
}

const one = <Code extends ScaleCaution["code"]>(list: readonly ScaleCaution[], code: Code) =>
  list.find((caution): caution is Extract<ScaleCaution, { code: Code }> => caution.code === code);

const STEW = `Stew
Makes 4
- 600 g lamb, diced
- 500 ml water
- 200 g carrots
- 20 g cornflour
- 6 g salt
- chilli flakes to taste
Steps
1. Simmer everything for 60 minutes.`;
const CAKE = `Cake
Makes 12 pieces
- 250 g plain flour
- 10 g baking powder
- 2 eggs
- 200 ml milk
Steps
1. Mix and bake in a tin at 180 °C for 40 minutes.`;
const TRAY_BAKE = `Tray
Makes 4
- 800 g chicken thighs
- 400 g carrots
Steps
1. Roast the chicken and carrots on a tray at 200 °C for 40 minutes.`;

describe("what is held back in a big batch", () => {
  test("seasoning and thickener beyond four times, and nothing that is to taste", () => {
    expect(one(cautions(STEW, 17), "hold back")).toEqual({
      code: "hold back",
      seasonings: ["salt"],
      thickeners: ["cornflour"],
      leavenings: [],
    });
    expect(one(cautions(STEW, 16), "hold back")).toBeUndefined();
  });

  test("leavening, while the flour of a batter is no thickener", () => {
    expect(one(cautions(CAKE, 60), "hold back")).toMatchObject({
      leavenings: ["baking powder"],
      thickeners: [],
    });
  });

  test("liquid that simmers, beyond twice, but not what rice takes up or is only brought to the boil", () => {
    expect(one(cautions(STEW, 9), "less boils away")?.liquids).toEqual(["water"]);
    expect(one(cautions(STEW, 8), "less boils away")).toBeUndefined();
    const pilaf = STEW.replace("- 20 g cornflour", "- 200 g basmati rice");
    expect(one(cautions(pilaf, 9), "less boils away")).toBeUndefined();
    const quick = STEW.replace("60 minutes", "5 minutes");
    expect(one(cautions(quick, 9), "less boils away")).toBeUndefined();
  });
});

describe("the oven", () => {
  test("trays come from the area that the food covers, two at a time", () => {
    // 800 g flesh x 1000 cm2/kg + 400 g carrots x 1400 cm2/kg = 1360 cm2 as written; four times 5440 cm2.
    const four = one(cautions(TRAY_BAKE, 16), "oven loads")?.load;
    expect(four).toMatchObject({ tray: OVEN_TRAY, trays: 4, loads: 2 });
    expect(four?.massG).toBeCloseTo(4800, 6);
  });

  test("on the member's own tray also as written, else only what grew beyond one", () => {
    expect(one(cautions(TRAY_BAKE, 4), "oven loads")).toBeUndefined();
    const small = { widthCm: 30, depthCm: 20 };
    expect(one(cautions(TRAY_BAKE, 4, small), "oven loads")?.load.trays).toBe(3);
  });

  test("more food never takes fewer trays", () => {
    const trays = (n: number) => one(cautions(TRAY_BAKE, n), "oven loads")?.load.trays ?? 1;
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 200 }), (portions) => {
        expect(trays(portions + 1)).toBeGreaterThanOrEqual(trays(portions));
      }),
      { numRuns: 40 },
    );
  });

  test("what is baked in a tin keeps its depth instead", () => {
    expect(one(cautions(CAKE, 24), "same depth")?.factor).toBeCloseTo(2, 9);
    expect(one(cautions(CAKE, 24), "oven loads")).toBeUndefined();
    expect(one(cautions(CAKE, 12), "same depth")).toBeUndefined();
    expect(cautions(STEW, 4)).toEqual([]);
  });

  test.each([
    ["40x30 cm", 40, 30],
    ["40 × 36", 40, 36],
    ["400x300 mm", 40, 30],
    ["18x13 in", 45.72, 33.02],
    ['18" x 13"', 45.72, 33.02],
  ])("a tray of %s is read", (text, widthCm, depthCm) => {
    const read = readTray(text);
    expect(read.ok && read.value.widthCm).toBeCloseTo(widthCm, 6);
    expect(read.ok && read.value.depthCm).toBeCloseTo(depthCm, 6);
  });

  test.each(["", "40", "40x", "4x3 cm", "900x300", "40x30 kg", "axb"])(
    "“%s” is no tray",
    (text) => {
      expect(readTray(text)).toMatchObject({ problem: { code: "tray not understood" } });
    },
  );
});

describe("the check in the middle", () => {
  const checks = (lines: string) => {
    const list = cautions(`T\nMakes 2\n${lines}\nSteps\n1. Roast all for 30 minutes.`, 4);
    return one(list, "times do not scale")?.checks ?? [];
  };

  test("each raw food of animals by its own temperature, hottest first", () => {
    const list = checks(
      "- 500 g ground beef\n- 500 g chicken thighs\n- 300 g salmon\n- 200 g shrimp",
    );
    expect(list.map((check) => (check.by === "look" ? "look" : check.coreC))).toEqual([
      74,
      71,
      63,
      "look",
    ]);
  });

  test("ground poultry is poultry", () => {
    expect(checks("- 500 g ground turkey")).toMatchObject([{ coreC: 74 }]);
  });

  test("a food that the table lacks is judged by its words, never passed over", () => {
    expect(checks("- 500 g goat neck zorble")).toMatchObject([{ coreC: 63, restMinutes: 3 }]);
    expect(checks("- 500 g beef stock zorble")).toEqual([]);
  });

  test("what is cooked already, vegetables and an egg that binds need none", () => {
    expect(checks("- 500 g cooked chicken breast\n- 500 g carrots\n- 1 egg")).toEqual([]);
    expect(checks("- 6 eggs\n- 300 g spinach")).toMatchObject([{ coreC: 71 }]);
  });
});

describe("a marinade's window", () => {
  const window = (step: string) => {
    const marinade = marinadeOf(recipeOf(`T\nMakes 2\n- 300 g tofu\nSteps\n1. ${step}`));
    return marinade === null ? null : [marinade.leastMinutes, marinade.mostMinutes];
  };

  test.each([
    ["Marinate the tofu.", 30, 1440],
    ["Marinate for 2 hours.", 120, 1440],
    ["Marinate for at least 30 minutes and up to 24 hours.", 30, 1440],
    ["Marinate for up to 4 hours.", 30, 240],
    ["Marinate for 2-4 hours in the fridge.", 120, 240],
    ["Marinate overnight.", 480, 1440],
    ["Leave in the marinade for 1 hour, or overnight.", 60, 480],
    ["Coat and leave to marinate. Chill for 3 hours.", 180, 1440],
    ["Marinate for 12 hours to 2 days.", 720, 2880],
    ["Marinate for 72 hours.", 2880, 2880],
  ])("%s", (step, least, most) => {
    expect(window(step)).toEqual([least, most]);
  });

  test("none where nothing is marinated", () => {
    expect(window("Fry the marinated tofu for 5 minutes.")).toBeNull();
  });
});
