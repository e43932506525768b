import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { setImmediate as nextTurn } from "node:timers/promises";
import PdfDocument from "pdfkit";
import {
  MM_PER_PT,
  type Modules,
  type Print,
  type PrintItem,
  type PrintQr,
  type PrintText,
} from "../../shared/picture/print.ts";
import { runsOf } from "../../shared/picture/print-svg.ts";
import { qrModules } from "./qr.ts";

type Document = InstanceType<typeof PdfDocument>;

const require = createRequire(import.meta.url);
const fontFile = (name: string) =>
  readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
const FONTS = { plain: "DejaVuSans", bold: "DejaVuSans-Bold" } as const;
let fonts: Readonly<Record<keyof typeof FONTS, Buffer>> | null = null;

/**
 * A print as a PDF (ISO 32000) in its true size, its letters embedded, so that every printer sets it
 * alike. Rejects where it cannot be written.
 */
export async function writePdf(print: Print): Promise<Buffer> {
  const document = new PdfDocument({
    autoFirstPage: false,
    lang: "en",
    displayTitle: true,
    margin: 0,
    info: { Title: print.title, Creator: "Batch Clerk", Producer: "Batch Clerk" },
  });
  const whole = collected(document);
  fonts ??= { plain: fontFile(FONTS.plain), bold: fontFile(FONTS.bold) };
  document.registerFont(FONTS.plain, fonts.plain);
  document.registerFont(FONTS.bold, fonts.bold);
  for (const page of print.pages) {
    document.addPage({ size: [pt(page.widthMm), pt(page.heightMm)], margin: 0 });
    for (const item of page.items) addItem(document, item);
    // Two hundred labels take some 80 ms: others are let in between.
    await nextTurn();
  }
  document.end();
  return whole;
}

function collected(document: Document): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    document.on("data", (chunk: Buffer) => chunks.push(chunk));
    document.on("end", () => resolve(Buffer.concat(chunks)));
    document.on("error", reject);
  });
}

function addItem(document: Document, item: PrintItem): void {
  switch (item.kind) {
    case "text":
      addText(document, item);
      return;
    case "frame": {
      const half = item.lineMm / 2;
      const { xMm, yMm, widthMm, heightMm, lineMm } = item;
      document.lineWidth(pt(lineMm));
      document.rect(pt(xMm + half), pt(yMm + half), pt(widthMm - lineMm), pt(heightMm - lineMm));
      document.stroke("black");
      return;
    }
    case "rule":
      document.rect(pt(item.xMm), pt(item.yMm), pt(item.widthMm), pt(item.heightMm)).fill("black");
      return;
    case "qr":
      addQr(document, item, qrModules(item.text));
  }
}

const RIGHT_TO_LEFT = /[\u0590-\u08FF]/u;
const ON_LINE = { lineBreak: false, baseline: "alphabetic" } as const;

/** The writer sets the letters of a word from the right where they are written so, but words always from the left. */
function addText(document: Document, { text, bold, sizePt, xMm, yMm }: PrintText): void {
  document.font(bold ? FONTS.bold : FONTS.plain).fontSize(sizePt);
  if (!RIGHT_TO_LEFT.test(text)) {
    document.text(text, pt(xMm), pt(yMm), ON_LINE);
    return;
  }
  const space = document.widthOfString(" ");
  let x = pt(xMm);
  for (const word of asSeen(text.split(" "))) {
    document.text(word, x, pt(yMm), ON_LINE);
    x += document.widthOfString(word) + space;
  }
}

/** Words as they stand from left to right: those next to each other that are read from the right, turned round. */
function asSeen(words: readonly string[]): readonly string[] {
  const seen: string[] = [];
  let turned: string[] = [];
  for (const word of words) {
    if (RIGHT_TO_LEFT.test(word)) turned = [word, ...turned];
    else {
      seen.push(...turned, word);
      turned = [];
    }
  }
  return [...seen, ...turned];
}

/** One path for all modules: side by side they would show hairlines between them. */
function addQr(document: Document, item: PrintQr, modules: Modules): void {
  const sideMm = item.widthMm / modules.length;
  for (const [y, row] of modules.entries()) {
    for (const { from, length } of runsOf(row)) {
      const [xMm, yMm] = [item.xMm + from * sideMm, item.yMm + y * sideMm];
      document.rect(pt(xMm), pt(yMm), pt(length * sideMm), pt(sideMm));
    }
  }
  document.fill("black");
}

function pt(mm: number): number {
  return mm / MM_PER_PT;
}
