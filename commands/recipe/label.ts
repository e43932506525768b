import { euPanel } from "../../shared/label/eu.ts";
import type { LabelExtras, LabelRow, LabelStyle } from "../../shared/label/types.ts";
import { usPanel } from "../../shared/label/us.ts";
import type { NutrientSums } from "../../shared/nutrition/types.ts";
import { writeGrams } from "../../shared/quantity/write-amount.ts";
import { type Button, type Part, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import type { LabelFigures } from "./figure-parts.ts";

/** A whole label to show. */
export interface LabelCard extends LabelFigures {
  readonly title: string;
  readonly portionWord: string;
  /** Mass of a portion, grams; null when not known. */
  readonly portionG: number | null;
  /** What the hundred grams are of: "cooked, by its weight". */
  readonly hundredNote: string;
  readonly style: LabelStyle;
  /** The way back to the card; empty when there is none. */
  readonly buttons: readonly Button[];
}

/**
 * The whole panel, per portion and per 100 g, with the names, order and rounding of the group's law. The
 * US puts the serving first (101.9(d)), the EU the hundred grams (article 32).
 */
export function labelReply(card: LabelCard): Reply {
  const { style, extras } = card;
  const portion = panelPart(portionTitle(card), card.perPortion, style, extras?.perPortion);
  const hundred = panelPart(`Per 100 g, ${card.hundredNote}`, card.per100g, style, extras?.per100g);
  return reply(`${card.title}: ${style === "us" ? "US" : "EU"} nutrition label, estimated`, {
    parts: [...(style === "us" ? [portion, hundred] : [hundred, portion]), text(...LAW[style])],
    cautions: [
      "An estimate from the recipe and a food table, not a declaration. Food that is sold needs a label that the law of the place accepts.",
    ],
    buttons: card.buttons,
  });
}

function portionTitle({ portionWord, portionG }: LabelCard): string {
  return portionG === null
    ? `Per ${portionWord}`
    : `Per ${portionWord}, about ${writeGrams(portionG)}`;
}

function panelPart(
  title: string,
  sums: NutrientSums,
  style: LabelStyle,
  extras?: LabelExtras,
): Part {
  const panel = style === "us" ? usPanel(sums) : euPanel(sums, extras);
  return rows(title, panel.map(panelRow));
}

function panelRow({ name, isPart, figure }: LabelRow): Row {
  const row = { label: isPart ? `  ${name}` : name, figure: figure.text };
  return figure.dailyValue === null ? row : { ...row, note: `${figure.dailyValue} Daily Value` };
}

const LAW: Readonly<Record<LabelStyle, readonly string[]>> = {
  us: [
    "Rounded by 21 CFR 101.9(c). Daily Values are for 2,000 kcal a day; protein has none here, for the rule wants its quality measured.",
    "Our food table does not hold trans fat, cholesterol, added sugars, vitamin D, calcium, iron and potassium, which a US label shows too.",
  ],
  eu: [
    "By Regulation (EU) No 1169/2011: energy by its factors (Annex XIV), carbohydrate without fibre, salt as sodium × 2.5. Rounded by the Commission's guidance of December 2012.",
  ],
};
