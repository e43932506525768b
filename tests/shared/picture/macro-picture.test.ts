import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addSums, sumsBy, UNMEASURED } from "../../../shared/nutrition/sum.ts";
import type { NutrientSums } from "../../../shared/nutrition/types.ts";
import { macroPicture } from "../../../shared/picture/macro-picture.ts";
import { anyText } from "../../kit/any-text.ts";

function sums(kcal: number, proteinG: number, fatG: number, carbohydrateG: number): NutrientSums {
  const amounts = { energyKcal: kcal, proteinG, fatG, carbohydrateG };
  return sumsBy((key) => ({
    amount: Object.entries(amounts).find(([name]) => name === key)?.[1] ?? 0,
    atLeast: false,
  }));
}

const whole = { label: "one bowl, as on the card", sums: sums(512, 38, 12, 60) };
const less = { label: "without cheese", sums: sums(432, 33, 5.6, 59) };
const target = { energyKcal: 2100, proteinG: 150, fatG: 70, carbohydrateG: 230 };
const style = "eu" as const;

/** What is written in a drawing, in order. */
function textsOf(svg: string): readonly string[] {
  return [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/gu)].map((match) => match[1] ?? "");
}

/** Widths of what is filled or framed in a colour, as drawn. */
function widthsOf(svg: string, colour: string): readonly number[] {
  const rects = svg.matchAll(/<rect [^>]*width="([\d.]+)"[^>]*(?:fill|stroke)="(#\w+)"[^>]*\/>/gu);
  return [...rects].filter((match) => match[2] === colour).map((match) => Number(match[1]));
}

const BAR = "#1f6f78";
const TRACK_PX = [170, 125, 125, 172];

describe("the picture of a portion's macros", () => {
  const picture = macroPicture({ title: "Taco bowl", rows: [whole, less], target, style });

  it("writes every figure with its unit beside its name, the target's too", () => {
    expect(textsOf(picture.svg)).toEqual([
      "Taco bowl",
      ...["energy", "protein", "fat", "carbohydrate"],
      ...["one bowl, as on the card", "512 kcal", "38 g", "12 g", "60 g"],
      ...["without cheese", "432 kcal", "33 g", "5.6 g", "59 g"],
      ...["your target for the day", "2100 kcal", "150 g", "70 g", "230 g"],
      "A bar is the portion, its mark your target for the day.",
      "Carbohydrate with fibre.",
    ]);
  });

  it("draws each bar as long as its share of the day's target", () => {
    const shares = [
      512 / 2100,
      38 / 150,
      12 / 70,
      60 / 230,
      432 / 2100,
      33 / 150,
      5.6 / 70,
      59 / 230,
    ];
    const drawn = widthsOf(picture.svg, BAR);
    expect(drawn).toHaveLength(8);
    shares.forEach((share, index) => {
      expect(drawn[index]).toBeCloseTo(share * (TRACK_PX[index % 4] ?? 0), 0);
    });
  });

  it("keeps all text at 24 px or more, which a phone shows at about half", () => {
    const sizes = [...picture.svg.matchAll(/font-size="([\d.]+)"/gu)].map((match) =>
      Number(match[1]),
    );
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(24);
    expect(picture.widthPx).toBe(720);
  });

  it("says the same in words, with the share of the target", () => {
    expect(picture.alt).toBe(
      "Taco bowl. Target for the day: 2100 kcal, protein 150 g, fat 70 g, carbohydrate 230 g. " +
        "one bowl, as on the card: 512 kcal (24 %), protein 38 g (25 %), fat 12 g (17 %), carbohydrate 60 g (26 %). " +
        "without cheese: 432 kcal (21 %), protein 33 g (22 %), fat 5.6 g (8 %), carbohydrate 59 g (26 %). " +
        "Carbohydrate with fibre.",
    );
  });

  it("prints what a US label prints in the US style", () => {
    const us = macroPicture({ title: "Taco bowl", rows: [whole], target: null, style: "us" });
    expect(textsOf(us.svg)).toContain("510 kcal");
    expect(textsOf(us.svg)).toContain("Carbohydrate with fiber.");
  });

  it("keeps a bar within its track when a portion is above the day's target", () => {
    const feast = macroPicture({
      title: "Feast",
      rows: [{ label: "all of it", sums: sums(4200, 300, 140, 460) }],
      target,
      style,
    });
    expect(widthsOf(feast.svg, BAR)).toEqual(TRACK_PX);
    // The target is half of it: its frame is half a track, less the width of its line.
    expect(widthsOf(feast.svg, "#1e2a2f").slice(-4)).toEqual([82, 59.5, 59.5, 83]);
  });

  it("draws no bar where there is no target beside others that have one", () => {
    const one = macroPicture({ title: "Bowl", rows: [whole], target: { proteinG: 150 }, style });
    expect(widthsOf(one.svg, BAR)).toHaveLength(1);
    expect(textsOf(one.svg).filter((text) => text === "not set")).toHaveLength(3);
  });

  it("compares the portions with each other when the member has no target", () => {
    const none = macroPicture({ title: "Bowl", rows: [whole, less], target: null, style });
    const longest = widthsOf(none.svg, BAR).slice(0, 4);
    expect(longest).toEqual(TRACK_PX);
    expect(textsOf(none.svg)).toContain("Bars compare the portions with each other.");
    expect(none.alt).not.toContain("arget");
  });

  it("says at least, and draws nothing for what is not known", () => {
    const some = { label: "so far", sums: addSums([sums(300, 30, 20, 0), UNMEASURED]) };
    const bound = macroPicture({ title: "Curry", rows: [some], target, style });
    const texts = textsOf(bound.svg);
    expect(texts).toContain("≥ 300 kcal");
    expect(texts).toContain("not known");
    expect(texts).toContain("≥ is at least: not everything could be counted.");
    expect(widthsOf(bound.svg, BAR)).toHaveLength(3);
    expect(bound.alt).toContain("at least 300 kcal (14 %)");
    expect(bound.alt).toContain("carbohydrate not known.");
  });

  it("draws no bar for zero, and one that is seen for a trace", () => {
    const traces = macroPicture({
      title: "Broth",
      rows: [{ label: "a cup", sums: sums(0, 0.3, 0, 0) }],
      target,
      style,
    });
    expect(widthsOf(traces.svg, BAR).every((width) => width >= 1.5)).toBe(true);
    expect(widthsOf(traces.svg, BAR)).toHaveLength(1);
  });

  it("draws five portions at most, and says how many more there are", () => {
    const rows = [
      whole,
      ...Array.from({ length: 6 }, (_, n) => ({ ...less, label: `without ${n}` })),
    ];
    const many = macroPicture({ title: "Bowl", rows, target, style });
    expect(textsOf(many.svg)).toContain("without 3");
    expect(textsOf(many.svg)).not.toContain("without 4");
    expect(textsOf(many.svg)).toContain("Not shown: 2 more.");
    expect(many.alt).toMatch(/Not shown: 2 more\. Carbohydrate with fibre\.$/u);
  });
});

describe("names that members write", () => {
  it("stand in the drawing as text, whatever they hold", () => {
    const title = `Bowl"><script>alert('&')</script>`;
    const { svg } = macroPicture({ title, rows: [whole], target: null, style });
    expect(svg).not.toContain("<script");
    expect(svg).toContain("Bowl&quot;&gt;&lt;script&gt;alert(&#39;&amp;&#39;)&lt;/script&gt;");
  });

  it("keep the text at 1,000 characters with every figure in it, and the drawing well-formed", () => {
    const grams = fc.double({ min: 0, max: 99_999, noNaN: true });
    const portion = fc.record({
      label: anyText,
      sums: fc
        .tuple(grams, grams, grams, grams, fc.boolean())
        .map(([kcal, p, f, c, isPart]) =>
          isPart ? addSums([sums(kcal, p, f, c), UNMEASURED]) : sums(kcal, p, f, c),
        ),
    });
    fc.assert(
      fc.property(anyText, fc.array(portion, { minLength: 1, maxLength: 8 }), (title, rows) => {
        const { svg, alt, heightPx } = macroPicture({ title, rows, target, style });
        expect(alt.length).toBeLessThanOrEqual(1_000);
        expect(alt).not.toMatch(/…$/u);
        expect(heightPx).toBeLessThanOrEqual(1_300);
        // Only what we draw ourselves is an element, and every "&" begins a reference.
        expect(svg.replace(/<\/?(?:svg|rect|text)[^<>]*>/gu, "")).not.toMatch(
          /[<>]|&(?!\w+;|#39;)/u,
        );
      }),
    );
  });
});
