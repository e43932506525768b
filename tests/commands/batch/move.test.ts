import { Temporal } from "temporal-polyfill";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { MEMBER, OTHER, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";

let test: Kitchen["test"];
let log: Kitchen["log"];
let portionsIn: Kitchen["portionsIn"];
beforeEach(async () => {
  ({ test, log, portionsIn } = await openKitchen());
  await log({ freeze: "4" });
});
afterEach(() => test.close());

const places = async () => [
  await portionsIn("fridge"),
  await portionsIn("thawing"),
  await portionsIn("freezer"),
];
const move = (raw: Record<string, string>, requestId?: string) =>
  test.ask(MEMBER, "batch move", { recipe: "lamb pot", ...raw }, requestId);

describe("moving by command", () => {
  it.each([
    [{ what: "eat", place: "fridge" }, "Ate 1 portion", [3, 0, 4]],
    [{ what: "freeze", place: "fridge", portions: "2½" }, "Froze 2½ portions", [1.5, 0, 6.5]],
    [{ what: "thaw", place: "freezer", portions: "2" }, "Set to thaw: 2 portions", [4, 2, 2]],
    [{ what: "give", place: "freezer", portions: "½" }, "Gave away ½ portion", [4, 0, 3.5]],
    [
      { what: "throw away", place: "fridge", reason: "spoiled" },
      "Threw away 1 portion of Barley and lamb pot, spoiled",
      [3, 0, 4],
    ],
  ])("%o", async (raw, heading, expected) => {
    expect((await move(raw)).heading).toContain(heading);
    expect(await places()).toEqual(expected);
  });

  it.each([
    [{ what: "thaw" }, [4, 1, 3]],
    [{ what: "freeze", portions: "2" }, [2, 0, 6]],
  ])("%o needs no place: only one of the places can be meant", async (raw, expected) => {
    await move(raw);
    expect(await places()).toEqual(expected);
  });

  it("asks which where several are meant, and changes nothing", async () => {
    const reply = await move({ what: "eat" });
    expect(reply.heading).toMatch(/2 kinds of portions are meant: pick one/u);
    expect(reply.choices[0]?.options.map((one) => one.label)).toEqual([
      "Barley and lamb pot, fridge",
      "Barley and lamb pot, freezer",
    ]);
    const lot = reply.choices[0]?.options[1]?.value ?? "";
    const opened = await test.press(MEMBER, reply.choices[0]?.id ?? "", [lot]);
    expect(opened.heading).toBe("Barley and lamb pot, freezer: 4 portions.");
    expect(await places()).toEqual([4, 0, 4]);
  });

  it("delivered twice is done once", async () => {
    await move({ what: "eat", place: "fridge" }, "same");
    expect((await move({ what: "eat", place: "fridge" }, "same")).heading).toMatch(
      /recorded already/u,
    );
    expect(await places()).toEqual([3, 0, 4]);
  });

  it.each([
    [{ what: "eat", recipe: "cake" }, /no “cake” in stock/u],
    [{ what: "eat", place: "thawing" }, /at that place \(thawing\)/u],
    [{ what: "eat", place: "cellar" }, /place must be one of/u],
    [{ what: "burn" }, /what must be one of/u],
    [{ what: "eat", place: "fridge", reason: "spoiled" }, /belongs to what is thrown away/u],
    [{ what: "throw away", place: "fridge", reason: "cat" }, /reason must be one of/u],
    [{ what: "freeze", place: "fridge", portions: "5" }, /only 4 portions there/u],
    [{ what: "freeze", place: "freezer" }, /in the freezer already/u],
    [{ what: "eat", place: "fridge", portions: "0" }, /not a number of portions/u],
  ])("%o is refused with a sentence and changes nothing", async (raw, sentence) => {
    expect((await move(raw)).heading).toMatch(sentence);
    expect(await places()).toEqual([4, 0, 4]);
  });

  it("reaches nobody else's portions, not by their id either", async () => {
    const reply = await move({ what: "eat" });
    const lot = reply.choices[0]?.options[0]?.value ?? "";
    for (const recipe of [lot, "lamb pot"]) {
      const refused = await test.ask(OTHER, "batch move", { what: "eat", recipe });
      expect(refused.heading).toMatch(/There is no/u);
    }
    expect(await places()).toEqual([4, 0, 4]);
  });
});

describe("counting by command", () => {
  const count = (raw: Record<string, string>) =>
    test.ask(MEMBER, "batch count", { recipe: "lamb pot", ...raw });

  it("puts the count right, down, up to what was cooked, and to none", async () => {
    const less = await count({ place: "freezer", portions: "2½" });
    expect(less.heading).toBe(
      "Counted anew: 2½ portions of Barley and lamb pot in the freezer, not 4.",
    );
    await count({ place: "freezer", portions: "4" });
    expect(await places()).toEqual([4, 0, 4]);
    expect((await count({ place: "fridge", portions: "0" })).heading).toMatch(/^Counted anew: 0/u);
    expect(await places()).toEqual([0, 0, 4]);
  });

  it("takes the code of a label, and brings back a box that turned up with its own dates", async () => {
    const sheet = wordsOf(await test.ask(MEMBER, "batch labels", { batch: "lamb pot" }));
    const code = /Freezer 4 labels code ([0-9A-Z]{5})/u.exec(sheet)?.[1] ?? "none";
    await count({ recipe: code, portions: "0" });
    expect(await places()).toEqual([4, 0, 0]);
    const back = await count({ recipe: code, portions: "1" });
    expect(back.heading).toBe(
      "Counted anew: 1 portion of Barley and lamb pot in the freezer, not 0.",
    );
    expect(wordsOf(back)).toContain("1 portion best before Mon 11 Jan");
    expect(await places()).toEqual([4, 0, 1]);
  });

  it("brings back the last box of a batch, past its date and to be thrown away", async () => {
    const sheet = wordsOf(await test.ask(MEMBER, "batch labels", { batch: "lamb pot" }));
    const code = /Fridge 4 labels code ([0-9A-Z]{5})/u.exec(sheet)?.[1] ?? "none";
    await count({ place: "freezer", portions: "0" });
    await count({ place: "fridge", portions: "0" });
    test.clock.advanceTo(Temporal.Instant.from("2026-10-20T10:00:00Z"));
    const back = await count({ recipe: code, portions: "1" });
    expect(wordsOf(back)).toContain("Throw away 1 portion of Barley and lamb pot: past its date");
    expect(await places()).toEqual([1, 0, 0]);
    const other = await test.ask(OTHER, "batch count", { recipe: code, portions: "1" });
    expect(wordsOf(other)).toMatch(/no “.*” in stock/u);
  });

  it.each([
    [{ place: "fridge", portions: "5" }, /4 portions at most can be there, not 5/u],
    [{ place: "fridge", portions: "4" }, /by my count too/u],
    [{ place: "fridge", portions: "many" }, /not a number of portions/u],
    [{ place: "fridge", portions: "-1" }, /not a number of portions/u],
  ])("%o is refused with a sentence and changes nothing", async (raw, sentence) => {
    const reply = await count(raw);
    expect(wordsOf(reply)).toMatch(sentence);
    expect(await places()).toEqual([4, 0, 4]);
  });
});
