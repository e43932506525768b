import { findFood } from "../../shared/food/find.ts";
import type { Food } from "../../shared/food/types.ts";
import { KEEPING_CHART } from "../../shared/keeping/chart.ts";
import { roundingPer100g } from "../../shared/label-entry/own-food.ts";
import type { Label } from "../../shared/label-entry/types.ts";
import { writeMassG } from "../../shared/nutrition/write.ts";
import { writeGrams } from "../../shared/quantity/write-amount.ts";
import { count } from "../../shared/words/plural.ts";
import type { Context } from "../kit/context.ts";
import { type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { allergenRow, energyOf, figureRows } from "./figure-rows.ts";
import { isNameOf, tableOf } from "./food-options.ts";

interface Added {
  readonly food: Food;
  readonly isNew: boolean;
  readonly label: Label;
  readonly like: Food;
  readonly likeWasGiven: boolean;
  /** The group's food of this name as it was. */
  readonly before: Food | null;
  readonly context: Context;
}

/** From this many grams in 100 g on, what a small serving rounds away is worth a word. */
const WORTH_SAYING_G = 2;

/** What was stored, how it was taken, and what follows from it. */
export function addedReply(added: Added): Reply {
  const { food, context, label } = added;
  const { labelStyle } = context.group;
  return reply(`Saved: ${food.name}, ${energyOf(food, 100, labelStyle)} in 100 g.`, {
    parts: [
      rows(`Stored per 100 g (${food.source.number})`, figureRows(food, 100, labelStyle)),
      rows(null, [
        allergenRow(food),
        likeRow(added),
        ...(food.densityGPerMl === null
          ? []
          : [{ label: "density", figure: `${Number(food.densityGPerMl.toPrecision(3))} g/ml` }]),
        ...(food.one === null
          ? []
          : [{ label: `1 ${food.one.word}`, figure: writeGrams(food.one.grams) }]),
      ]),
      text(
        replacedLine(added),
        `Usable in recipes at once: “- 100 g ${food.name}”.`,
        ...shadowLines(added),
      ),
    ],
    cautions: [
      ...halvedCautions(label),
      ...roundingCautions(label),
      ...allergenCautions(food, label),
    ],
  });
}

function likeRow({ like, likeWasGiven }: Added): Row {
  const { name, fridgeDays } = KEEPING_CHART[like.keepingClass];
  const days =
    fridgeDays === null ? "no limit of its own" : `${count(fridgeDays, "day")} in the fridge`;
  const guess = likeWasGiven ? "" : "; taken from the name, type like: if that is wrong";
  return {
    label: "taken to be like",
    figure: like.name,
    note: `${like.state}, in a batch it keeps as ${name}: ${days}${guess}`,
  };
}

function replacedLine({ food, isNew, before }: Added): string {
  if (isNew) return "New in this group; no other group sees it.";
  // The same request twice finds its own food there.
  const isSame = before === null || isSameValue(before, food);
  return isSame
    ? "That is what was stored already; no other group sees it."
    : "It replaces the earlier label of this name, also in the recipes that use it; no other group sees it.";
}

function isSameValue(a: unknown, b: unknown): boolean {
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return a === b;
  const other = new Map(Object.entries(b));
  const entries = Object.entries(a);
  return (
    entries.length === other.size &&
    entries.every(([key, value]) => isSameValue(value, other.get(key)))
  );
}

/** A table food that the name meant until now. */
function shadowLines({ food, context }: Added): readonly string[] {
  const best = findFood(tableOf(context.foods), food.name, 1)[0]?.food;
  return best === undefined || !isNameOf(best, food.name)
    ? []
    : [
        `In new recipes of this group “${food.name}” now means this pack and no longer the table's ${best.name}.`,
      ];
}

function halvedCautions(label: Label): readonly string[] {
  const { proteinG, fatG, carbohydrateG, saturatesG, fibreG, sugarsG, saltG, sodiumMg } = label;
  const all = [proteinG, fatG, carbohydrateG, saturatesG, fibreG, sugarsG, saltG, sodiumMg];
  return all.some(
    (figure) =>
      figure !== null && figure.value > 0 && figure.low === 0 && figure.value === figure.high / 2,
  )
    ? ["Figures that the pack gives as “less than” are counted as half of that."]
    : [];
}

function roundingCautions(label: Label): readonly string[] {
  const offG = roundingPer100g(label);
  return offG < WORTH_SAYING_G
    ? []
    : [
        `The pack rounds a serving of ${writeGrams(label.basisG)}, so a figure per 100 g may be ${writeMassG(offG)} off. Where the pack has figures per 100 g, type those.`,
      ];
}

function allergenCautions(food: Food, { style }: Label): readonly string[] {
  if (food.allergens === null) {
    return [
      "Allergens not known: nobody can rely on it being free of anything. Read the pack and add it again with allergens:.",
    ];
  }
  return [
    "Allergens are as you typed them; when the pack changes, read it again.",
    ...(style === "us" ? [US_SILENT] : []),
  ];
}

/** What the US list lacks of the EU's: FALCPA 2004 and the FASTER Act 2021 beside Regulation (EU) No 1169/2011, Annex II. */
const US_SILENT =
  "A US pack need not name gluten of barley, rye or oats, nor celery, mustard, lupin, molluscs or sulphites: look through its ingredients for them.";
