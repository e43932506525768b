import { euEnergy, euGrams, euSums } from "../../shared/label/eu.ts";
import { shortFigures } from "../../shared/label/short.ts";
import type { LabelExtras, LabelStyle } from "../../shared/label/types.ts";
import { usFigure } from "../../shared/label/us.ts";
import type { NutrientSums } from "../../shared/nutrition/types.ts";
import { type Part, type Row, rows } from "../kit/reply.ts";

/** A portion and a hundred grams of the same food. */
export interface LabelFigures {
  readonly perPortion: NutrientSums;
  readonly per100g: NutrientSums;
  /** From `labelExtras`; without them the EU's figures allow for what they would say. */
  readonly extras?: { readonly perPortion: LabelExtras; readonly per100g: LabelExtras };
}

export interface FigureOptions {
  readonly style: LabelStyle;
  readonly portionWord: string;
  /** What a portion is: "about 350 g cooked"; empty when not known. */
  readonly portionNote: string;
  /** What the hundred grams are of: "cooked, by its weight". */
  readonly hundredNote: string;
}

/**
 * The figures of a card by the rules of the group's style. Protein stands second, for it is what members
 * count; the law's own order is on the whole label (`labelReply`).
 */
export function figureParts(figures: LabelFigures, options: FigureOptions): readonly Part[] {
  const { perPortion, per100g, extras } = figures;
  const { style } = options;
  const portion = style === "us" ? usRows(perPortion) : euRows(perPortion, extras?.perPortion);
  const [energy, ...rest] = portion;
  const noted = energy === undefined ? [] : [withNote(energy, options.portionNote)];
  const hundred = { label: "per 100 g", figure: shortFigures(per100g, style, extras?.per100g) };
  return [
    rows(`Per ${options.portionWord}, estimated`, [...noted, ...rest]),
    rows(null, [withNote(hundred, options.hundredNote)]),
  ];
}

function usRows(sums: NutrientSums): readonly Row[] {
  const text = (key: Parameters<typeof usFigure>[1]) => usFigure(sums, key).text;
  const { text: sodium, dailyValue } = usFigure(sums, "sodiumMg");
  return [
    { label: "energy", figure: text("energyKcal") },
    { label: "protein", figure: text("proteinG") },
    { label: "fat", figure: text("fatG"), note: `saturated ${text("saturatedFatG")}` },
    {
      label: "carbohydrate",
      figure: text("carbohydrateG"),
      note: `with fiber ${text("fibreG")}, sugars ${text("sugarsG")}`,
    },
    withNote(
      { label: "sodium", figure: sodium },
      dailyValue === null ? "" : `${dailyValue} of the daily value`,
    ),
  ];
}

function euRows(sums: NutrientSums, extras?: LabelExtras): readonly Row[] {
  const eu = euSums(sums, extras);
  return [
    { label: "energy", figure: euEnergy(eu) },
    { label: "protein", figure: euGrams(eu, "protein") },
    { label: "fat", figure: euGrams(eu, "fat"), note: `saturates ${euGrams(eu, "saturates")}` },
    {
      label: "carbohydrate",
      figure: euGrams(eu, "carbohydrate"),
      note: `sugars ${euGrams(eu, "sugars")}; fibre not in it`,
    },
    { label: "fibre", figure: euGrams(eu, "fibre") },
    { label: "salt", figure: euGrams(eu, "salt") },
  ];
}

function withNote(row: Row, note: string): Row {
  return note === "" ? row : { ...row, note };
}
