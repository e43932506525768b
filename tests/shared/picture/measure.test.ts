import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { breakLines, shorten, widthPx } from "../../../shared/picture/measure.ts";
import { BAR, GROUND, INK, QUIET, TRACK } from "../../../shared/picture/svg.ts";
import { anyText } from "../../kit/any-text.ts";

const face = { sizePx: 26 };

describe("fitting text", () => {
  it("leaves alone what fits and ends what does not in an ellipsis", () => {
    expect(shorten("without cheese", face, 672)).toBe("without cheese");
    const short = shorten("without ".repeat(20), face, 300);
    expect(short).toMatch(/^without .*…$/u);
    expect(widthPx(short, face)).toBeLessThanOrEqual(300);
  });

  it("breaks at spaces and gives up only what is beyond the last line", () => {
    expect(breakLines("one two", face, 672, 2)).toEqual(["one two"]);
    expect(breakLines("aaaa bbbb cccc", face, 130, 3)).toEqual(["aaaa", "bbbb", "cccc"]);
    expect(breakLines("aaaa bbbb cccc", face, 130, 2)).toEqual(["aaaa", "bbbb c…"]);
  });

  it("keeps every line within its width, whatever the text", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const lines = breakLines(text, face, 300, 2);
        expect(lines.length).toBeLessThanOrEqual(2);
        for (const line of lines) expect(widthPx(line, face)).toBeLessThanOrEqual(300);
      }),
    );
  });
});

// World Wide Web Consortium, Web Content Accessibility Guidelines 2.2 (2023), success criteria 1.4.3
// (text 4.5:1) and 1.4.11 (graphics 3:1), with its definition of relative luminance.
describe("the colours", () => {
  const luminance = (hex: string): number => {
    const [r = 0, g = 0, b = 0] = [1, 3, 5]
      .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
      .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (one: string, other: string): number => {
    const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
    return (light + 0.05) / (dark + 0.05);
  };

  it("set text off from its ground by 4.5 to 1", () => {
    expect(contrast(INK, GROUND)).toBeGreaterThan(4.5);
    expect(contrast(QUIET, GROUND)).toBeGreaterThan(4.5);
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
  });

  it("set a bar off from its track and its ground by 3 to 1", () => {
    expect(contrast(BAR, TRACK)).toBeGreaterThan(3);
    expect(contrast(BAR, GROUND)).toBeGreaterThan(3);
  });
});
