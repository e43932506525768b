import Fuse from "fuse.js";
import { bookIndex } from "../../shared/book/book-index.ts";
import { completeRecipes } from "../../shared/book/complete.ts";
import { searchBook } from "../../shared/book/search.ts";
import type { BookQuery } from "../../shared/book/types.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { manyRecipes } from "./many-recipes.ts";
import { median, percentile, report, timed } from "./measure.ts";

const SIZE = 5_000;
/** Beginnings, several words, slips, foods and nonsense: as they are typed, letter by letter. */
const TYPED = [
  ..."smoky chicken po".split("").map((_, at, letters) => letters.slice(0, at + 1).join("")),
  "stew lemo",
  "chikcen",
  "weekdya",
  "traybkae",
  "courgette bake",
  "zorble",
  "no such thing at all",
  "a b c d e f g h",
  "x".repeat(100),
];

const QUERY: BookQuery = {
  style: "eu",
  words: "bake",
  uses: ["chicken thigh", "rice", "yoghurt"],
  energyKcal: { from: 300, to: 900 },
  proteinG: { from: 20, to: null },
  freezes: true,
  freeOf: ["peanut"],
};

function heapMb(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 1e6;
}

/**
 * Completion over 5,000 recipes at the 99th percentile against a linear scan by fuse.js of the same
 * titles, tags and foods in the same run; a search by everything at once; what the index costs.
 */
export async function benchBook(write: (line: string) => void): Promise<boolean> {
  const foods = loadFoodBook();
  const recipes = manyRecipes(foods, SIZE);
  const heapBefore = heapMb();
  const began = performance.now();
  const index = bookIndex(recipes, foods);
  const buildMs = performance.now() - began;
  const grownMb = heapMb() - heapBefore;
  const exactly = globalThis.gc === undefined ? ", with garbage (run node with --expose-gc)" : "";
  write(
    `${SIZE} recipes indexed in ${(buildMs / 1000).toFixed(1)} s (${(buildMs / SIZE).toFixed(2)} ms each), ${grownMb.toFixed(0)} MB${exactly}; ${index.words.length} words, ${index.ingredients.length} ingredients`,
  );
  const documents = index.entries.map(({ title, tags, foods: own }) => ({
    title,
    tags: [...tags],
    foods: own.map(({ name }) => name),
  }));
  const fuse = new Fuse(documents, { keys: ["title", "tags", "foods"], ignoreLocation: true });
  let turn = 0;
  const next = () => TYPED[turn++ % TYPED.length] ?? "";
  const ours = await timed(() => completeRecipes(index, next(), 25), TYPED.length * 40, 200);
  const theirs = await timed(() => fuse.search(next(), { limit: 25 }), TYPED.length, 2);
  const search = await timed(() => searchBook(index, QUERY), 100, 10);
  write(
    `completion: median ${median(ours).toFixed(2)} ms, 99th percentile ${percentile(ours, 0.99).toFixed(2)} ms, most ${percentile(ours, 1).toFixed(2)} ms; fuse.js ${median(theirs).toFixed(0)}, ${percentile(theirs, 0.99).toFixed(0)}, ${percentile(theirs, 1).toFixed(0)} ms`,
  );
  write(`fuse.js takes ${(median(theirs) / median(ours)).toFixed(0)} times as long a completion`);
  return [
    report(
      {
        what: `completion over ${SIZE} recipes, 99th percentile`,
        ms: percentile(ours, 0.99),
        budgetMs: 5,
        reference: { name: "fuse.js, 99th percentile", ms: percentile(theirs, 0.99) },
      },
      write,
    ),
    report(
      {
        what: "a search by words, foods in hand, figures and allergens",
        ms: median(search),
        budgetMs: 50,
        reference: { name: "fuse.js by words alone", ms: median(theirs) },
      },
      write,
    ),
  ].every((ok) => ok);
}
