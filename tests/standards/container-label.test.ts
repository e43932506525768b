import { createRequire } from "node:module";
import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import { ARM_LENGTH_PT, LEAST_PT } from "../../shared/container-label/legibility.ts";
import { lotByCode, lotCodes } from "../../shared/container-label/lot-code.ts";
import { lotId } from "../../shared/ids.ts";
import { widthPx } from "../../shared/picture/measure.ts";
import { MM_PER_PT } from "../../shared/picture/print.ts";

const require = createRequire(import.meta.url);
const fontFiles = ["DejaVuSans", "DejaVuSans-Bold"].map((name) =>
  require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`),
);

/** The ink of a text set at 1000 px. */
function inkOf(text: string, bold = false) {
  const weight = bold ? ' font-weight="bold"' : "";
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="40000" height="2000"><text x="500" y="1500" font-family="DejaVu Sans" font-size="1000"${weight}>${text}</text></svg>`;
  const box = new Resvg(svg, { font: { loadSystemFonts: false, fontFiles } }).getBBox();
  if (box === undefined) throw new Error("no ink");
  return box;
}

// Regulation (EU) No 1169/2011, Article 13(2) and Annex IV: an x-height of 1.2 mm or more.
it("sets the smallest text of a label with an x of 1.2 mm", () => {
  const xMm = (inkOf("x").height / 1000) * LEAST_PT * MM_PER_PT;
  expect(xMm).toBeGreaterThanOrEqual(1.2);
  expect(xMm).toBeLessThan(1.25);
});

// ISO 9241-3:1992: characters of at least 16 minutes of arc (as quoted by a maker of screens; the standard
// itself was not at hand). Arm's length taken as 600 mm: common practice, no published source.
it("sets the date of a label with capitals of 16 minutes of arc at 600 mm", () => {
  const capitalMm = (inkOf("H", true).height / 1000) * ARM_LENGTH_PT * MM_PER_PT;
  const wantedMm = 2 * 600 * Math.tan(((16 / 60) * (Math.PI / 180)) / 2);
  expect(capitalMm).toBeGreaterThanOrEqual(wantedMm);
});

it("never measures a text as narrower than the font sets it", () => {
  const texts = [
    "Dill salmon and rice tray, 74 °C",
    "tttt IJIJ “mmm” WWW œŒ Łódź",
    "Картофельная запеканка Щыдц ЉЊ",
    "Κοτόπουλο λεμονάτο ΞΣΨΩ σπκ",
    "Best before Tue 12 Jan 2027",
  ];
  for (const text of texts) {
    for (const bold of [false, true]) {
      expect(inkOf(text, bold).width).toBeLessThanOrEqual(widthPx(text, { sizePx: 1000, bold }));
    }
  }
});

// The two slips a check character is for, single substitution and transposition of neighbours: ISO/IEC
// 7064:2003, clause 1, and the method of ISO 2108:2017 Annex A for a prime modulus (both from memory).
describe("the check character of a lot's code", () => {
  const ALPHABET = [..."0123456789ACDEFGHJKMNPQRTVWXY"];
  const codes = Array.from({ length: 300 }, (_, index) => {
    const id = lotId(`lot${index}`);
    return { id, code: lotCodes([{ id }]).get(id) ?? "" };
  });
  const isMistyped = (typed: string, id: (typeof codes)[number]["id"]) => {
    const read = lotByCode(typed, [{ id }]);
    return !read.ok && read.problem.code === "lot code mistyped";
  };

  it("finds every wrong character", () => {
    for (const { id, code } of codes) {
      for (let at = 0; at < code.length; at += 1) {
        for (const other of ALPHABET.filter((one) => one !== code[at])) {
          expect(isMistyped(code.slice(0, at) + other + code.slice(at + 1), id)).toBe(true);
        }
      }
    }
  });

  it("finds every pair of neighbours exchanged", () => {
    for (const { id, code } of codes) {
      for (let at = 0; at + 1 < code.length; at += 1) {
        const [a = "", b = ""] = code.slice(at, at + 2);
        if (a === b) continue;
        expect(isMistyped(code.slice(0, at) + b + a + code.slice(at + 2), id)).toBe(true);
      }
    }
  });
});
