import type { Print } from "../../shared/picture/print.ts";
import { pageSvg } from "../../shared/picture/print-svg.ts";
import { qrModules } from "./qr.ts";
import { drawAhead, rasterise } from "./raster.ts";
import { writePdf } from "./sheet-pdf.ts";

/** A print as a file. */
export interface PrintFile {
  readonly name: string;
  readonly bytes: Buffer;
  readonly contentType: "application/pdf" | "image/png";
}

/** A label of 90 mm is 1,080 px wide then: sharp on a phone, and a module of its code is six and more. */
const PX_PER_MM = 12;
/** More pages than a reply can ask for are a fault of ours, and would take memory for nothing. */
const PAGES_MAX = 100;

/** What became of a print: its file, or null where it could not be made. A reply may be sent twice. */
const made = new WeakMap<Print, PrintFile | null>();
/** One at a time, so that many who ask at once wait rather than fill the memory. */
let last: Promise<void> = Promise.resolve();

/** Makes the files of prints ahead, for `printFile`. Never rejects. */
export async function makePrints(prints: readonly Print[]): Promise<void> {
  for (const print of prints) {
    if (made.has(print)) continue;
    last = last.then(() => make(print));
    await last;
  }
}

/** The file of a print that was made ahead; null where it could not be, or was not. */
export function printFile(print: Print): PrintFile | null {
  return made.get(print) ?? null;
}

async function make(print: Print): Promise<void> {
  if (made.has(print)) return;
  try {
    made.set(print, print.pages.length > PAGES_MAX ? null : await fileOf(print));
  } catch {
    made.set(print, null);
  }
}

async function fileOf(print: Print): Promise<PrintFile | null> {
  if (print.format === "pdf") {
    const bytes = await writePdf(print);
    return { name: `${print.name}.pdf`, bytes, contentType: "application/pdf" };
  }
  const [page] = print.pages;
  if (page === undefined) return null;
  const picture = {
    name: print.name,
    svg: pageSvg(page, PX_PER_MM, qrModules),
    widthPx: page.widthMm * PX_PER_MM,
    heightPx: page.heightMm * PX_PER_MM,
    alt: print.alt,
  };
  await drawAhead([picture]);
  const bytes = rasterise(picture);
  return bytes === null ? null : { name: `${print.name}.png`, bytes, contentType: "image/png" };
}
