import type { z } from "zod";
import { namedIn } from "../../shared/allergen/named.ts";
import { withOwnFoods } from "../../shared/food/book.ts";
import { findFood } from "../../shared/food/find.ts";
import { nameKeys, nameWords } from "../../shared/food/name-words.ts";
import type { Allergen, Food } from "../../shared/food/types.ts";
import { foodId } from "../../shared/ids.ts";
import { checkLabel } from "../../shared/label-entry/check.ts";
import { ownFood } from "../../shared/label-entry/own-food.ts";
import { readLabel } from "../../shared/label-entry/read-label.ts";
import type { Label } from "../../shared/label-entry/types.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import { fold } from "../../shared/words/fold.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { ADD_OPTIONS, addInput } from "./add-options.ts";
import { addedReply } from "./add-reply.ts";
import { isOwn, tableOf } from "./food-options.ts";
import { sayLabelFinding } from "./say-label-finding.ts";
import { sayLabelProblem } from "./say-label-problem.ts";

export const foodAdd = command({
  path: ["food", "add"],
  description:
    "Add a food to this group from the label of its pack, or put a newer label in its place",
  who: "coach",
  options: ADD_OPTIONS,
  input: addInput,
  handle: async (context, input) => {
    const { stores, group, member, causeId, now, newId, foods } = context;
    const name = nameOrRefuse(context, input.name);
    const style = input.style ?? group.labelStyle;
    const label = labelOrRefuse(input, style);
    const like = likeOrRefuse(context, input.like, name);
    refuseSlips(name, label, like, input.sure ?? false);
    const food = ownFood(foodId(`own-${newId()}`), name, label, like);
    refuseUnusable(context, food);
    const before = ownNamed(foods.foods, name);
    if (before === null) refuseTooMany(foods.foods);
    const done = await stores.foods.put({ groupId: group.id, by: member.id, causeId, now, food });
    return addedReply({
      ...done,
      label,
      like,
      before,
      context,
      likeWasGiven: input.like !== undefined,
    });
  },
});

/** A group's book is held in memory, and nobody cooks with more brands. */
const OWN_MAX = 500;

function refuseTooMany(foods: readonly Food[]): void {
  if (foods.filter(isOwn).length >= OWN_MAX) {
    throw new Refusal(
      `This group has ${OWN_MAX} foods of its own already: put a label in the place of one that is no longer used, by its very name.`,
    );
  }
}

type Input = z.output<typeof addInput>;

function ownNamed(foods: readonly Food[], name: string): Food | null {
  return foods.find((food) => isOwn(food) && fold(food.name) === fold(name)) ?? null;
}

/** A name that a recipe line can carry, and that no other own food of the group would be taken for. */
function nameOrRefuse({ foods }: Context, typed: string): string {
  const name = typed.replace(/\s+/gu, " ");
  if (!/^[\p{L}\p{N}][\p{L}\p{N} %'’&.+/-]*$/u.test(name) || nameWords(name).words.length === 0) {
    throw new Refusal(
      `“${excerpt(name)}” cannot stand in a recipe line: type a name of plain words, without commas or brackets, such as Rye crispbread.`,
    );
  }
  const { single } = nameKeys(name);
  const twin = foods.foods.find(
    (food) =>
      isOwn(food) && fold(food.name) !== fold(name) && nameKeys(food.name).single === single,
  );
  if (twin !== undefined) {
    throw new Refusal(
      `“${excerpt(name)}” would be taken for this group's “${twin.name}”: type that very name to put the new label in its place, or a name that differs by a word.`,
    );
  }
  return name;
}

function labelOrRefuse(input: Input, style: "us" | "eu"): Label {
  const read = readLabel({ ...input, mayHide: input["may-hide"] }, style);
  if (read.ok) return read.value;
  throw new Refusal(["Nothing was saved.", ...read.problem.map(sayLabelProblem)]);
}

/** The table food that it is like: as typed, else by its own name. */
function likeOrRefuse({ foods }: Context, typed: string | undefined, name: string): Food {
  const like = findFood(tableOf(foods), typed ?? name, 1)[0]?.food;
  if (like !== undefined) return like;
  throw new Refusal(
    typed === undefined
      ? `Nothing in the food table is like “${excerpt(name)}”: type like: and a food of its kind, such as like:cheddar cheese; how it keeps, and whether it counts as raw, are taken from that.`
      : `like:${excerpt(typed)} is not in the food table: pick one that is offered while you type.`,
  );
}

/** Refuses what cannot be; what is only odd passes when the coach says that the pack says so. */
function refuseSlips(name: string, label: Label, like: Food, sure: boolean): void {
  const found = checkLabel(label, like.per100g);
  const said = [...found.map(sayLabelFinding), ...allergenDoubts(name, label, like)];
  if (found.some(({ severity }) => severity === "impossible")) {
    throw new Refusal(["Nothing was saved: no pack can say this.", ...said]);
  }
  if (said.length > 0 && !sure) {
    throw new Refusal([
      "Nothing was saved yet: this looks like a slip.",
      ...said,
      "If the pack really says so, send the same again with sure:yes.",
    ]);
  }
}

/** Allergens that the name or the like food gives away, where the typed list is silent. */
function allergenDoubts(name: string, label: Label, like: Food): readonly string[] {
  if (label.allergens === null) return [];
  const typed = new Set([...label.allergens, ...(label.mayHide ?? [])]);
  const silent = (all: readonly Allergen[]) => all.filter((one) => !typed.has(one));
  const named = silent(namedIn(name));
  const likely = silent(like.allergens ?? []).filter((one) => !named.includes(one));
  return [
    ...(named.length === 0
      ? []
      : [
          `The name says ${named.join(", ")} and the allergens typed do not: read the pack's list again.`,
        ]),
    ...(likely.length === 0
      ? []
      : [
          `Its like, ${like.name}, is made of ${likely.join(", ")} and the allergens typed do not say so: read the pack's list again, or type like: another food.`,
        ]),
  ];
}

/** Reads a recipe line with the name, so that no food is stored which a recipe would not find. */
function refuseUnusable({ foods }: Context, food: Food): void {
  const others = foods.foods.filter((one) => isOwn(one) && fold(one.name) !== fold(food.name));
  const book = withOwnFoods(tableOf(foods), [...others, food]);
  const read = readRecipe(`Test\nMakes 1 portion\n\n- 100 g ${food.name}\n`, book);
  const lines = read.ok ? read.value.recipe.components.flatMap((part) => part.lines) : [];
  const [line] = lines;
  if (lines.length === 1 && line?.main.foodId === food.id && line.swaps.length === 0) return;
  throw new Refusal(
    `A recipe line with “${excerpt(food.name)}” would not be read as this food: type another name, without words such as “or”, “to taste” or an amount.`,
  );
}
