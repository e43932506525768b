import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { createCanvas, DOMMatrix, ImageData, loadImage, Path2D } from "@napi-rs/canvas";
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import type { Print } from "../../shared/picture/print.ts";
import { makePrints, printFile } from "../../src/pictures/print-file.ts";

// Mozilla's reader of PDF looks for these as in a browser.
Object.assign(globalThis, { DOMMatrix, ImageData, Path2D });
const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");

const wasmFile = createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm");
// Else it asks the network for it.
prepareZXingModule({ overrides: { wasmBinary: readFileSync(wasmFile).buffer as ArrayBuffer } });

/** The bytes of a print as they are sent. */
export async function bytesOf(print: Print | undefined): Promise<Uint8Array> {
  if (print === undefined) throw new Error("no print");
  await makePrints([print]);
  const file = printFile(print);
  if (file === null) throw new Error(`${print.name} could not be made`);
  return new Uint8Array(file.bytes);
}

/** A piece of text on a page, in points from its lower left corner. */
export interface PlacedText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly sizePt: number;
}

export interface PrintedPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly texts: readonly PlacedText[];
  /** The page as pixels, `scale` to a point. */
  readonly image: (scale: number) => Promise<ImageData>;
}

/** A PDF as another program reads it. */
export async function readPdf(bytes: Uint8Array): Promise<readonly PrintedPage[]> {
  const pdf = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: PrintedPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) =>
      "str" in item && item.str.trim() !== ""
        ? [
            {
              text: item.str,
              x: Number(item.transform[4]),
              y: Number(item.transform[5]),
              width: item.width,
              sizePt: Number(item.transform[3]),
            },
          ]
        : [],
    );
    const image = async (scale: number): Promise<ImageData> => {
      const viewport = page.getViewport({ scale });
      const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
      const ink = canvas.getContext("2d");
      await page.render({ canvasContext: ink as never, viewport }).promise;
      return ink.getImageData(0, 0, canvas.width, canvas.height);
    };
    pages.push({ widthPt: width, heightPt: height, texts, image });
  }
  return pages;
}

/** A PNG as pixels. */
export async function readPng(bytes: Uint8Array): Promise<ImageData> {
  const picture = await loadImage(Buffer.from(bytes));
  const canvas = createCanvas(picture.width, picture.height);
  const ink = canvas.getContext("2d");
  ink.drawImage(picture, 0, 0);
  return ink.getImageData(0, 0, canvas.width, canvas.height);
}

/** What a scanner reads in a picture, from the top left, with the centre of each code in pixels. */
export async function scan(
  image: ImageData,
): Promise<readonly { readonly text: string; readonly x: number; readonly y: number }[]> {
  const found = await readBarcodes(image as never, {
    formats: ["QRCode"],
    maxNumberOfSymbols: 255,
  });
  return found.map(({ text, position: { topLeft, bottomRight } }) => ({
    text,
    x: (topLeft.x + bottomRight.x) / 2,
    y: (topLeft.y + bottomRight.y) / 2,
  }));
}
