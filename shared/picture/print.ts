/**
 * Something to be printed or looked at, as plain data: one layout for paper (PDF) and for a phone (PNG).
 * Lengths in millimetres from the top left corner of a page, type sizes in points of 1/72 inch.
 */
export interface Print {
  /** File name without its ending. */
  readonly name: string;
  readonly format: "pdf" | "png";
  readonly title: string;
  readonly pages: readonly PrintPage[];
  /** Says everything it shows, for whoever cannot see it; at most 1,000 characters. */
  readonly alt: string;
}

export interface PrintPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly items: readonly PrintItem[];
}

export type PrintItem = PrintText | PrintFrame | PrintRule | PrintQr;

/** One line of text in black, set in "DejaVu Sans". */
export interface PrintText {
  readonly kind: "text";
  readonly xMm: number;
  /** Its baseline. */
  readonly yMm: number;
  readonly text: string;
  readonly sizePt: number;
  readonly bold: boolean;
}

export interface PrintBox {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A frame drawn inside its box: a place to tick. */
export interface PrintFrame extends PrintBox {
  readonly kind: "frame";
  readonly lineMm: number;
}

/** A line to write on, as a filled box. */
export interface PrintRule extends PrintBox {
  readonly kind: "rule";
}

/** A QR code (ISO/IEC 18004) without its quiet zone. */
export interface PrintQr extends PrintBox {
  readonly kind: "qr";
  readonly text: string;
}

/** The modules of a code, row by row; true is dark. */
export type Modules = readonly (readonly boolean[])[];

/** Millimetres of a point of 1/72 inch. */
export const MM_PER_PT = 25.4 / 72;
