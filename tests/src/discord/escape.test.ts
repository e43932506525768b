import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { escapeLine, oneLine } from "../../../src/discord/escape.ts";
import { anyText } from "../../kit/any-text.ts";

describe("escaping", () => {
  it("leaves ordinary kitchen text as it is", () => {
    for (const plain of ["1.5 kg thigh", "200 °C (390 °F), ~20 min", "18:30", "½ cup | packed"]) {
      expect(escapeLine(plain)).toBe(plain);
    }
  });

  it.each([
    ["# big", "\\# big"],
    ["-# small", "\\-# small"],
    ["> quoted", "\\> quoted"],
    ["- dash", "\\- dash"],
    ["3. third", "3\\. third"],
    ["<t:1:R>", "\\<t:1:R>"],
    ["https://evil.example", "https:\\//evil.example"],
    ["@everyone", "@\u200Beveryone"],
    ["two\nlines", "two lines"],
  ])("turns %j into text", (hostile, shown) => {
    expect(escapeLine(hostile)).toBe(shown);
  });

  it("leaves nothing that formats, links or mentions, and every character can still be read", () => {
    fc.assert(
      fc.property(anyText, (hostile) => {
        const shown = escapeLine(hostile);
        const active = shown.replace(/\\[^0-9A-Za-z\s]/gu, "x");
        expect(active).not.toMatch(
          /[\\*_`[\]<\n\r]|~~|\|\||:\/\/|@(?!\u200B)|^[#>+-]|^\d+[.)](\s|$)/u,
        );
        // A backslash before a mark shows the mark: what is read is what was typed.
        const read = shown.replace(/\\([^0-9A-Za-z\s])/gu, "$1").replaceAll("@\u200B", "@");
        expect(read).toBe(oneLine(hostile));
      }),
      { numRuns: 500 },
    );
  });
});
