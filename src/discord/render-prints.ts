import type { Print } from "../../shared/picture/print.ts";
import { printFile } from "../pictures/print-file.ts";

const PRINTS_MAX = 5;

/** A print as it goes along with a message. */
interface ShownPrint {
  readonly name: string;
  readonly data: Buffer;
  readonly contentType: string;
  /** Its text where the message shows it; null where it is a file to open. */
  readonly alt: string | null;
}

/** The prints whose files were made, and in words those that could not be. */
export function splitPrints(prints: readonly Print[]): {
  readonly shown: readonly ShownPrint[];
  readonly inWords: readonly string[];
} {
  const shown: ShownPrint[] = [];
  const inWords: string[] = [];
  for (const print of prints.slice(0, PRINTS_MAX)) {
    const file = printFile(print);
    if (file === null) {
      inWords.push(`The file could not be made. It says: ${print.alt}`);
      continue;
    }
    const { name, bytes: data, contentType } = file;
    shown.push({ name, data, contentType, alt: print.format === "png" ? print.alt : null });
  }
  return { shown, inWords };
}
