import { type APIMediaGalleryComponent, ComponentType } from "discord.js";
import type { Picture } from "../../shared/picture/types.ts";
import { drawAhead, rasterise } from "../pictures/raster.ts";
import { cut, oneLine } from "./escape.ts";

const PICTURES_MAX = 4;
/** Text for whoever cannot see the picture: components/reference, "Media Gallery Item". */
const DESCRIPTION_MAX = 1_024;

/** A picture as it goes along with a message. */
export interface ShownPicture {
  readonly name: string;
  readonly png: Buffer;
  readonly alt: string;
}

/** Draws a reply's pictures outside the event loop, so that `render` finds them drawn. Never throws. */
export async function drawPictures(pictures: readonly Picture[]): Promise<void> {
  await drawAhead(pictures.slice(0, PICTURES_MAX));
}

/** The pictures that can be shown, and in words those that cannot. */
export function splitPictures(pictures: readonly Picture[]): {
  readonly shown: readonly ShownPicture[];
  readonly inWords: readonly string[];
} {
  const shown: ShownPicture[] = [];
  const inWords: string[] = [];
  for (const picture of pictures.slice(0, PICTURES_MAX)) {
    const png = rasterise(picture);
    if (png === null) inWords.push(picture.alt);
    else shown.push({ name: `${picture.name}.png`, png, alt: picture.alt });
  }
  return { shown, inWords };
}

/** Attached pictures in one gallery, each with its text. */
export function renderGallery(
  pictures: readonly { readonly name: string; readonly alt: string }[],
): APIMediaGalleryComponent {
  return {
    type: ComponentType.MediaGallery,
    items: pictures.map(({ name, alt }) => {
      const media = { url: `attachment://${name}` };
      const description = cut(oneLine(alt), DESCRIPTION_MAX);
      return description === "" ? { media } : { media, description };
    }),
  };
}
