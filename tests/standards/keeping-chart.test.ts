import { describe, expect, it } from "vitest";
import { KEEPING_CLASSES } from "../../shared/food/types.ts";
import {
  FRIDGE_CEILING_DAYS,
  KEEPING_CHART,
  LEFTOVER_DAYS,
  RAW_CHART,
} from "../../shared/keeping/chart.ts";
import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import { loadFoodBook } from "../../src/foods/load.ts";

const WEEK = 7;
const MONTHS = 30;

/**
 * The published ranges, in days in the fridge at 4 °C and months in the freezer at -18 °C, one row for
 * each row of ours. "CFSC" is FoodSafety.gov, Cold Food Storage Chart (HHS, USDA, FDA); "FSIS" is USDA
 * Food Safety and Inspection Service, Leftovers and Food Safety; "MP558" is University of Missouri
 * Extension, MP558; "NCHFP" is the National Center for Home Food Preservation, foods that do not freeze
 * well (So Easy to Preserve; Oregon State University SP 50-766). `memory`: the figure is from memory.
 */
const PUBLISHED = {
  "raw-poultry": { days: [3, 4], months: [3, 4], by: "FSIS, cooked leftovers", memory: "months" },
  "raw-meat": { days: [3, 4], months: [3, 4], by: "FSIS, cooked leftovers", memory: "months" },
  "raw-minced-meat": {
    days: [3, 4],
    months: [3, 4],
    by: "FSIS, cooked leftovers",
    memory: "months",
  },
  "raw-fish": { days: [3, 4], months: [2, 3], by: "handout citing FSIS (2006), cooked fish" },
  "raw-shellfish": { days: [3, 4], months: [2, 3], by: "as cooked fish", memory: "all" },
  "cooked-meat-or-poultry": { days: [3, 4], months: [2, 6], by: "CFSC, leftovers" },
  "cooked-fish": { days: [3, 4], months: [2, 3], by: "handout citing FSIS (2006), cooked fish" },
  "cooked-grain": { days: [3, 4], months: [1, 4], by: "FSIS, cooked leftovers", memory: "months" },
  "cooked-pulses": { days: [3, 4], months: [3, 6], by: "FSIS, cooked leftovers", memory: "months" },
  "opened-can": { days: [3, 4], months: [2, 2], by: "FSIS, opened canned food", memory: "all" },
  "egg-raw": { days: [3, 4], months: [2, 3], by: "CFSC, casserole with egg", memory: "all" },
  "egg-cooked": { days: [WEEK, WEEK], months: null, by: "CFSC, hard-cooked egg; NCHFP" },
  milk: { days: [WEEK, WEEK], months: [3, 3], by: "USDA/FDA consumer note" },
  "soft-dairy": { days: [WEEK, 2 * WEEK], months: [1, 2], by: "USDA/FDA consumer note, yoghurt" },
  "hard-cheese": { days: [2 * WEEK, 2 * WEEK], months: [6, 6], by: "MP558, sliced" },
  mayonnaise: { days: [2 * MONTHS, 2 * MONTHS], months: null, by: "FSIS, mayonnaise opened" },
  vegetable: { days: [3, 5], months: null, by: "FDA produce advice", memory: "all" },
  "salad-leaf": { days: [3, 4], months: null, by: "CFSC, mixed salads; NCHFP" },
  fruit: { days: [3, 5], months: null, by: "FDA produce advice", memory: "all" },
  "fresh-herb": { days: [3, 4], months: null, by: "extension, herbs in oil", memory: "all" },
  bread: { days: [3, 3], months: null, by: "common practice, no published source", memory: "all" },
  tofu: { days: [3, 5], months: null, by: "extension", memory: "all" },
  "shelf-stable": { days: null, months: null, by: "no limit of its own" },
} as const;

describe("every row of the keeping chart", () => {
  it("is held to a published row here", () => {
    expect(Object.keys(PUBLISHED).toSorted()).toEqual([...KEEPING_CLASSES].toSorted());
  });

  it.each(KEEPING_CLASSES)("%s has the lower end of the published days", (one) => {
    const { days } = PUBLISHED[one];
    expect(KEEPING_CHART[one].fridgeDays).toBe(days === null ? null : days[0]);
  });

  it.each(KEEPING_CLASSES)("%s has no more freezer months than published", (one) => {
    const { months } = PUBLISHED[one];
    const ours = KEEPING_CHART[one].freezerMonths;
    if (months === null) return expect(ours === null || ours <= 3).toBe(true);
    expect(ours).toBeGreaterThanOrEqual(months[0]);
    expect(ours).toBeLessThanOrEqual(months[1]);
  });

  it.each(KEEPING_CLASSES)(
    "%s names its source, and says so where a figure is from memory",
    (one) => {
      const { source, freezesCold, reason } = KEEPING_CHART[one];
      expect(source).toMatch(
        /FoodSafety\.gov|USDA|FDA|Extension|National Center|common practice, no published source|from memory|no limit of its own/u,
      );
      const row: { readonly by: string; readonly memory?: string } = PUBLISHED[one];
      expect(/from memory|common practice/u.test(source)).toBe(row.memory !== undefined);
      expect(reason === "").toBe(freezesCold === "well");
    },
  );

  it("stays under the seven-day ceiling for ready-to-eat food (FDA Food Code 3-501.17)", () => {
    expect(FRIDGE_CEILING_DAYS).toBe(7);
    expect(LEFTOVER_DAYS).toBe(3);
  });
});

describe("raw food that no step cooks: FoodSafety.gov, Cold Food Storage Chart", () => {
  // Raw poultry 1 to 2 days; ground meat 1 to 2; steaks, chops, roasts 3 to 5; fish 1 to 3; raw whites and
  // yolks 2 to 4. Shrimp 3 to 5 from memory: the day of the fish is taken.
  it("has the lower end of each", () => {
    const days = Object.entries(RAW_CHART).map(([one, row]) => [one, row.fridgeDays]);
    expect(Object.fromEntries(days)).toEqual({
      "raw-poultry": 1,
      "raw-minced-meat": 1,
      "raw-meat": 3,
      "raw-fish": 1,
      "raw-shellfish": 1,
      "egg-raw": 2,
    });
  });
});

const foods = loadFoodBook();

function kept(lines: string, steps: string) {
  const read = readRecipe(`Test dish\nMakes 4 portions\n\n${lines}\n\nSteps\n${steps}\n`, foods);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return resolveKeeping(read.value.recipe, foods, []);
}

const BAKE = "1. Bake at 180 °C for 30 minutes.";

// National Center for Home Food Preservation, foods that do not freeze well (as above); avocado from its
// page "Freezing avocados", from memory.
describe("what freezes badly by the National Center for Home Food Preservation", () => {
  it.each([
    [
      "mayonnaise stirred in cold",
      "- 500 g chicken thigh\n- 100 g mayonnaise",
      "1. Roast the chicken.\n2. Stir in the mayonnaise.",
      "no",
      "the emulsion splits",
    ],
    [
      "a dressing of raw egg and oil",
      "Dressing:\n- 2 eggs\n- 200 g olive oil",
      "1. Whisk.",
      "no",
      "the emulsion splits",
    ],
    ["yoghurt by itself", "- 300 g plain yogurt", "1. Stir.", "poorly", "soft dairy separates"],
    [
      "lettuce",
      "- 500 g chicken thigh\n- 100 g romaine lettuce",
      "1. Roast the chicken.\n2. Serve on the lettuce.",
      "no",
      "raw salad turns limp and watery",
    ],
    [
      "cucumber that is not cooked",
      "- 500 g chicken thigh\n- 300 g cucumber",
      "1. Roast the chicken.\n2. Toss with the cucumber.",
      "no",
      "raw salad turns limp and watery",
    ],
    [
      "hard-boiled eggs",
      "- 8 eggs",
      "1. Hard-boil the eggs for 10 minutes.",
      "no",
      "cooked egg white turns rubbery",
    ],
    [
      "avocado",
      "- 500 g chicken thigh\n- 2 avocados",
      "1. Roast the chicken.\n2. Top with the avocado.",
      "poorly",
      "raw avocado turns brown and watery",
    ],
    [
      "boiled potato",
      "- 500 g beef\n- 400 g potatoes",
      "1. Simmer the beef and potatoes for 60 minutes.",
      "poorly",
      "potato turns soft and mealy",
    ],
    [
      "a crisp coating",
      "- 500 g chicken thigh\n- 100 g panko",
      "1. Coat the chicken with the panko.\n2. Bake at 200 °C until golden.",
      "poorly",
      "the crisp coating turns soggy",
    ],
  ])("%s", (_, lines, steps, freezes, reason) => {
    expect(kept(lines, steps)).toMatchObject({ freezes, reason });
  });

  it.each([
    ["mashed potato", "- 900 g potatoes", "1. Boil the potatoes.\n2. Mash them."],
    ["sweet potato", "- 900 g sweet potatoes", BAKE],
    [
      "cooked tomato",
      "- 500 g chicken thigh\n- 300 g tomatoes",
      "1. Simmer the chicken and tomatoes.",
    ],
    [
      "breadcrumbs inside",
      "- 500 g ground beef\n- 100 g breadcrumbs",
      "1. Mix, roll into balls.\n2. Bake at 200 °C for 20 minutes.",
    ],
    ["eggs in a bake", "- 8 eggs\n- 200 g spinach", BAKE],
    ["a stew", "- 500 g beef\n- 200 g carrots", "1. Simmer for 2 hours."],
  ])("but not %s", (_, lines, steps) => {
    expect(kept(lines, steps).freezes).toBe("well");
  });

  it("rice frozen by itself is told to be softer and drier", () => {
    const dish = "Stew:\n- 500 g beef\n\nRice:\n- 300 g white rice";
    expect(kept(dish, "1. Simmer for 2 hours.\n2. Boil the rice.").remarks).toContain(
      "The Rice frozen by itself turns soft and dry: freeze it under its sauce, or cook it a little less.",
    );
  });

  // UK Food Standards Agency, home food fact checker, rice: from memory.
  it("rice carries its own caution, rice noodles do not", () => {
    const said = (food: string) => kept(`- 300 g ${food}`, "1. Boil.").remarks.join(" ");
    expect(said("white rice")).toMatch(/within an hour.*heat it once only/u);
    expect(said("rice noodles")).not.toMatch(/within an hour/u);
  });

  it("a coach who says that it freezes well is believed, and the published advice said beside it", () => {
    const stew = kept(
      "- 500 g beef\n- 400 g potatoes",
      "1. Simmer the beef and potatoes for 60 minutes.\n\nFreezes well, 3 months",
    );
    expect(stew.freezes).toBe("well");
    expect(stew.remarks).toContain(
      "By published advice it freezes badly: potato turns soft and mealy.",
    );
  });
});

describe("dressings of raw egg", () => {
  // FoodSafety.gov, Cold Food Storage Chart: raw whites or yolks 2 to 4 days; homemade dressings of raw egg
  // 3 to 4 days and only of pasteurised egg (extension advice, from memory). The shortest is taken.
  it("keep two days although the rest of the dish is cooked", () => {
    const dish = "Base:\n- 500 g chicken thigh\n\nCaesar dressing:\n- 2 eggs\n- 200 g olive oil";
    const found = kept(dish, "1. Whisk the dressing.\n2. Roast the chicken at 200 °C.");
    expect(found).toMatchObject({ fridgeDays: 2, limitedBy: "Caesar dressing" });
    expect(found.remarks.join(" ")).toMatch(/stays raw.*not for pregnancy/u);
  });
});
