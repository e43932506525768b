import { describe, expect, it } from "vitest";
import { NOTHING } from "../../../shared/nutrition/sum.ts";
import { macroPicture } from "../../../shared/picture/macro-picture.ts";
import type { Picture } from "../../../shared/picture/types.ts";
import { drawAhead, rasterise } from "../../../src/pictures/raster.ts";

function drawing(pieces: string, rest: Partial<Picture> = {}): Picture {
  const { widthPx = 200, heightPx = 60 } = rest;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}">${pieces}</svg>`;
  return { name: "drawing", svg, widthPx, heightPx, alt: "A drawing.", ...rest };
}

const word = (text: string) =>
  `<rect width="200" height="60" fill="#fff"/><text x="9" y="40" font-family="DejaVu Sans" font-size="30">${text}</text>`;

/** Width and height of a PNG: the first chunk's first two numbers (ISO/IEC 15948, clause 11.2.2). */
function sizeOf(png: Buffer | null): readonly [number, number] | null {
  return png === null ? null : [png.readUInt32BE(16), png.readUInt32BE(20)];
}

describe("turning a drawing into pixels", () => {
  it("gives a PNG of the drawing's size", () => {
    const png = rasterise(drawing(word("salt")));
    expect(png?.subarray(1, 4).toString("latin1")).toBe("PNG");
    expect(sizeOf(png)).toEqual([200, 60]);
  });

  it("sets text in a font that comes with the bot, whatever the machine has", () => {
    const empty = rasterise(drawing(word("")));
    const salt = rasterise(drawing(word("salt")));
    const bold = rasterise(drawing(word("salt").replace("<text", '<text font-weight="bold"')));
    expect(salt?.equals(empty ?? Buffer.alloc(0))).toBe(false);
    expect(bold?.equals(salt ?? Buffer.alloc(0))).toBe(false);
  });

  it("never makes it wider than 1,440 pixels", () => {
    expect(sizeOf(rasterise(drawing("", { widthPx: 2_880, heightPx: 100 })))).toEqual([1_440, 50]);
  });

  it("answers null for what is no drawing, or is far too tall", async () => {
    expect(rasterise(drawing("", { svg: "<svg" }))).toBeNull();
    expect(rasterise(drawing("", { heightPx: 4_001 }))).toBeNull();
    const broken = drawing("", { svg: "no drawing" });
    await drawAhead([broken]);
    expect(rasterise(broken)).toBeNull();
  });

  it("gives the same whether drawn ahead or at once, and draws it only once", async () => {
    const picture = drawing(word("salt"));
    await drawAhead([picture]);
    const ahead = rasterise(picture);
    expect(ahead).not.toBeNull();
    expect(rasterise(picture)).toBe(ahead);
    expect(rasterise({ ...picture })?.equals(ahead ?? Buffer.alloc(0))).toBe(true);
  });

  it("draws a picture of hostile names", () => {
    const hostile = `</text><image href="/etc/passwd"/>\u202E\uD800\u0000${"e\u0301\u0301\u0301\u0301".repeat(9)}`;
    const picture = macroPicture({
      title: hostile,
      rows: [{ label: hostile, sums: NOTHING }],
      target: { proteinG: 100 },
      style: "eu",
    });
    expect(picture.svg).not.toContain("<image");
    expect(sizeOf(rasterise(picture))).toEqual([720, picture.heightPx]);
  });
});
