import { count } from "../words/plural.ts";
import { readKeeping } from "./read-keeping.ts";
import type { StatedKeeping } from "./types.ts";

/** What is stated about keeping, one statement a line, as the reader understands it; none for nothing. */
export function keepingLines(keeping: StatedKeeping): readonly string[] {
  return [...fridgeLine(keeping), ...freezerLines(keeping)];
}

function fridgeLine({ fridgeDays }: StatedKeeping): readonly string[] {
  if (fridgeDays === null) return [];
  return fridgeDays === 0
    ? ["Eat on the same day"]
    : [`Keeps ${count(fridgeDays, "day")} in the fridge`];
}

function freezerLines(keeping: StatedKeeping): readonly string[] {
  const { freezes, freezerMonths } = keeping;
  const months = freezerMonths === null ? [] : [`Freezes ${count(freezerMonths, "month")}`];
  switch (freezes) {
    case null:
      return months;
    case "well":
      return months.length > 0 ? months : ["Freezes well"];
    case "poorly":
      return [...months, withReason("Freezes badly", keeping)];
    case "no":
      return [withReason("Does not freeze", keeping)];
  }
}

/** Behind the first mark with which the reason is read again; without it when there is none such. */
function withReason(statement: string, keeping: StatedKeeping): string {
  const { reason } = keeping;
  if (reason === "") return statement;
  const forms = [": ", " because ", " – "].map((mark) => `${statement}${mark}${reason}`);
  return [...forms, `${statement} (${reason})`].find((form) => says(form, keeping)) ?? statement;
}

/** Whether a line states how the food freezes and why, and no shorter time than is meant. */
function says(line: string, meant: StatedKeeping): boolean {
  const [only, ...others] = readKeeping(line) ?? [];
  if (only === undefined || others.length > 0 || only.about !== "" || only.outOfRange) return false;
  const { fridgeDays, freezerMonths, freezes, reason } = only.keeping;
  const isNoShorter =
    fits(fridgeDays, meant.fridgeDays) &&
    (meant.freezes === "no" || fits(freezerMonths, meant.freezerMonths));
  return freezes === meant.freezes && reason === meant.reason && isNoShorter;
}

function fits(said: number | null, meant: number | null): boolean {
  return said === null || (meant !== null && said >= meant);
}
