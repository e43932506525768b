import { expect, it } from "vitest";
import { planFlock } from "./plan.ts";
import { playFlocks } from "./play.ts";

// The short part of `npm run faults`: a few of its runs, with real processes that are really killed.

it("four seeded runs through faults and crashes end with each reminder told once or accounted for", async () => {
  const violations: string[] = [];
  const plan = planFlock(4, 4);
  const short = { ...plan, steps: plan.steps.slice(0, 3) };
  const played = await playFlocks([short], 1, (line) => violations.push(line));
  expect(violations).toEqual([]);
  expect(played.ends.map(({ seed }) => seed)).toEqual([40, 41, 42, 43]);
  const sent = played.ends.flatMap(({ verdicts }) => verdicts.map((one) => one.sent));
  expect(sent.reduce((sum, n) => sum + n, 0)).toBeGreaterThan(0);
  const kinds = [...played.counts.keys()];
  expect(kinds.some((name) => name.startsWith("kill -9"))).toBe(true);
  expect(kinds.length).toBeGreaterThan(5);
}, 60_000);

it("a seed always stands for the same run", () => {
  expect(planFlock(7)).toEqual(planFlock(7));
  expect(planFlock(7).runs).not.toEqual(planFlock(8).runs);
});
