import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Reply } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, COACH, fileOf, MEMBER, OTHER, STRANGER, wordsOf } from "../../kit/bot.ts";
import { type KeepingKit, openKeepingKit, STEW, STEW_NAME } from "./keeping-kit.ts";

let kit: KeepingKit;
beforeEach(async () => {
  kit = await openKeepingKit();
});
afterEach(() => kit.test.close());

const labels = (reply: Reply) => reply.buttons.map(({ label }) => label);

describe("a coach's longer keeping time", () => {
  it("is offered after publishing as a step of its own, and not confirmed by publishing", async () => {
    const published = await kit.test.publish(COACH, STEW);
    const shown = await kit.test.press(COACH, buttonOf(published, "Keeps longer"));
    expect(shown.heading).toBe(`${STEW_NAME}: 3 days in the fridge by the chart; you state 5.`);
    expect(await kit.card(MEMBER)).toContain("keeps 3 days in the fridge");
  });

  it("is shown beside the chart's figure with its source and what is answered for", async () => {
    await kit.test.publish(COACH, STEW);
    const words = wordsOf(await kit.ask());
    expect(words).toMatch(/chart: 3 days, you: 5 days cooked poultry \(USDA FSIS/u);
    expect(words).toMatch(/eat it within 5 days instead of 3\. You answer for the days beyond/u);
    expect(words).toMatch(/Never so for members who say that somebody pregnant, under five/u);
    expect(words).toMatch(/A new revision needs your word anew/u);
    expect(labels(await kit.ask())).toEqual(["Confirm 5 days on my word"]);
  });

  it("counts for a batch logged after it is confirmed, and card, log and stock say whose word it is", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    expect(await kit.card(MEMBER)).toContain(
      "keeps 5 days in the fridge coach's word, 5 days; chart: 3 days;",
    );
    const logged = wordsOf(await kit.log(MEMBER));
    expect(logged).toContain("eat by Fri 16 Oct; coach's word, 5 days; chart: 3 days");
    expect(await kit.stockOf(MEMBER)).toContain(
      "eat by Fri 16 Oct; coach's word, 5 days; chart: 3 days",
    );
    expect(await kit.remindersOf(MEMBER, "last good day")).toEqual(["2026-10-16"]);
    const board = await kit.test.ask(MEMBER, "stock");
    const picture = await kit.test.press(MEMBER, buttonOf(board, "Picture"));
    expect(picture.pictures[0]?.alt).toContain("coach's word, 5 days; chart: 3 days");
  });

  it("does not change a batch that was logged before", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.log(MEMBER);
    await kit.confirm();
    expect(await kit.stockOf(MEMBER)).toContain("eat by Wed 14 Oct");
  });

  it("is kept with who confirmed it and when", async () => {
    const { stores } = kit.test;
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    expect(wordsOf(await kit.ask())).toContain(
      "Confirmed by Mara, Sun 11 Oct, 19:00 (Base 5 days).",
    );
    kit.test.clock.advanceTo(kit.test.clock.now().add({ hours: 2 }));
    await kit.takeBack();
    const group = groupId(COACH.group);
    const found = await stores.recipes.find(group, STEW_NAME);
    const words = await stores.keepingWords.list(group, found?.revisionId ?? ("" as never));
    expect(
      words.map(({ kind, position, by, at }) => [kind, position, by?.name, String(at)]),
    ).toEqual([
      ["given", 1, "Mara", "2026-10-11T18:00:00Z"],
      ["taken back", 2, "Mara", "2026-10-11T20:00:00Z"],
    ]);
    expect(words[0]?.parts).toMatchObject([{ part: "Base", coachDays: 5, chartDays: 3 }]);
  });

  it("needs to be confirmed anew for a new revision", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    await kit.test.publish(COACH, STEW.replace("200 g carrots", "250 g carrots"));
    expect(await kit.card(MEMBER)).toContain("keeps 3 days in the fridge");
    expect(labels(await kit.ask())).toEqual(["Confirm 5 days on my word"]);
  });

  it("cannot be confirmed by a button that spoke of an earlier revision", async () => {
    await kit.test.publish(COACH, STEW);
    const old = buttonOf(await kit.ask(), "Confirm 5 days");
    await kit.test.publish(COACH, STEW.replace("Keeps 5 days", "Keeps 6 days"));
    expect((await kit.test.press(COACH, old)).heading).toMatch(
      /has changed since.*nothing was confirmed/u,
    );
    expect(await kit.card(MEMBER)).toContain("keeps 3 days in the fridge");
  });

  it("is confirmed once, however often the button is pressed", async () => {
    await kit.test.publish(COACH, STEW);
    const press = buttonOf(await kit.ask(), "Confirm 5 days");
    await kit.test.press(COACH, press);
    expect((await kit.test.press(COACH, press)).heading).toMatch(/^Confirmed on your word/u);
    const group = groupId(COACH.group);
    const found = await kit.test.stores.recipes.find(group, STEW_NAME);
    expect(found?.longerWord?.by).toBe("Mara");
    expect(
      await kit.test.stores.keepingWords.list(group, found?.revisionId ?? ("" as never)),
    ).toHaveLength(1);
  });

  it("is the coach's alone to give: members and other groups cannot", async () => {
    await kit.test.publish(COACH, STEW);
    const press = buttonOf(await kit.ask(), "Confirm 5 days");
    expect((await kit.ask(MEMBER)).heading).toMatch(/coach/u);
    expect((await kit.test.press(MEMBER, press)).heading).toMatch(/coach/u);
    expect((await kit.test.press(STRANGER, press)).heading).toMatch(/not in the book|changed/u);
    expect(await kit.card(MEMBER)).toContain("keeps 3 days in the fridge");
  });

  it.each([
    ["fish", "600 g chicken thigh", "600 g salmon"],
    ["what no step cooks", "Simmer for 60 minutes.", "Mix."],
  ])("cannot be confirmed for %s", async (_, from, to) => {
    await kit.test.publish(COACH, STEW.replace(from, to));
    const shown = await kit.ask();
    expect(shown.buttons).toEqual([]);
    expect(wordsOf(shown)).toMatch(/keep no longer on anybody's word/u);
  });

  it("can be confirmed for the dish without an optional part that keeps no longer", async () => {
    const withDressing = STEW.replace(
      "\nSteps",
      "\nDressing (optional):\n- 2 eggs\n- 100 g olive oil\n\nSteps",
    );
    await kit.test.publish(COACH, withDressing);
    const shown = await kit.ask();
    expect(shown.heading).toBe(
      `${STEW_NAME} without the Dressing: 3 days in the fridge by the chart; you state 5.`,
    );
    expect((await kit.confirm()).heading).toContain("without the Dressing keeps 5 days");
    expect(wordsOf(await kit.log(MEMBER))).toContain("eat by Tue 13 Oct");
    const without = await kit.test.ask(MEMBER, "batch log", {
      recipe: STEW_NAME,
      portions: "4",
      cooked: "18:30",
      without: "Dressing",
    });
    expect(wordsOf(without)).toContain("eat by Fri 16 Oct; coach's word, 5 days; chart: 3 days");
  });

  it("is never more than seven days, the day of cooking counted", async () => {
    await kit.test.publish(COACH, STEW.replace("Keeps 5 days", "Keeps 9 days"));
    await kit.test.press(COACH, buttonOf(await kit.ask(), "Confirm 6 days"));
    expect(wordsOf(await kit.log(MEMBER))).toContain("eat by Sat 17 Oct");
  });

  it("has nothing to confirm where no more is stated than the chart gives", async () => {
    await kit.test.publish(COACH, STEW.replace("Keeps 5 days", "Keeps 3 days"));
    expect(wordsOf(await kit.ask())).toMatch(/nothing to confirm/u);
    expect((await kit.ask()).buttons).toEqual([]);
  });
});

describe("a coach's word taken back", () => {
  it("is for batches to come, and the coach is told who has batches with it", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.log(OTHER);
    await kit.confirm();
    await kit.log(MEMBER);
    const done = await kit.takeBack();
    expect(done.heading).toBe(`Taken back: ${STEW_NAME} keeps 3 days in the fridge, by the chart.`);
    expect(wordsOf(done)).toContain("Ines: 4 portions (fridge)");
    // Theo's batch was logged before the word was given.
    expect(wordsOf(done)).not.toContain("Theo");
    expect(await kit.stockOf(MEMBER)).toContain("eat by Fri 16 Oct");
    expect(wordsOf(await kit.log(OTHER))).toContain("eat by Wed 14 Oct");
    expect(labels(done)).toEqual(["Confirm 5 days on my word"]);
  });

  it("says so when nobody has any", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    expect(wordsOf(await kit.takeBack())).toContain("Nobody has any now.");
  });
});

describe("a recipe without a coach's word", () => {
  it("says both times and uses the shorter", async () => {
    await kit.test.ask(COACH, "recipe publish", fileOf(STEW));
    await kit.test.publish(COACH, STEW);
    const words = await kit.card(MEMBER);
    expect(words).toMatch(/states 5 days in the fridge; the published chart gives 3.*use 3/u);
  });
});
