import type { LabelStyle } from "../label/types.ts";
import { usFigure } from "../label/us.ts";
import type { NutrientKey, NutrientSum, NutrientSums } from "../nutrition/types.ts";
import { writeFigure, writeMassG } from "../nutrition/write.ts";
import type { TargetFigures } from "../target/types.ts";
import { cleanLine } from "./svg.ts";

/** The four columns, in the order in which they stand. */
export const COLUMNS = [
  { key: "energyKcal", name: "energy" },
  { key: "proteinG", name: "protein" },
  { key: "fatG", name: "fat" },
  { key: "carbohydrateG", name: "carbohydrate" },
] as const satisfies readonly { readonly key: NutrientKey; readonly name: string }[];
export type MacroKey = (typeof COLUMNS)[number]["key"];

/** A portion of the picture. */
export interface MacroRow {
  readonly label: string;
  readonly sums: NutrientSums;
}

const ALT_MAX = 1_000;
/** Names are cut further and further until all figures fit. */
const NAME_LENGTHS = [120, 60, 40, 24, 12];

/** All that is told, drawn or in words. */
export interface MacroTold {
  readonly title: string;
  readonly rows: readonly MacroRow[];
  readonly target: TargetFigures | null;
  readonly style: LabelStyle;
}

/**
 * A figure of a portion: in the US style as its label prints it. In the EU style by the food table, for
 * the EU's own carbohydrate, without fibre, cannot be held against a target that counts it in.
 */
export function macroFigure(sums: NutrientSums, key: MacroKey, style: LabelStyle): string {
  return style === "us" ? usFigure(sums, key).text : writeFigure(sums, key);
}

/** What the picture shows, in words; at most 1,000 characters, figures whole and names as long as fits. */
export function macroAlt(told: MacroTold, notes: readonly string[]): string {
  const { title, rows, target } = told;
  const written = NAME_LENGTHS.map((length) => {
    const short = (name: string) => cutName(cleanLine(name), length);
    return [
      `${short(title)}.`,
      ...(target === null ? [] : [targetLine(target)]),
      ...rows.map(({ label, sums }) => rowLine(short(label), sums, told)),
      ...notes,
    ].join(" ");
  });
  const fitting = written.find((text) => text.length <= ALT_MAX);
  return fitting ?? `${(written.at(-1) ?? "").slice(0, ALT_MAX - 1)}…`;
}

/** "Target for the day: 2100 kcal, protein 150 g." */
function targetLine(target: TargetFigures): string {
  const figures = COLUMNS.flatMap(({ key, name }) => {
    const figure = writeTarget(target, key);
    return figure === null ? [] : [key === "energyKcal" ? figure : `${name} ${figure}`];
  });
  return `Target for the day: ${figures.join(", ")}.`;
}

/** A target's figure with its unit; null where the member has none. */
export function writeTarget(target: TargetFigures, key: MacroKey): string | null {
  const figure = target[key];
  if (figure === undefined) return null;
  return key === "energyKcal" ? `${Math.round(figure)} kcal` : writeMassG(figure);
}

function rowLine(label: string, sums: NutrientSums, { target, style }: MacroTold): string {
  const figures = COLUMNS.map(({ key, name }) => {
    const figure = macroFigure(sums, key, style);
    const share = figure === "not known" ? "" : shareOf(sums[key], target?.[key]);
    return `${figure.endsWith("kcal") ? "" : `${name} `}${figure}${share}`;
  });
  return `${label}: ${figures.join(", ")}.`;
}

/** " (24 %)" of the day's target; nothing where there is none. */
function shareOf({ amount, atLeast }: NutrientSum, target: number | undefined): string {
  if (target === undefined || target <= 0) return "";
  const percent = (100 * amount) / target;
  return ` (${atLeast ? Math.floor(percent) : Math.round(percent)} %)`;
}

/** Never half a character. */
function cutName(name: string, max: number): string {
  const all = [...name];
  return all.length <= max
    ? name
    : `${all
        .slice(0, max - 1)
        .join("")
        .trimEnd()}…`;
}
