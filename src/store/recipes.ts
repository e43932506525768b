import { setImmediate } from "node:timers/promises";
import type { PublishedRecipe, Recipes } from "../../commands/kit/ports.ts";
import type { Publication, PublicationResult } from "../../commands/kit/publication.ts";
import { type CauseId, type GroupId, type RecipeId, recipeId } from "../../shared/ids.ts";
import { fold, foldWords } from "../../shared/words/fold.ts";
import {
  fromText,
  recipeDocument,
  tagsDocument,
  takenForDocument,
  toColumn,
  toText,
} from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { keptFinds, keptRecipes } from "./kept-recipes.ts";
import { isConflict, patiently } from "./patience.ts";
import { membersWho, NEXT_VERSION, tellRows, withdraw } from "./recipe-news.ts";
import { type RevisionRow, toPublished, toSummary, WITH_WORD } from "./rows.ts";

/** A revision of the recipe named; else of the recipe of its title, or of a new one. */
type Publishing = Publication & { readonly of?: RecipeId };
type Published = PublicationResult;

/** Longer search text than any title is cut: the rest could only cost time. */
const TYPED_MAX = 200;

/** How often a publication is tried when others of the same title get in between. */
const TRIES = 20;

const INCLUDE = { recipe: true, ...WITH_WORD } as const;

/** The newest revision of the recipe with that id, else of the one with that title. */
async function newest(
  db: PrismaClient,
  groupId: GroupId,
  idOrTitle: string,
  read: (row: RevisionRow) => PublishedRecipe,
): Promise<PublishedRecipe | null> {
  const rows = await db.recipe.findMany({
    where: { groupId, withdrawnAt: null, OR: [{ id: idOrTitle }, { titleFold: fold(idOrTitle) }] },
    include: { revisions: { orderBy: { number: "desc" }, take: 1, include: WITH_WORD } },
  });
  const found = rows.find(({ id }) => id === idOrTitle) ?? rows[0];
  const revision = found?.revisions[0];
  return found === undefined || revision === undefined
    ? null
    : read({ ...revision, recipe: found });
}

async function byCause(
  db: PrismaClient,
  groupId: GroupId,
  causeId: CauseId,
): Promise<Published | null> {
  const row = await db.revision.findFirst({
    where: { causeId, recipe: { groupId } },
    include: INCLUDE,
  });
  return row === null ? null : { published: toPublished(row), isNew: row.number === 1 };
}

/** The columns of a recipe that repeat what its newest revision says. */
function summaryColumns(input: Publishing) {
  const { title, tags, portions } = input.recipe;
  return {
    title,
    titleFold: fold(title),
    searchFold: foldWords([title, ...tags].join(" ")),
    portions,
    tags: toText(tagsDocument, tags),
    withdrawnAt: null,
  };
}

async function write(db: PrismaClient, input: Publishing): Promise<Published | "title taken"> {
  const { groupId, of } = input;
  const summary = summaryColumns(input);
  const titled = { groupId_titleFold: { groupId, titleFold: summary.titleFold } };
  const known = await db.recipe.findUnique({
    where: of === undefined ? titled : { id: of, groupId },
    select: { id: true, revisions: { orderBy: { number: "desc" }, take: 1 } },
  });
  if (of !== undefined) {
    if (known === null) throw new Error("there is no such recipe in this group");
    const holder = await db.recipe.findUnique({ where: titled, select: { id: true } });
    if (holder !== null && holder.id !== of) return "title taken";
  }
  const id = known?.id ?? input.newId();
  const number = (known?.revisions[0]?.number ?? 0) + 1;
  const revision = {
    id: input.newId(),
    recipeId: id,
    number,
    causeId: input.causeId,
    publishedById: input.by,
    publishedAt: toColumn(input.now),
    document: toText(recipeDocument, input.recipe),
    sourceText: input.sourceText,
    takenFor: toText(takenForDocument, input.takenFor),
  };
  const writeRecipe =
    known === null
      ? db.recipe.create({ data: { id, groupId, ...summary } })
      : db.recipe.update({ where: { id }, data: summary });
  const told =
    known === null || input.tell == null
      ? []
      : await tellRows(db, { groupId, id: recipeId(id), now: input.now }, input.tell);
  // The revision's number is the condition: another publication in between makes it fail, and all of it.
  const [, row] = await db.$transaction([
    writeRecipe,
    db.revision.create({ data: revision, include: INCLUDE }),
    db.group.update({ where: { id: groupId }, data: NEXT_VERSION }),
    ...told,
  ]);
  return { published: toPublished(row), isNew: number === 1 };
}

async function publish(db: PrismaClient, input: Publishing): Promise<Published | "title taken"> {
  for (let tries = 1; ; tries++) {
    const before = await byCause(db, input.groupId, input.causeId);
    if (before !== null) return before;
    try {
      return await patiently(() => write(db, input));
    } catch (error) {
      if (!isConflict(error) || tries === TRIES) throw error;
    }
  }
}

/** Rows of one query: more would go over the database's limit for one, and hold everybody up meanwhile. */
const PAGE = 250;

type NewestRow = Prisma.RecipeGetPayload<{ include: { revisions: { include: typeof WITH_WORD } } }>;

async function allNewest(db: PrismaClient, groupId: GroupId): Promise<PublishedRecipe[]> {
  const all: PublishedRecipe[] = [];
  for (let after: string | null = null; ; ) {
    const rows: NewestRow[] = await db.recipe.findMany({
      where: {
        groupId,
        withdrawnAt: null,
        ...(after === null ? {} : { titleFold: { gt: after } }),
      },
      orderBy: { titleFold: "asc" },
      take: PAGE,
      include: { revisions: { orderBy: { number: "desc" }, take: 1, include: WITH_WORD } },
    });
    for (const { revisions, ...recipe } of rows) {
      const [revision] = revisions;
      if (revision !== undefined) all.push(toPublished({ ...revision, recipe }));
    }
    const last = rows.at(-1);
    if (last === undefined || rows.length < PAGE) return all;
    after = last.titleFold;
    // The SQLite adapter never waits for anything: without this all pages were one stretch.
    await setImmediate();
  }
}

export function prismaRecipes(db: PrismaClient): Recipes {
  const read = keptRecipes();
  return {
    find: keptFinds((groupId, idOrTitle) => newest(db, groupId, idOrTitle, read)),

    search: async (groupId, typed, limit) => {
      // Folded words hold letters and digits only, so none of them is a wildcard of LIKE.
      const words = foldWords(typed.slice(0, TYPED_MAX)).split(" ");
      const rows = await db.recipe.findMany({
        where: {
          groupId,
          withdrawnAt: null,
          AND: words.map((word) => ({ searchFold: { contains: word } })),
        },
        orderBy: { titleFold: "asc" },
        take: limit,
        select: { id: true, title: true, portions: true, tags: true },
      });
      return rows.map(toSummary);
    },

    all: (groupId) => allNewest(db, groupId),

    revision: async (groupId, id) => {
      const row = await db.revision.findFirst({
        where: { id, recipe: { groupId } },
        include: INCLUDE,
      });
      return row === null ? null : read(row);
    },

    source: async (groupId, id) => {
      const row = await db.revision.findFirst({
        where: { recipe: { id, groupId, withdrawnAt: null } },
        orderBy: { number: "desc" },
      });
      return row === null
        ? null
        : { text: row.sourceText, takenFor: fromText(takenForDocument, row.takenFor) };
    },

    withdraw: (groupId, id, now, tell) => withdraw(db, { groupId, id, now }, tell ?? null),

    whoHas: (groupId, id, since) => membersWho(db, groupId, id, since),

    publish: async (input) => {
      const done = await publish(db, input);
      // Without a recipe named, a title is never taken: its recipe is the one revised.
      if (done === "title taken") throw new Error("a title was taken where none was asked for");
      return done;
    },

    publishOf: (id, input) => publish(db, { ...input, of: id }),
  };
}
