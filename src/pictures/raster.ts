import { createRequire } from "node:module";
import { Resvg, type ResvgRenderOptions, renderAsync } from "@resvg/resvg-js";
import type { Picture } from "../../shared/picture/types.ts";
import { drawnOnce } from "./kept.ts";

/** Wider is of no use on a phone. */
const WIDTH_MAX = 1_440;
/** A picture taller than this is a fault of ours, and would take memory for nothing. */
const HEIGHT_MAX = 4_000;

const require = createRequire(import.meta.url);
const FONT_FILES = [
  require.resolve("dejavu-fonts-ttf/ttf/DejaVuSans.ttf"),
  require.resolve("dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf"),
  require.resolve("dejavu-fonts-ttf/ttf/DejaVuSansMono.ttf"),
];

/** What became of a picture: its PNG, or null where it could not be drawn. A reply may be sent twice. */
const drawn = new WeakMap<Picture, Buffer | null>();
/** The same drawing in many replies. */
const once = drawnOnce();

/**
 * Draws pictures ahead, outside the event loop: a card takes some 20 ms. Never throws; what cannot be
 * drawn is noted, and `rasterise` answers null for it.
 */
export async function drawAhead(pictures: readonly Picture[]): Promise<void> {
  await Promise.all(
    pictures
      .filter((picture) => !drawn.has(picture))
      .map(async (picture) => {
        try {
          drawn.set(picture, isFit(picture) ? await once(picture.svg, () => png(picture)) : null);
        } catch {
          drawn.set(picture, null);
        }
      }),
  );
}

async function png(picture: Picture): Promise<Buffer> {
  return (await renderAsync(picture.svg, optionsFor(picture))).asPng();
}

/** A picture as PNG, drawn now unless it was drawn ahead; null where it cannot be drawn. Never throws. */
export function rasterise(picture: Picture): Buffer | null {
  const ahead = drawn.get(picture);
  if (ahead !== undefined) return ahead;
  const now = draw(picture);
  drawn.set(picture, now);
  return now;
}

function draw(picture: Picture): Buffer | null {
  if (!isFit(picture)) return null;
  try {
    return new Resvg(picture.svg, optionsFor(picture)).render().asPng();
  } catch {
    return null;
  }
}

function isFit({ widthPx, heightPx }: Picture): boolean {
  return widthPx > 0 && heightPx > 0 && heightPx <= HEIGHT_MAX;
}

function optionsFor({ widthPx }: Picture): ResvgRenderOptions {
  return {
    fitTo: { mode: "width", value: Math.min(Math.round(widthPx), WIDTH_MAX) },
    font: { loadSystemFonts: false, fontFiles: FONT_FILES, defaultFontFamily: "DejaVu Sans" },
    logLevel: "off",
  };
}
