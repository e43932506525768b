import { alertsFor } from "../../shared/allergen/alerts.ts";
import { allergensIn } from "../../shared/allergen/find.ts";
import type { Food } from "../../shared/food/types.ts";
import { KEEPING_CHART } from "../../shared/keeping/chart.ts";
import { nutrientsOf } from "../../shared/nutrition/sum.ts";
import { writeShort } from "../../shared/nutrition/write.ts";
import type { Unit } from "../../shared/quantity/types.ts";
import { volumeUnitMl } from "../../shared/quantity/unit.ts";
import { writeGrams } from "../../shared/quantity/write-amount.ts";
import { count } from "../../shared/words/plural.ts";
import type { Context } from "../kit/context.ts";
import { writePress } from "../kit/press.ts";
import { type Choice, type Part, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import type { WeighedAmount } from "./amount.ts";
import { allergenRow, energyOf, figureRows } from "./figure-rows.ts";
import { isOwn } from "./food-options.ts";

const SR28 = "USDA SR28";
const SR28_NAME =
  "US Department of Agriculture, National Nutrient Database for Standard Reference, Release 28 (2015)";
/** More published measures than this are more than a phone shows at a glance. */
const MEASURES_SHOWN = 8;
/** An amount as typed goes into the id of the list when it is no longer. */
const AMOUNT_IN_ID = 40;

/** One food: figures of the amount asked for or of 100 g, measures, allergens, keeping, source. */
export function foodReply(
  context: Pick<Context, "foods" | "group" | "member">,
  food: Food,
  amount: WeighedAmount | null,
  others: readonly Food[],
): Reply {
  const { labelStyle } = context.group;
  const grams = amount?.grams ?? 100;
  const written = amount?.written ?? "100 g";
  const hundred: readonly Part[] =
    amount === null
      ? []
      : [rows(null, [{ label: "per 100 g", figure: writeShort(nutrientsOf(food, 100)) }])];
  return reply(`${food.name}: ${energyOf(food, grams, labelStyle)} in ${written}`, {
    alerts: alertsOf(context, food),
    parts: [
      rows(
        `In ${written}${food.refusePct > 0 ? ", edible part" : ""}`,
        figureRows(food, grams, labelStyle),
      ),
      ...hundred,
      ...measureParts(food),
      rows(null, [allergenRow(food), keepingRow(food), sourceRow(food)]),
    ],
    cautions: [
      isOwn(food)
        ? "As typed from one pack: when the pack changes, read it again."
        : "Averages of many samples: where you have the pack, its label comes first.",
    ],
    choices: others.length === 0 ? [] : [choiceOf(others, amount?.typed ?? "", "Others that fit")],
  });
}

/** Several foods fit: which of them. */
export function whichReply(typed: string, foods: readonly Food[], amount: string): Reply {
  return reply(`“${typed}” fits ${count(foods.length, "food")}: pick one.`, {
    parts: [
      rows(
        null,
        foods.map((food) => ({
          label: food.name,
          figure: `${energyOf(food, 100, "us")} in 100 g`,
        })),
      ),
      text("Or type /food look with one of these names."),
    ],
    choices: [choiceOf(foods, amount, "Which food")],
  });
}

function choiceOf(foods: readonly Food[], amount: string, placeholder: string): Choice {
  const fits = amount !== "" && amount.length <= AMOUNT_IN_ID && !amount.includes("~");
  return {
    id: writePress("food look", "show", ...(fits ? [amount] : [])),
    placeholder,
    options: foods.map((food) => ({
      value: food.id,
      label: food.name,
      hint: `${energyOf(food, 100, "us")} in 100 g${isOwn(food) ? ", this group's own" : ""}`,
    })),
  };
}

/** What may hurt this very member. */
function alertsOf(
  { foods, member }: Pick<Context, "foods" | "member">,
  food: Food,
): readonly string[] {
  const choice = { foodText: food.name, foodId: food.id };
  const found = allergensIn([{ choice, others: [] }], foods);
  return alertsFor(member.profile.allergens, found).flatMap((alert) => {
    switch (alert.kind) {
      case "contains":
        return [`Contains ${alert.allergens.join(" and ")}, which you avoid.`];
      case "may hide":
        return [`May hide ${alert.allergens.join(" and ")}, which you avoid: read the pack.`];
      case "not known":
        return [
          `What it is made of is not known: it may hold ${member.profile.allergens.join(" or ")}, which you avoid. Read the pack.`,
        ];
      default:
        return [];
    }
  });
}

function measureParts(food: Food): readonly Part[] {
  const all = [...spoonRows(food), ...oneRows(food), ...publishedRows(food), ...refuseRows(food)];
  return all.length === 0 ? [] : [rows("Measures", all)];
}

const SPOONS: readonly (readonly [unit: Unit, name: string])[] = [
  ["tsp", "1 teaspoon"],
  ["tbsp", "1 tablespoon"],
  ["cup", "1 cup"],
];

/** US customary spoons and cups, which the published weights are of. */
function spoonRows({ densityGPerMl }: Food): readonly Row[] {
  if (densityGPerMl === null) return [];
  return SPOONS.flatMap(([unit, name]) => {
    const ml = volumeUnitMl(unit, "us");
    return ml === null
      ? []
      : [
          {
            label: `${name} (${Number(ml.toPrecision(3))} ml)`,
            figure: writeGrams(ml * densityGPerMl),
          },
        ];
  });
}

function oneRows({ one }: Food): readonly Row[] {
  return one === null ? [] : [{ label: `1 ${one.word}`, figure: writeGrams(one.grams) }];
}

function publishedRows({ measures, densityGPerMl }: Food): readonly Row[] {
  return (
    measures
      // Spoons and cups stand above already, by the density that was made of them.
      .filter(({ name }) => densityGPerMl === null || !/^(?:tsp|tbsp|cup)$/u.test(name))
      .slice(0, MEASURES_SHOWN)
      .map(({ name, grams }) => ({ label: `1 ${name}`, figure: writeGrams(grams) }))
  );
}

/** What is left of a kilogram once peel, bone and the like are off. */
function refuseRows({ refusePct }: Food): readonly Row[] {
  return refusePct === 0
    ? []
    : [
        {
          label: "of 1 kg as bought",
          figure: `about ${writeGrams(10 * (100 - refusePct))} are edible`,
          note: `${refusePct} % is peel, shell, bone, stone or the like`,
        },
      ];
}

function keepingRow({ keepingClass }: Food): Row {
  const { name, fridgeDays } = KEEPING_CHART[keepingClass];
  const days = fridgeDays === null ? "no limit of its own" : count(fridgeDays, "day");
  return {
    label: "keeping class",
    figure: keepingClass.replaceAll("-", " "),
    note: `in a batch it counts as ${name}: ${days} in the fridge`,
  };
}

function sourceRow(food: Food): Row {
  const { table, number } = food.source;
  if (isOwn(food)) {
    return { label: "source", figure: "typed from a pack in this group", note: number };
  }
  return {
    label: "source",
    figure: `${table} ${number}`,
    note: table === SR28 ? SR28_NAME : table,
  };
}
