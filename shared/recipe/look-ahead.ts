import { sectionHeading } from "./read-section.ts";
import type { SourceLine } from "./source-lines.ts";

/** Whether any line heads the steps. */
export function hasMethodHeading(lines: readonly SourceLine[]): boolean {
  return lines.some(({ text }) => {
    const heading = text.slice(0, 100).replace(/^[#*_ ]+|[*_: ]+$/gu, "");
    return sectionHeading(heading)?.section === "steps";
  });
}

/** For each line the next one below that is not blank. */
export function nextLines(lines: readonly SourceLine[]): readonly (string | null)[] {
  let next: string | null = null;
  const fromBelow = [...lines].reverse().map(({ text }) => {
    const below = next;
    if (text !== "") next = text;
    return below;
  });
  return fromBelow.reverse();
}
