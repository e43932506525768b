import { describe, expect, it } from "vitest";
import { batchCool } from "../../../commands/batch/cool.ts";
import { Refusal } from "../../../commands/kit/command.ts";
import { readAloud, testContext } from "../../kit/recipes-and-context.ts";

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
