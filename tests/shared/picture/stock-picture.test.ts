import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { BarKind, StockBar } from "../../../shared/picture/stock-alt.ts";
import { BAR_KINDS, SECTION_NAMES } from "../../../shared/picture/stock-alt.ts";
import { stockPicture } from "../../../shared/picture/stock-picture.ts";
import { anyText } from "../../kit/any-text.ts";
import { date, instant, ZONE } from "../../kit/stock.ts";

// Wed 25 November 2026, 18:00 in Lisbon. Days are drawn from Mon 23 Nov, 54 px each, from x = 24.
const now = instant("2026-11-25T18:00:00Z");
const MONDAY_X = 24;
const DAY_PX = 54;

function bar(rest: Partial<StockBar> = {}): StockBar {
  return {
    kind: "fridge",
    title: "Barley pot",
    portions: "3 portions",
    until: "eat by Sat 28 Nov",
    from: date("2026-11-25"),
    last: date("2026-11-28"),
    meals: [],
    thaws: [],
    ...rest,
  };
}

const draw = (...bars: readonly StockBar[]) => stockPicture({ bars, now, zone: ZONE });

function textsOf(svg: string): readonly string[] {
  return [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/gu)].map((match) => match[1] ?? "");
}

/** Left and right edge of the boxes filled in a colour. */
function edgesOf(svg: string, colour: string): readonly (readonly [number, number])[] {
  return [...svg.matchAll(/<rect x="([\d.]+)"[^>]*width="([\d.]+)"[^>]*fill="(#\w+)"\/>/gu)]
    .filter((match) => match[3] === colour)
    .map((match) => [Number(match[1]), Number(match[1]) + Number(match[2])]);
}

const middleOf = (svg: string, text: string): readonly number[] =>
  [...svg.matchAll(/<text x="([\d.]+)"[^>]*>([^<]*)<\/text>/gu)]
    .filter((match) => match[2] === text)
    .map((match) => Number(match[1]));

describe("the picture of the coming two weeks", () => {
  it("has each day's weekday and number along the top, two days back and fourteen from today", () => {
    const texts = textsOf(draw(bar()).svg);
    expect(texts.slice(0, 6)).toEqual([
      "Stock, Wed 25 Nov to Tue 8 Dec",
      "Mo",
      "23",
      "Tu",
      "24",
      "today",
    ]);
    expect(texts.slice(6, 8)).toEqual(["We", "25"]);
    expect(texts.slice(32, 34)).toEqual(["Tu", "8"]);
  });

  it("draws a bar from the day it was cooked to the end of its last good day", () => {
    const [edges] = edgesOf(draw(bar()).svg, "#1f6f78");
    expect(edges).toEqual([MONDAY_X + 2 * DAY_PX, MONDAY_X + 6 * DAY_PX]);
  });

  it("says name, count and date of every bar in words, under the name of its place", () => {
    const texts = textsOf(
      draw(
        bar({ kind: "past", title: "Chili", until: "was good until Tue 24 Nov" }),
        bar(),
        bar({ kind: "freezer", title: "Soup", until: "best before Mon 8 Feb" }),
      ).svg,
    );
    const from = texts.indexOf("Throw away");
    expect(texts.slice(from, from + 9)).toEqual([
      ...["Throw away", "Chili", "3 portions, was good until Tue 24 Nov"],
      ...["Fridge", "Barley pot", "3 portions, eat by Sat 28 Nov"],
      ...["Freezer", "Soup", "3 portions, best before Mon 8 Feb"],
    ]);
  });

  it("tells places apart by pattern, not by colour alone", () => {
    const shapes = BAR_KINDS.map((kind) =>
      draw(bar({ kind }))
        .svg.replace(/#\w{6}/gu, "")
        .replace(/<text.*?<\/text>/gu, ""),
    );
    expect(new Set(shapes).size).toBe(BAR_KINDS.length);
  });

  it("goes on with an arrow beyond the days drawn, and ends with a post within them", () => {
    const long = draw(bar({ kind: "freezer", last: date("2027-02-08") })).svg;
    expect(long.match(/<polygon/gu)).toHaveLength(1);
    expect(draw(bar()).svg).not.toContain("<polygon");
    expect(draw(bar({ from: date("2026-11-20") })).svg.match(/<polygon/gu)).toHaveLength(1);
  });

  it("marks a meal with its portions on the day of the meal, and a thaw on its own day", () => {
    const { svg } = draw(
      bar({
        kind: "freezer",
        last: date("2027-02-08"),
        meals: [{ date: date("2026-11-27"), portions: "1½" }],
        thaws: [{ date: date("2026-11-26"), portions: "2½" }],
      }),
    );
    expect(middleOf(svg, "1½")).toEqual([MONDAY_X + 4.5 * DAY_PX]);
    expect(middleOf(svg, "2½")).toEqual([MONDAY_X + 3.5 * DAY_PX]);
  });

  it("draws no mark for a meal after the days drawn, but tells it in words", () => {
    const picture = draw(bar({ meals: [{ date: date("2026-12-09"), portions: "7" }] }));
    expect(middleOf(picture.svg, "7").filter((x) => x > 600)).toHaveLength(1); // the 7th of December
    expect(picture.alt).toContain("meals Wed 9 Dec (7)");
  });

  it("draws now as a line where the day stands, also on a day of 25 hours", () => {
    const lineAt = (at: string): number => {
      const { svg } = stockPicture({ bars: [], now: instant(at), zone: ZONE });
      const strong = /<line x1="([\d.]+)"[^>]*stroke-width="4"/u.exec(svg);
      return (Number(strong?.[1]) - MONDAY_X) / DAY_PX - 2;
    };
    expect(lineAt("2026-11-25T18:00:00Z")).toBeCloseTo(0.75, 2);
    // Clocks in Lisbon went back on 25 October 2026: 18:00 there is the 19th hour of 25.
    expect(lineAt("2026-10-25T18:00:00Z")).toBeCloseTo(19 / 25, 2);
    // And forward on 29 March 2026: 18:00 is the 17th hour of 23.
    expect(lineAt("2026-03-29T17:00:00Z")).toBeCloseTo(17 / 23, 2);
  });

  it("says so when there is nothing", () => {
    const picture = draw();
    expect(textsOf(picture.svg)).toContain("Nothing in stock.");
    expect(picture.alt).toBe("Stock, Wed 25 Nov to Tue 8 Dec. Nothing in stock.");
  });

  it("draws fourteen bars at most and says how many more there are", () => {
    const many = Array.from({ length: 19 }, (_, n) => bar({ title: `Pot ${n + 1}` }));
    const picture = draw(...many);
    expect(textsOf(picture.svg)).toContain("Pot 14");
    expect(textsOf(picture.svg)).not.toContain("Pot 15");
    expect(textsOf(picture.svg)).toContain("and 5 more, not drawn: see the list.");
    expect(picture.alt).toContain("Not drawn: and 5 more.");
  });

  it("keeps all text at 22 px or more at a width of 912", () => {
    const meals = [{ date: date("2026-11-27"), portions: "1½" }];
    const { svg, widthPx } = draw(bar({ meals, thaws: meals }), bar({ kind: "past" }));
    const sizes = [...svg.matchAll(/font-size="([\d.]+)"/gu)].map((match) => Number(match[1]));
    expect(widthPx).toBe(912);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(22);
  });

  it("says the same in words", () => {
    const picture = draw(
      bar({ meals: [{ date: date("2026-11-27"), portions: "2" }] }),
      bar({
        kind: "freezer",
        title: "Soup",
        until: "best before Mon 8 Feb",
        thaws: [{ date: date("2026-11-29"), portions: "1" }],
      }),
    );
    expect(picture.alt).toBe(
      "Stock, Wed 25 Nov to Tue 8 Dec. Fridge: Barley pot, 3 portions, eat by Sat 28 Nov, meals Fri 27 Nov (2). " +
        "Freezer: Soup, 3 portions, best before Mon 8 Feb, set to thaw Sun 29 Nov (1).",
    );
  });

  it("cuts a long name and never its count and date", () => {
    const texts = textsOf(draw(bar({ title: "peppers and carrots ".repeat(9) })).svg);
    expect(texts.some((text) => /^peppers .*…$/u.test(text))).toBe(true);
    expect(texts).toContain("3 portions, eat by Sat 28 Nov");
  });

  it("has a name for what is written in emoji alone", () => {
    expect(textsOf(draw(bar({ title: "🍲🍲" })).svg)).toContain("(no name)");
    expect(draw(bar({ title: "🍲🍲" })).alt).toContain("🍲🍲, 3 portions");
  });
});

describe("whatever members write", () => {
  it("stays text, within bounds, and leaves the drawing well-formed", () => {
    const day = fc.integer({ min: -400, max: 400 }).map((days) => date("2026-11-25").add({ days }));
    const mark = fc.record({ date: day, portions: fc.constantFrom("1", "1½", "99999") });
    const some = fc.record({
      kind: fc.constantFrom<BarKind>(...BAR_KINDS),
      title: anyText,
      portions: anyText,
      until: fc.constant("eat by Sat 28 Nov"),
      from: day,
      last: day,
      meals: fc.array(mark, { maxLength: 4 }),
      thaws: fc.array(mark, { maxLength: 4 }),
    });
    fc.assert(
      fc.property(fc.array(some, { maxLength: 30 }), (bars) => {
        const { svg, alt, heightPx } = draw(...bars);
        expect(alt.length).toBeLessThanOrEqual(1_000);
        expect(heightPx).toBeLessThanOrEqual(2_400);
        expect(svg.replace(/<\/?(?:svg|rect|text|line|polygon)[^<>]*>/gu, "")).not.toMatch(
          /[<>]|&(?!\w+;|#39;)/u,
        );
        expect(svg).not.toMatch(/NaN|Infinity|undefined|width="-/u);
        for (const kind of new Set(bars.slice(0, 14).map((one) => one.kind))) {
          expect(textsOf(svg)).toContain(SECTION_NAMES[kind]);
        }
      }),
    );
  });
});
