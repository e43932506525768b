import { Temporal } from "temporal-polyfill";
import type { Context } from "../../commands/kit/context.ts";
import type {
  Group,
  Member,
  PublishedRecipe,
  RecipeSummary,
  Recipes,
  Stores,
} from "../../commands/kit/ports.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import { bookIndex } from "../../shared/book/book-index.ts";
import {
  causeId,
  type GroupId,
  groupId,
  memberId,
  recipeId,
  revisionId,
} from "../../shared/ids.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { fold } from "../../shared/words/fold.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { choice, counter } from "./stock.ts";

export const FOODS = loadFoodBook();
export const GROUP: Group = {
  id: groupId("group1"),
  name: "Test kitchen",
  coachRoleId: null,
  reminderChannelId: null,
  zone: "Europe/Lisbon",
  labelStyle: "eu",
  foodsVersion: 0,
  recipesVersion: 0,
};

export const MEMBER: Member = {
  id: memberId("member1"),
  groupId: GROUP.id,
  userId: "user1",
  name: "Ana",
  zoneIsOwn: true,
  choice: choice(),
  deliverTo: "direct message",
  directClosedAt: null,
  profile: { allergens: [], vulnerable: [], coachMaySetTargets: false },
  wantsRecipeNews: true,
  planVersion: 0,
};

/** A recipe from its text, as the coach would publish it. */
export function recipeOf(text: string, foods = FOODS): Recipe {
  const read = readRecipe(text, foods);
  if (!read.ok) throw new Error(`not a recipe: ${JSON.stringify(read.problem)}`);
  return read.value.recipe;
}

export interface MemoryRecipes extends Recipes {
  /** What was published, oldest first. */
  readonly published: readonly (PublishedRecipe & { readonly causeId: string })[];
}

const unused = (): never => {
  throw new Error("this store is not part of the test");
};

/** Recipes in memory, by the rules of the port. */
export function memoryRecipes(
  first: readonly Recipe[] = [],
  group: GroupId = GROUP.id,
): MemoryRecipes {
  const all: (PublishedRecipe & { causeId: string })[] = [];
  const newest = (inGroup: GroupId) => {
    const byId = new Map(
      all.filter((one) => one.groupId === inGroup).map((one) => [one.id, one] as const),
    );
    return [...byId.values()].sort((a, b) => a.recipe.title.localeCompare(b.recipe.title));
  };
  const add = (inGroup: GroupId, recipe: Recipe, cause: string) => {
    const same = newest(inGroup).find((one) => fold(one.recipe.title) === fold(recipe.title));
    const published = {
      id: same?.id ?? recipeId(`recipe${all.length + 1}`),
      groupId: inGroup,
      revisionId: revisionId(`revision${all.length + 1}`),
      revisionNumber: (same?.revisionNumber ?? 0) + 1,
      recipe,
      longerWord: null,
      causeId: cause,
    };
    all.push(published);
    return { published, isNew: same === undefined };
  };
  for (const [index, recipe] of first.entries()) add(group, recipe, `first${index}`);
  return {
    published: all,
    all: async (inGroup) => newest(inGroup),
    revision: async (inGroup, id) =>
      all.find((one) => one.groupId === inGroup && one.revisionId === id) ?? null,
    source: unused,
    withdraw: unused,
    whoHas: unused,
    find: async (inGroup, idOrTitle) =>
      newest(inGroup).find(
        (one) => one.id === idOrTitle || fold(one.recipe.title) === fold(idOrTitle),
      ) ?? null,
    search: async (inGroup, typed, limit): Promise<readonly RecipeSummary[]> =>
      newest(inGroup)
        .filter(({ recipe }) => {
          const held = fold([recipe.title, ...recipe.tags].join(" "));
          return fold(typed)
            .split(" ")
            .every((word) => held.includes(word));
        })
        .slice(0, limit)
        .map(({ id, recipe }) => ({
          id,
          title: recipe.title,
          portions: recipe.portions,
          tags: recipe.tags,
        })),
    publishOf: unused,
    publish: async (input) => {
      const before = all.find((one) => one.causeId === input.causeId);
      return before !== undefined
        ? { published: before, isNew: before.revisionNumber === 1 }
        : add(input.groupId, input.recipe, input.causeId);
    },
  };
}

/** Stores of which only the named ones may be used. */
export function storesWith(some: Partial<Stores>): Stores {
  const closed = new Proxy({}, { get: () => unused }) as never;
  return {
    groups: closed,
    members: closed,
    recipes: closed,
    stocks: closed,
    keepingWords: closed,
    drafts: closed,
    foods: closed,
    targets: { list: async () => [], add: unused },
    meals: closed,
    reminders: closed,
    undelivered: closed,
    ...some,
  };
}

/** A context with valid defaults: a test names only what it is about. */
export function testContext(rest: Partial<Context> = {}): Context {
  const context = {
    now: Temporal.Instant.from("2026-10-11T10:00:00Z"),
    actor: { userId: MEMBER.userId, name: MEMBER.name, roleIds: [], isManager: false },
    group: GROUP,
    member: MEMBER,
    isCoach: false,
    causeId: causeId("cause1"),
    stores: storesWith({ recipes: memoryRecipes() }),
    foods: FOODS,
    newId: counter("new"),
    ...rest,
  };
  const { stores, group, foods } = context;
  const whole = async () => bookIndex(await stores.recipes.all(group.id), foods);
  return { recipeBook: { whole, soon: whole }, ...context };
}

/** A reply as one text, in the order in which it is read. */
export function readAloud(reply: Reply): string {
  const parts = reply.parts.flatMap((part) =>
    part.kind === "text"
      ? part.lines
      : [
          ...(part.title === null ? [] : [`[${part.title}]`]),
          ...part.rows.map(
            (row) => `${row.label}: ${row.figure}${row.note === undefined ? "" : ` (${row.note})`}`,
          ),
        ],
  );
  return [
    reply.heading,
    ...reply.alerts.map((alert) => `!! ${alert}`),
    ...parts,
    ...reply.cautions.map((caution) => `! ${caution}`),
  ].join("\n");
}
