import { MM_PER_PT, type Modules, type PrintItem, type PrintPage, type PrintQr } from "./print.ts";
import { type Box, drawing, filled, framed, textAt } from "./svg.ts";

const BLACK = "#000000";
const WHITE = "#ffffff";

/** A page as an SVG document of `pxPerMm`; `modulesOf` gives the modules of a code. */
export function pageSvg(
  page: PrintPage,
  pxPerMm: number,
  modulesOf: (text: string) => Modules,
): string {
  const size = { widthPx: page.widthMm * pxPerMm, heightPx: page.heightMm * pxPerMm };
  const paper = filled({ x: 0, y: 0, width: size.widthPx, height: size.heightPx }, WHITE);
  const pieces = page.items.map((item) => pieceOf(item, pxPerMm, modulesOf));
  return drawing(size, [paper, ...pieces]);
}

function pieceOf(item: PrintItem, pxPerMm: number, modulesOf: (text: string) => Modules): string {
  switch (item.kind) {
    case "text": {
      const at = { x: item.xMm * pxPerMm, y: item.yMm * pxPerMm };
      const sizePx = item.sizePt * MM_PER_PT * pxPerMm;
      return textAt(at, item.text, { sizePx, bold: item.bold, colour: BLACK });
    }
    case "frame":
      return framed(boxOf(item, pxPerMm), BLACK, item.lineMm * pxPerMm);
    case "rule":
      return filled(boxOf(item, pxPerMm), BLACK);
    case "qr":
      return qrPieces(item, pxPerMm, modulesOf(item.text));
  }
}

function boxOf(item: Exclude<PrintItem, { kind: "text" }>, pxPerMm: number): Box {
  return {
    x: item.xMm * pxPerMm,
    y: item.yMm * pxPerMm,
    width: item.widthMm * pxPerMm,
    height: item.heightMm * pxPerMm,
  };
}

/** On whole pixels, so that no module is blurred: the symbol may come out a little smaller than its box. */
function qrPieces(item: PrintQr, pxPerMm: number, modules: Modules): string {
  const box = boxOf(item, pxPerMm);
  const side = Math.max(1, Math.floor(box.width / modules.length));
  const left = Math.round(box.x + (box.width - side * modules.length) / 2);
  const top = Math.round(box.y + (box.height - side * modules.length) / 2);
  return modules
    .flatMap((row, y) =>
      runsOf(row).map(({ from, length }) =>
        filled(
          { x: left + from * side, y: top + y * side, width: length * side, height: side },
          BLACK,
        ),
      ),
    )
    .join("");
}

/** Neighbouring dark modules as one piece. */
export function runsOf(
  row: readonly boolean[],
): readonly { readonly from: number; readonly length: number }[] {
  const runs: { from: number; length: number }[] = [];
  for (const [index, dark] of row.entries()) {
    const last = runs.at(-1);
    if (!dark) continue;
    if (last !== undefined && last.from + last.length === index) last.length += 1;
    else runs.push({ from: index, length: 1 });
  }
  return runs;
}
