/** A picture as plain data: drawn by the core as SVG, turned into pixels at the edge. */
export interface Picture {
  /** File name without its ending. */
  readonly name: string;
  /** A whole SVG document; its text is set in the fonts "DejaVu Sans" and "DejaVu Sans Mono" only. */
  readonly svg: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Says everything the picture shows, for whoever cannot see it; at most 1,000 characters. */
  readonly alt: string;
}
