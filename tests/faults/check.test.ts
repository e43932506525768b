import { describe, expect, it } from "vitest";
import { type EndOf, type EndRow, judge } from "./check.ts";

const row = (key: string, rest: Partial<EndRow> = {}): EndRow => ({
  key,
  state: "sent",
  reason: null,
  nonce: "n",
  dueMs: 0,
  settledMs: 2_000,
  ...rest,
});
const TOO_LATE = "came too late to help; the member was told";
const LATE = (what: string) => `I was away and missed a reminder (thaw: ${what}). Type /stock.`;

const end = (rest: Partial<EndOf>): EndOf => ({
  name: "m",
  titles: ["PotA"],
  rows: [row("PotA")],
  messages: [{ text: "Throw away PotA", nonce: "n1" }],
  shownToCoach: 0,
  ...rest,
});

describe("the judge of a run", () => {
  it("finds nothing where each was told once or is accounted for", () => {
    const titles = ["PotA", "PotB", "PotC", "PotD"];
    const rows = [
      row("PotA"),
      row("PotB", { state: "expired", reason: TOO_LATE }),
      row("PotC", { state: "expired", reason: TOO_LATE }),
      row("PotD", { state: "failed", reason: "closed" }),
    ];
    const messages = [{ text: `Throw away PotA\n${LATE("PotB, Fri and 1 more")}`, nonce: "n1" }];
    const verdict = judge(end({ titles, rows, messages, shownToCoach: 1 }));
    expect(verdict).toMatchObject({ problems: [], sent: 1, toldLate: 2, failed: 1 });
    expect(verdict.lagsMs).toEqual([2_000]);
  });

  it.each<[string, Partial<EndOf>, RegExp, object]>([
    [
      "a message twice",
      { messages: ["n1", "n2"].map((nonce) => ({ text: "Eat PotA", nonce })) },
      /more than once/u,
      { doubled: 1 },
    ],
    [
      "two messages under one nonce",
      { titles: [], rows: [], messages: ["x", "y"].map((text) => ({ text, nonce: "n" })) },
      /one nonce/u,
      {},
    ],
    ["a message that never came", { messages: [] }, /never told/u, { lost: 1 }],
    [
      "a row that waits for ever",
      { rows: [row("PotA", { state: "claimed" })] },
      /waiting/u,
      { lost: 1 },
    ],
    ["a row that is gone", { rows: [] }, /gone/u, { lost: 1 }],
    [
      "what was told and is recorded as failed",
      { rows: [row("PotA", { state: "failed" })], shownToCoach: 1 },
      /as if not/u,
      {},
    ],
    [
      "a failure that the coach does not see",
      { rows: [row("PotA", { state: "failed" })], messages: [] },
      /the coach is shown 0/u,
      { lost: 1 },
    ],
    [
      "what came too late and was not told",
      { rows: [row("PotA", { state: "expired", reason: TOO_LATE })], messages: [] },
      /told of 0/u,
      { lost: 1 },
    ],
    [
      "what came too late and was told twice",
      {
        rows: [row("PotA", { state: "expired", reason: TOO_LATE })],
        messages: ["n1", "n2"].map((nonce) => ({ text: LATE("PotA, Fri"), nonce })),
      },
      /told of 2/u,
      { doubled: 1 },
    ],
  ])("finds %s", (_what, given, problem, counted) => {
    const verdict = judge(end(given));
    expect(verdict.problems.join()).toMatch(problem);
    expect(verdict).toMatchObject(counted);
  });
});
