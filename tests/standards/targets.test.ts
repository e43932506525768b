import { describe, expect, it } from "vitest";
import { decideTargets } from "../../shared/target/decide.ts";
import { dayEnergy, sharesOutside } from "../../shared/target/floors.ts";
import { readTargetFigure } from "../../shared/target/read-figure.ts";
import type { TargetFigures } from "../../shared/target/types.ts";
import { date } from "../kit/stock.ts";

function verdict(figures: TargetFigures, floorKcal: 1200 | 1500): string {
  const decided = decideTargets([], {
    from: date("2026-11-25"),
    weekdays: [1],
    typed: figures,
    floorKcal,
  });
  return decided.ok ? "taken" : decided.problem.code;
}

// American Heart Association, American College of Cardiology and The Obesity Society, 2013 AHA/ACC/TOS
// Guideline for the Management of Overweight and Obesity in Adults, summary of recommendations, 3a:
// 1,200 to 1,500 kcal a day for women, 1,500 to 1,800 for men. The lower ends are the floors here.
describe("the least energy of a day", () => {
  it.each([
    ["women", 1200, 1500],
    ["men", 1500, 1800],
  ] as const)("what is prescribed to %s, %d to %d kcal, is taken to its ends", (_, from, to) => {
    for (const energyKcal of [from, to]) expect(verdict({ energyKcal }, from)).toBe("taken");
    expect(verdict({ energyKcal: from - 1 }, from)).not.toBe("taken");
  });

  // National Heart, Lung, and Blood Institute, Clinical Guidelines on the Identification, Evaluation, and
  // Treatment of Overweight and Obesity in Adults, 1998 (from memory): plans of 1,000 to 1,200 kcal for
  // women and 1,200 to 1,600 for men, and below 800 kcal medical supervision. The sources disagree; the
  // stricter of them is kept, since those plans go with supervision.
  it.each([799, 800, 1000])(
    "%d kcal, given under supervision only, is never taken",
    (energyKcal) => {
      expect(verdict({ energyKcal }, 1200)).toBe("below every floor");
    },
  );
});

// Institute of Medicine, Dietary Reference Intakes for Energy, Carbohydrate, Fiber, Fat, Fatty Acids,
// Cholesterol, Protein, and Amino Acids, 2002/2005, summary table of acceptable macronutrient distribution
// ranges, adults: carbohydrate 45-65, fat 20-35, protein 10-35 percent of energy. In 2,000 kcal that is
// 225-325 g, 44-78 g (44.4 to 77.8) and 50-175 g.
describe("the shares of energy published for adults", () => {
  it.each([
    ["carbohydrateG", 225, 325],
    ["fatG", 44.5, 77.7],
    ["proteinG", 50, 175],
  ] as const)("%s of %d to %d g in 2,000 kcal passes without a word", (key, least, most) => {
    const outside = (grams: number) =>
      sharesOutside({ energyKcal: 2000, [key]: grams }).map((share) => share.key);
    expect([outside(least), outside(most)]).toEqual([[], []]);
    expect([outside(least - 1), outside(most + 1)]).toEqual([[key], [key]]);
  });

  it("is a word and no refusal: many a planned day of a healthy adult lies outside", () => {
    expect(verdict({ energyKcal: 2000, proteinG: 200 }, 1500)).toBe("taken");
  });

  // The same report: protein of at least 10 percent of energy; of the least energy taken that is 30 g.
  it("the least protein taken is the published least share of the least energy", () => {
    expect(readTargetFigure("proteinG", "30 g").ok).toBe(true);
    expect(readTargetFigure("proteinG", "29 g").ok).toBe(false);
    expect(sharesOutside({ energyKcal: 1200, proteinG: 30 })).toEqual([]);
  });

  // The same report, adequate intake of fibre: 38 and 25 g (men and women to 50 years), 30 and 21 g (older).
  it.each([38, 25, 30, 21])("the adequate intake of %d g of fibre can be a target", (grams) => {
    expect(readTargetFigure("fibreG", `${grams} g`)).toEqual({ ok: true, value: grams });
  });

  // International Society of Sports Nutrition, Position Stand: protein and exercise (Jäger et al., Journal of
  // the ISSN 14:20), 2017: up to 3.1 g of protein for a kilogram of body weight, of which 125 kg make 387.5 g.
  it("the highest protein published for athletes of 125 kg is no slip", () => {
    expect(readTargetFigure("proteinG", "387.5 g").ok).toBe(true);
  });
});

// 21 CFR 101.9(c)(1)(i)(B): 4, 4 and 9 kcal per gram of protein, total carbohydrate and fat. With the daily
// values of 101.9(c)(9) (2016; from memory): protein 50 g, carbohydrate 275 g, fat 78 g.
describe("the energy of the macronutrients", () => {
  it("the daily values of protein, carbohydrate and fat come to the 2,000 kcal they are made for", () => {
    const day = dayEnergy({ proteinG: 50, carbohydrateG: 275, fatG: 78 });
    expect(day).toEqual({ kcal: 2002, of: "macronutrients" });
    expect(verdict({ energyKcal: 2000, proteinG: 50, carbohydrateG: 275, fatG: 78 }, 1500)).toBe(
      "taken",
    );
  });

  // Regulation (EU) 1169/2011, Annex XIII part B: reference intake of an average adult 8,400 kJ / 2,000 kcal,
  // fat 70 g, carbohydrate 260 g, protein 50 g. The two energies differ by 0.4 % from rounding.
  it("the reference intake in kilojoules is that in kilocalories", () => {
    const read = readTargetFigure("energyKcal", "8400 kJ");
    expect(read.ok ? Math.round(read.value ?? 0) : read.problem).toBe(2008);
    expect(verdict({ energyKcal: 2000, proteinG: 50, carbohydrateG: 260, fatG: 70 }, 1500)).toBe(
      "taken",
    );
  });

  // National Institute of Standards and Technology, SP 811, 2008, Appendix B.8: calorie (thermochemical)
  // 4.184 J, exact; so 1,200 kcal are 5,020.8 kJ.
  it.each([
    ["5020.7 kJ", "below every floor"],
    ["5020.9 kJ", "taken"],
  ])("a day of %s is %s on the floor of women", (text, expected) => {
    const read = readTargetFigure("energyKcal", text);
    if (!read.ok || read.value === null) throw new Error(text);
    expect(verdict({ energyKcal: read.value }, 1200)).toBe(expected);
  });
});
