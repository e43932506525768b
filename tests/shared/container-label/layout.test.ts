import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cellsOf, GRIDS, PAGES_MM } from "../../../shared/container-label/grids.ts";
import { layCard, laySheets } from "../../../shared/container-label/layout.ts";
import { ARM_LENGTH_PT, LEAST_PT } from "../../../shared/container-label/legibility.ts";
import type { LabelWords } from "../../../shared/container-label/types.ts";
import { widthMm } from "../../../shared/container-label/wrap.ts";
import { MM_PER_PT, type PrintBox, type PrintItem } from "../../../shared/picture/print.ts";
import { anyText } from "../../kit/any-text.ts";
import { allergens, FROZEN, HARD, label } from "./samples.ts";

/** The room an item takes: of a line of text from the top of its capitals to the foot of a "g". */
function boxOf(item: PrintItem): PrintBox {
  if (item.kind !== "text") return item;
  const emMm = item.sizePt * MM_PER_PT;
  return {
    xMm: item.xMm,
    yMm: item.yMm - 0.76 * emMm,
    widthMm: widthMm(item.text, item),
    heightMm: 1 * emMm,
  };
}

/** By how much a box sticks out of another, millimetres; 0 where it lies inside. */
function outBy(inner: PrintBox, outer: PrintBox): number {
  return Math.max(
    0,
    outer.xMm - inner.xMm,
    outer.yMm - inner.yMm,
    inner.xMm + inner.widthMm - outer.xMm - outer.widthMm,
    inner.yMm + inner.heightMm - outer.yMm - outer.heightMm,
  );
}

function overlap(a: PrintBox, b: PrintBox): boolean {
  const slack = 0.02;
  return (
    a.xMm + a.widthMm > b.xMm + slack &&
    b.xMm + b.widthMm > a.xMm + slack &&
    a.yMm + a.heightMm > b.yMm + slack &&
    b.yMm + b.heightMm > a.yMm + slack
  );
}

function faultsOf(items: readonly PrintItem[], room: PrintBox): readonly string[] {
  const boxes = items.map((item) => ({ item, box: boxOf(item) }));
  const named = (item: PrintItem) => ("text" in item ? item.text : item.kind);
  return boxes.flatMap(({ item, box }, at) => [
    ...(outBy(box, room) > 0.01 ? [`${named(item)} sticks out`] : []),
    ...boxes
      .slice(at + 1)
      .filter((other) => overlap(box, other.box))
      .map((other) => `${named(item)} over ${named(other.item)}`),
  ]);
}

/** The symbol with its four free modules (ISO/IEC 18004) around it. */
function quietOf(item: Extract<PrintItem, { kind: "qr" }>): PrintBox {
  const quiet = (4 * item.widthMm) / 21;
  return {
    xMm: item.xMm - quiet,
    yMm: item.yMm - quiet,
    widthMm: item.widthMm + 2 * quiet,
    heightMm: item.heightMm + 2 * quiet,
  };
}

const textsOf = (items: readonly PrintItem[]) =>
  items.flatMap((item) => (item.kind === "text" ? [item] : []));

describe.each(GRIDS)("labels on $name", (grid) => {
  const cells = cellsOf(grid);
  const page = { xMm: 0, yMm: 0, ...PAGES_MM[grid.page] };

  it("stand side by side on the page without covering each other", () => {
    for (const [at, cell] of cells.entries()) {
      expect(outBy(cell, page)).toBeLessThan(1e-6);
      for (const other of cells.slice(at + 1)) expect(overlap(cell, other)).toBe(false);
    }
  });

  it("keep all they say inside, apart from each other and off the printer's margin", () => {
    const jobs = HARD.map((words) => ({ words, copies: 1 }));
    const { pages } = laySheets(grid, jobs, 1);
    const printed = { xMm: 5, yMm: 5, widthMm: page.widthMm - 10, heightMm: page.heightMm - 10 };
    let seen = 0;
    for (const { items } of pages) {
      for (const cell of cells) {
        const here = items.filter((item) => outBy(boxOf(item), cell) < 0.01);
        seen += here.length;
        const own = here.filter((item) => boxOf(item).widthMm < cell.widthMm);
        expect(here.length - own.length).toBe(grid.isCut && here.length > 0 ? 1 : 0);
        expect(faultsOf(own, cell)).toEqual([]);
        for (const item of own) expect(outBy(boxOf(item), printed)).toBeLessThan(0.01);
      }
    }
    expect(seen).toBe(pages.reduce((sum, { items }) => sum + items.length, 0));
  });

  it("leave four free modules of half a millimetre or more around the code, on the label itself", () => {
    const { singles } = laySheets(grid, [{ words: label(), copies: 1 }], 1);
    const items = singles[0]?.items ?? [];
    const whole = { xMm: 0, yMm: 0, widthMm: grid.labelWidthMm, heightMm: grid.labelHeightMm };
    const codes = items.flatMap((item) => (item.kind === "qr" ? [item] : []));
    expect(codes).toHaveLength(1);
    for (const qr of codes) {
      expect(qr.widthMm / 21).toBeGreaterThanOrEqual(0.5);
      expect(outBy(quietOf(qr), whole)).toBeLessThan(0.01);
      const others = items.filter((item) => item !== qr);
      expect(others.filter((item) => overlap(boxOf(item), quietOf(qr)))).toEqual([]);
    }
  });

  it("say nothing smaller than the least size, and the date at arm's length", () => {
    for (const words of HARD) {
      const texts = textsOf(laySheets(grid, [{ words, copies: 1 }], 1).singles[0]?.items ?? []);
      for (const { sizePt } of texts) expect(sizePt).toBeGreaterThanOrEqual(LEAST_PT);
      const date = texts.find(({ text }) => text === words.date || text === words.dateShort);
      expect(date?.sizePt).toBeGreaterThanOrEqual(ARM_LENGTH_PT);
    }
  });

  it("lays out any name within bounds", () => {
    fc.assert(
      fc.property(anyText, anyText, (name, food) => {
        const words = label({ lot: FROZEN, allergens: allergens(9, 5, [food]) }, name);
        const { singles } = laySheets(grid, [{ words, copies: 1 }], 1);
        const whole = { xMm: 0, yMm: 0, widthMm: grid.labelWidthMm, heightMm: grid.labelHeightMm };
        expect(faultsOf(singles[0]?.items ?? [], whole)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  it("name every allergen, or none and say so", () => {
    for (let count = 0; count <= 14; count += 1) {
      for (const place of [label().notes, FROZEN]) {
        const input = { allergens: allergens(count), ...("place" in place ? { lot: place } : {}) };
        const words: LabelWords = label(input);
        const [single] = laySheets(grid, [{ words, copies: 1 }], 1).singles;
        const said = textsOf(single?.items ?? [])
          .map(({ text }) => text)
          .join(" ");
        const whole = words.notes.find(({ id }) => id === "allergens")?.forms[0] ?? "";
        const isNamed = said.includes(whole);
        expect(isNamed).toBe(!single?.leftOff.includes("allergens"));
        if (!isNamed) expect(said).toContain("see /recipe card");
        if (count <= 3) expect(isNamed).toBe(true);
      }
    }
  });
});

describe("a sheet of labels", () => {
  const [grid] = GRIDS;
  if (grid === undefined) throw new Error("no grid");
  const perPage = cellsOf(grid).length;
  const codesIn = (items: readonly PrintItem[]) => items.filter(({ kind }) => kind === "qr");

  it("begins with the label asked for and goes on to further pages", () => {
    const jobs = [{ words: label(), copies: perPage + 1 }];
    const { pages } = laySheets(grid, jobs, 3);
    expect(pages.map(({ items }) => codesIn(items).length)).toEqual([perPage - 2, 3]);
    const [third] = cellsOf(grid).slice(2);
    const first = codesIn(pages[0]?.items ?? [])[0];
    if (first?.kind !== "qr" || third === undefined) throw new Error("no code");
    expect(outBy(first, third)).toBe(0);
  });

  it("has a card of its own for a phone, with all that there is to say", () => {
    for (const words of HARD.slice(0, 6)) {
      const { page, leftOff } = layCard(words);
      const whole = { xMm: 0, yMm: 0, widthMm: page.widthMm, heightMm: page.heightMm };
      expect(faultsOf(page.items, whole)).toEqual([]);
      expect(leftOff).toEqual([]);
    }
  });
});
