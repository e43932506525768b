import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { type Reply, text } from "../../commands/kit/reply.ts";
import type { Print } from "../../shared/picture/print.ts";
import { makePrints, printFile } from "../pictures/print-file.ts";

/** Where a terminal chat puts what is to be printed. */
const PRINTS_FOLDER = join("data", "prints");

/** A reply whose prints are written to files, their paths in its text. */
export async function withSavedPrints(answer: Reply, folder = PRINTS_FOLDER): Promise<Reply> {
  const { prints } = answer;
  if (prints.length === 0) return answer;
  await makePrints(prints);
  const lines: string[] = [];
  for (const print of prints) lines.push(await save(print, folder));
  return { ...answer, prints: [], parts: [...answer.parts, text(...lines)] };
}

async function save(print: Print, folder: string): Promise<string> {
  const file = printFile(print);
  if (file === null) return `${print.title}: the file could not be made. It says: ${print.alt}`;
  const path = join(folder, file.name);
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(path, file.bytes);
    return `${print.title}: ${path}`;
  } catch {
    return `${print.title}: ${path} cannot be written. Check that you may write there.`;
  }
}
