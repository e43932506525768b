import Fuse from "fuse.js";
import { foodBook, withOwnFoods } from "../../shared/food/book.ts";
import { findFood } from "../../shared/food/find.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { CHECK_NAMES, TEST_HALF, TUNING_HALF } from "../standards/food-names.ts";
import { type FindNumbers, scoreNames } from "../standards/food-names-score.ts";
import { median, report, timed } from "./measure.ts";

/** One slip each, spread over the table. */
const MISSPELT = [
  "brocolli",
  "zuchini",
  "chiken breast",
  "parmasan",
  "worchestershire sauce",
  "mozarella",
  "tumeric",
  "spagetti",
];

/**
 * Finding a food by a misspelt name, building the index, and a group's few foods before the table's:
 * times against fuse.js on the same names in the same run, and how often each finds the right food.
 */
export async function benchFind(write: (line: string) => void): Promise<boolean> {
  const book = loadFoodBook();
  const names = book.foods.flatMap((food) =>
    [food.name, ...food.otherNames].map((name) => ({ name, number: food.source.number })),
  );
  const fuse = new Fuse(names, { keys: ["name"], includeScore: true, ignoreLocation: true });
  const fuseNumbers = (text: string) => [
    ...new Set(fuse.search(text, { limit: 20 }).map(({ item }) => item.number)),
  ];
  write(`${book.foods.length} foods with ${names.length} names`);

  let turn = 0;
  const next = () => MISSPELT[turn++ % MISSPELT.length] ?? "";
  const ours = await timed(() => findFood(book, next()), 400, 20);
  const theirs = await timed(() => fuse.search(next(), { limit: 5 }), 80, 8);
  const index = await timed(() => findFood(foodBook(book.foods), "rice"), 15, 2);
  const fuseIndex = await timed(() => new Fuse(names, { keys: ["name"] }), 15, 2);
  const own = book.foods.slice(0, 20);
  const layered = await timed(() => findFood(withOwnFoods(book, own), next()), 200, 10);
  const ok = [
    report(
      {
        what: "a food found by a misspelt name",
        ms: median(ours),
        budgetMs: 2,
        reference: { name: "fuse.js", ms: median(theirs), times: 1 },
      },
      write,
    ),
    report(
      {
        what: "the same with 20 foods of a group's own, read anew",
        ms: median(layered),
        budgetMs: 4,
        reference: { name: "fuse.js", ms: median(theirs), times: 1 },
      },
      write,
    ),
    report(
      {
        what: "the table's index, built once",
        ms: median(index),
        budgetMs: 150,
        reference: { name: "fuse.js index", ms: median(fuseIndex) },
      },
      write,
    ),
  ];
  write(`fuse.js takes ${(median(theirs) / median(ours)).toFixed(0)} times as long a search`);
  const oursNumbers: FindNumbers = (text) =>
    findFood(book, text, 5).map(({ food }) => food.source.number);
  for (const [half, labelled] of [
    ["tuning half", TUNING_HALF],
    ["test half", TEST_HALF],
    ["check list", CHECK_NAMES],
  ] as const) {
    for (const [who, find] of [
      ["findFood", oursNumbers],
      ["fuse.js", fuseNumbers],
    ] as const) {
      const score = scoreNames(book, labelled, find);
      write(
        `${half}, ${who}: ${score.firstPct.toFixed(1)} % first, ${score.inFivePct.toFixed(1)} % in five of ${score.names}; another food first ${score.wrongFirst.length}; a food for ${score.wrongAbsent.length} of ${score.absentNames} absent names`,
      );
    }
  }
  return !ok.includes(false);
}
