import { describe, expect, it } from "vitest";
import { loadFoodBook } from "../../src/foods/load.ts";
import {
  LATER_LINES,
  type Miss,
  scoreLines,
  TEST_LINES,
  TUNING_LINES,
} from "./ingredient-lines/score.ts";

const foods = loadFoodBook();

const KINDS: readonly Miss[] = [
  "not read as a line",
  "amount",
  "unit",
  "stated weight",
  "food",
  "flags",
];

// Lines labelled by hand before the reader was measured on any of them (`ingredient-lines/lines.ts`), read
// bare below a heading. Before tuning: amount and unit 93.2 / 90.2 %, food 86.5 / 84.8 %, flags 93.2 / 93.9 %
// (tuning / test half). The floors are what is reached; the aim is 97 % and 92 % on the test half.
describe("ingredient lines as people write them", () => {
  it.each([
    ["tuning", TUNING_LINES, { amountPct: 100, foodPct: 98, flagsPct: 100 }],
    ["test", TEST_LINES, { amountPct: 100, foodPct: 93, flagsPct: 100 }],
    ["fresh", LATER_LINES.fresh, { amountPct: 100, foodPct: 100, flagsPct: 100 }],
    ["misleading", LATER_LINES.misleading, { amountPct: 100, foodPct: 99, flagsPct: 100 }],
    ["unseen", LATER_LINES.unseen, { amountPct: 98.8, foodPct: 97, flagsPct: 100 }],
  ] as const)("the %s lines are read at least as well as it was", (half, lines, floor) => {
    const score = scoreLines(lines, foods);
    const table = KINDS.map((kind) => {
      const count = score.misses.filter(({ missed }) => missed.includes(kind)).length;
      return `${kind}: ${count}`;
    });
    process.stdout.write(
      `${half} lines, ${score.lines} of them, missed by kind: ${table.join(", ")}\n`,
    );
    expect(score.lines).toBeGreaterThanOrEqual(90);
    expect(score.amountPct).toBeGreaterThanOrEqual(floor.amountPct);
    expect(score.foodPct).toBeGreaterThanOrEqual(floor.foodPct);
    expect(score.flagsPct).toBeGreaterThanOrEqual(floor.flagsPct);
  });
});
