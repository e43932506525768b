import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { batchCool } from "../../../commands/batch/cool.ts";
import { Refusal } from "../../../commands/kit/command.ts";
import { CONTAINERS } from "../../../shared/heat/cool.ts";
import {
  memoryRecipes,
  readAloud,
  recipeOf,
  storesWith,
  testContext,
} from "../../kit/recipes-and-context.ts";

const ask = async (container: string, depth: string, weight: string): Promise<string> => {
  try {
    return readAloud(await batchCool.run(testContext(), { container, depth, weight }));
  } catch (error) {
    if (error instanceof Refusal) return error.sentences.join(" ");
    throw error;
  }
};

describe("/batch cool", () => {
  it("says first whether it cools in time", async () => {
    expect(await ask("flat bag", "2 cm", "400 g")).toMatch(/^This flat bag cools in time/u);
    expect(await ask("pot", "18 cm", "6 kg")).toMatch(/^Too slow: split it over \d, .* ice water/u);
  });

  it("shows both stages beside the rule's own hours", async () => {
    const said = await ask("shallow box", "4 cm", "450 g");
    expect(said).toMatch(/60 to 21 °C: \d\.\d h \(the rule: 2 h\)/u);
    expect(said).toMatch(/60 to 5 °C: \d\.\d h \(the rule: 6 h\)/u);
  });

  it("never thaws faster than the published rule, and says where the estimate is far from it", async () => {
    const bag = await ask("flat bag", "2 cm", "400 g");
    expect(bag).toMatch(/thaws in the fridge: 24 h \(the published rule gives 24 h/u);
    const tub = await ask("deep tub", "12 cm", "1.5 kg");
    expect(tub).toMatch(/thaws in the fridge: 24 h \(.*far apart, so the rule counts/u);
  });

  it("reads inches and millimetres, and says what to type else", async () => {
    expect(await ask("flat bag", "1 in", "400 g")).toContain("2.5 cm deep");
    expect(await ask("flat bag", "20 mm", "400 g")).toContain("2 cm deep");
    for (const depth of ["deep", "0 cm", "3-4 cm", "900 cm", "4 kg"]) {
      expect(await ask("flat bag", depth, "400 g"), depth).toContain("such as 4 cm");
    }
    expect(await ask("bucket", "4 cm", "400 g")).toContain("flat bag, shallow box");
  });

  it("tells what to do with food that missed the first stage", async () => {
    expect(await ask("pot", "18 cm", "6 kg")).toContain("heated to 74 °C again at once, or thrown");
  });
});

describe("/batch cool of a food", () => {
  const pot = recipeOf(
    "Barley and beef pot\nMakes 4 portions\n\n- 500 g ground beef\n- 200 g pearl barley\n- 500 g carrots\n\nSteps\n1. Simmer for 60 minutes.\n",
  );
  const context = testContext({ stores: storesWith({ recipes: memoryRecipes([pot]) }) });
  const askOf = async (food: string): Promise<string> => {
    try {
      const input = { container: "shallow box", depth: "4 cm", weight: "450 g", food };
      return readAloud(await batchCool.run(context, input));
    } catch (error) {
      if (error instanceof Refusal) return error.sentences.join(" ");
      throw error;
    }
  };
  const thawEstimate = (said: string): number =>
    Number(/our estimate ([\d.]+) h/u.exec(said)?.[1] ?? Number.NaN);

  it("goes by what a recipe or a food consists of, and says which", async () => {
    expect(await askOf("Barley and beef pot")).toContain(
      "450 g of Barley and beef pot, in a fridge",
    );
    expect(await askOf("barley AND beef pot")).toContain("what it consists of");
    const watery = thawEstimate(await askOf("watermelon"));
    const dry = thawEstimate(await askOf("cheddar"));
    // Watermelon has some nine parts of water in ten to melt, cheddar four.
    expect(watery / dry).toBeGreaterThan(1.5);
  });

  it("says that a usual dish is meant where nothing is typed", async () => {
    expect(await ask("shallow box", "4 cm", "450 g")).toContain("a usual cooked dish");
  });

  it("asks which food is meant, and names what to type where it knows none", async () => {
    expect(await askOf("zzyzx")).toMatch(/no recipe of this group and no food I know/u);
    expect(await askOf("beef")).toMatch(/may be several foods: type one of .+ · .+/u);
  });
});

describe("the thaw time that is told", () => {
  it("is never below the published rule, whatever is put in", async () => {
    const filled = fc.record({
      container: fc.constantFrom(...CONTAINERS),
      depth: fc.double({ min: 0.5, max: 40, noNaN: true }),
      weight: fc.integer({ min: 20, max: 20_000 }),
    });
    await fc.assert(
      fc.asyncProperty(filled, async ({ container, depth, weight }) => {
        const said = await ask(container, `${depth.toFixed(1)} cm`, `${weight} g`);
        const told = Number(/thaws in the fridge: (\d+) h/u.exec(said)?.[1]);
        // USDA FSIS, The Big Thaw: 24 hours for each 4 to 5 pounds, and a full day for small items.
        const rule = Math.max(24, (24 * weight) / (4 * 453.59237));
        expect(told).toBeGreaterThanOrEqual(Math.round(rule));
        const estimate = Number(/our estimate ([\d.]+) (?:h|min)/u.exec(said)?.[1]);
        const isFar = said.includes("far apart, so the rule counts");
        if (isFar) expect(told).toBe(Math.round(rule));
        else expect(estimate).toBeLessThanOrEqual(rule * 1.5 + 0.5);
      }),
      { numRuns: 60 },
    );
  });
});
