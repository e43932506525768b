import { createRequire } from "node:module";
import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import { cellsOf, GRIDS, type Grid, innerOf } from "../../shared/container-label/grids.ts";
import { layCard, laySheets } from "../../shared/container-label/layout.ts";
import { ARM_LENGTH_PT, LEAST_PT } from "../../shared/container-label/legibility.ts";
import { MM_PER_PT, type Print } from "../../shared/picture/print.ts";
import { pageSvg } from "../../shared/picture/print-svg.ts";
import { bytesOf, readPdf, readPng, scan } from "../kit/printed.ts";
import { HARD } from "../shared/container-label/samples.ts";

const fontFiles = [createRequire(import.meta.url).resolve("dejavu-fonts-ttf/ttf/DejaVuSans.ttf")];

/** Drawing whole pages and looking for codes in them takes its time on a busy machine. */
const SLOWLY_MS = 60_000;

/** Sheets of labels read back by programs that know nothing of ours: a PDF reader and a scanner. */

function sheet(grid: Grid): Print {
  const jobs = HARD.map((words, at) => ({ words: { ...words, code: `7K3Q${at}` }, copies: 1 }));
  const { pages } = laySheets(grid, jobs, 1);
  return { name: "labels", format: "pdf", title: "Labels", pages, alt: "" };
}

const grids = GRIDS.map((grid) => [grid.name, grid] as const);

// ISO 216:2007: A4 is 210 x 297 mm. ANSI/ASME Y14.1: size A is 8.5 x 11 in. A point is 1/72 in
// (ISO 32000-1:2008, 8.3.2.3). A page box to a hundredth of a millimetre.
describe.each(grids)("a printed sheet, %s", { timeout: SLOWLY_MS }, (_name, grid) => {
  it("has the size of its paper", async () => {
    const [widthMm, heightMm] = grid.page === "A4" ? [210, 297] : [8.5 * 25.4, 11 * 25.4];
    for (const page of await readPdf(await bytesOf(sheet(grid)))) {
      expect(page.widthPt * MM_PER_PT).toBeCloseTo(widthMm, 2);
      expect(page.heightPt * MM_PER_PT).toBeCloseTo(heightMm, 2);
    }
  });

  // ISO/IEC 18004: read by ZXing, at 300 dots an inch as an office printer sets them.
  it("bears a QR code on each label that scans as the code beside it", async () => {
    const pages = await readPdf(await bytesOf(sheet(grid)));
    const cells = cellsOf(grid);
    const scanned: string[] = [];
    for (const page of pages) {
      const scale = 300 / 72;
      const found = await scan(await page.image(scale));
      const inCell = (x: number, y: number) =>
        cells.findIndex(
          ({ xMm, yMm, widthMm, heightMm }) =>
            x >= xMm && x <= xMm + widthMm && y >= yMm && y <= yMm + heightMm,
        );
      for (const { text, x, y } of found) {
        const at = inCell((x / scale) * MM_PER_PT, (y / scale) * MM_PER_PT);
        const typed = page.texts
          .filter((one) => inCell(one.x * MM_PER_PT, (page.heightPt - one.y) * MM_PER_PT) === at)
          .map((one) => one.text);
        expect(typed).toContain(text);
        scanned.push(text);
      }
    }
    expect(scanned.toSorted()).toEqual(HARD.map((_, at) => `7K3Q${at}`).toSorted());
  });

  // The pixels themselves, whatever drew them: no ink within the edge that a printer may slip.
  it("prints nothing outside the inner part of its labels", async () => {
    const scale = 3;
    const mm = scale / MM_PER_PT;
    // On plain paper the line to cut along is the edge of the label itself.
    const { labelWidthMm: widthMm, labelHeightMm: heightMm } = grid;
    const inner = grid.isCut ? { xMm: 0, yMm: 0, widthMm, heightMm } : innerOf(grid);
    const cells = cellsOf(grid).map((cell) => ({
      left: (cell.xMm + inner.xMm) * mm - 1,
      top: (cell.yMm + inner.yMm) * mm - 1,
      right: (cell.xMm + inner.xMm + inner.widthMm) * mm + 1,
      bottom: (cell.yMm + inner.yMm + inner.heightMm) * mm + 1,
    }));
    for (const page of await readPdf(await bytesOf(sheet(grid)))) {
      const { data, width } = await page.image(scale);
      const outside: string[] = [];
      for (let at = 0; at < data.length; at += 4) {
        if ((data[at] ?? 255) > 200) continue;
        const [x, y] = [(at / 4) % width, Math.floor(at / 4 / width)];
        const isInside = cells.some(
          ({ left, top, right, bottom }) => x >= left && x <= right && y >= top && y <= bottom,
        );
        if (!isInside) outside.push(`${x} ${y}`);
      }
      expect(outside.slice(0, 5)).toEqual([]);
    }
  });

  // Sizes as `legibility.ts` derives them from Regulation (EU) No 1169/2011 and ISO 9241-3:1992.
  it("sets its dates in 11 points or more, and nothing in less than 6.25", async () => {
    for (const { texts } of await readPdf(await bytesOf(sheet(grid)))) {
      for (const { text, sizePt } of texts) {
        expect(sizePt).toBeGreaterThanOrEqual(LEAST_PT - 0.01);
        if (/^(?:Wed 14 Oct|Tue 12 Jan)/u.test(text)) {
          expect(sizePt).toBeGreaterThanOrEqual(ARM_LENGTH_PT - 0.01);
        }
      }
    }
  });
});

describe("what is printed", { timeout: SLOWLY_MS }, () => {
  // ISO 32000-1:2008, 9.9: a font program in the file makes every reader set the same letters.
  it("has its fonts embedded", async () => {
    const [grid] = GRIDS;
    if (grid === undefined) throw new Error("no grid");
    const whole = Buffer.from(await bytesOf(sheet(grid))).toString("latin1");
    expect(whole.match(/\/FontFile2/gu)?.length).toBe(2);
    expect(whole).not.toMatch(/\/BaseFont \/(?:Helvetica|Times|Courier)/u);
  });

  // Unicode Standard Annex 9, as resvg applies it, which knows nothing of the writer of our PDF.
  it.each(["חומוס עם פטריות", "دجاج بالليمون والزيتون"])(
    "sets the words of %s from right to left",
    async (name) => {
      const inPdf = await inkColumns(name);
      expect(likeness(inPdf, svgColumns(name))).toBeGreaterThan(0.9);
      expect(likeness(inPdf, svgColumns(name.split(" ").toReversed().join(" ")))).toBeLessThan(0.8);
    },
  );

  it("scans from the picture for a phone too", async () => {
    for (const words of HARD) {
      const pages = [layCard(words).page];
      const print: Print = { name: "label", format: "png", title: "Label", pages, alt: "" };
      const found = await scan(await readPng(await bytesOf(print)));
      expect(found.map(({ text }) => text)).toEqual([words.code]);
    }
  });
});

const TEXT_PT = 40;

/** How much ink stands in each column of a line of text, read back from a PDF. */
async function inkColumns(text: string): Promise<readonly number[]> {
  const items = [{ kind: "text", xMm: 10, yMm: 30, text, sizePt: TEXT_PT, bold: false } as const];
  const pages = [{ widthMm: 200, heightMm: 50, items }];
  const [page] = await readPdf(
    await bytesOf({ name: "line", format: "pdf", title: "", pages, alt: "" }),
  );
  if (page === undefined) throw new Error("no page");
  return columnsOf(await page.image(1));
}

function svgColumns(text: string): readonly number[] {
  const pxPerMm = 1 / MM_PER_PT;
  const items = [{ kind: "text", xMm: 10, yMm: 30, text, sizePt: TEXT_PT, bold: false } as const];
  const svg = pageSvg({ widthMm: 200, heightMm: 50, items }, pxPerMm, () => []);
  const { pixels, width } = new Resvg(svg, {
    font: { loadSystemFonts: false, fontFiles, defaultFontFamily: "DejaVu Sans" },
  }).render();
  return columnsOf({ data: pixels, width });
}

function columnsOf({ data, width }: { readonly data: ArrayLike<number>; readonly width: number }) {
  const columns = Array.from({ length: width }, () => 0);
  for (let at = 0; at < data.length; at += 4) {
    const x = (at / 4) % width;
    columns[x] = (columns[x] ?? 0) + (255 - (data[at] ?? 255));
  }
  return columns;
}

/** 1 where two lines have their ink in the same places, 0 where nowhere. */
function likeness(a: readonly number[], b: readonly number[]): number {
  const dot = (one: readonly number[], other: readonly number[]) =>
    one.reduce((sum, value, at) => sum + value * (other[at] ?? 0), 0);
  return dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b));
}
