import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { groupId } from "../../../shared/ids.ts";
import {
  buttonOf,
  COACH,
  MEMBER,
  OTHER,
  type Person,
  POT_TEXT,
  STRANGER,
  wordsOf,
} from "../../kit/bot.ts";
import { openReminded, type Reminded } from "../../kit/reminded.ts";
import { instant } from "../../kit/stock.ts";
import { formIn } from "./draft-kit.ts";

/** Sunday 11 October, Lisbon (UTC+1): the member has eight portions of the pot, cooked at 18:30. */
let kitchen: Reminded;
beforeEach(async () => {
  kitchen = await openReminded(true);
  // What the cooking itself made due is out of the way.
  await kitchen.at("2026-10-11T19:30:00Z");
});
afterEach(() => kitchen.test.close());

const TITLE = "Barley and lamb pot";
const publish = (from: string, to: string) =>
  kitchen.test.publish(COACH, POT_TEXT.replace(from, to));

/** The news among what has arrived until then. */
async function newsAt(time: string): Promise<readonly string[]> {
  return (await kitchen.told(time)).filter((said) => /new revision|withdrew/u.test(said));
}

async function rowsOf(who: Person) {
  const { members, reminders } = kitchen.test.stores;
  const member = await members.open(groupId(who.group), who.userId, who.name);
  const coming = await reminders.coming(member.id, 100);
  return coming.filter(({ kind }) => kind === "recipe changed" || kind === "recipe withdrawn");
}

describe("a new revision", () => {
  it("is told once, in words, to who has it, and to nobody else", async () => {
    const done = await publish("200 g carrots", "150 g carrots");
    expect(wordsOf(done)).toContain("1 member has portions of it");
    expect(wordsOf(done)).toContain("One is told what changed.");
    expect(await newsAt("2026-10-11T19:40:00Z")).toEqual([
      `${TITLE} has a new revision. Changed: carrots 200 → 150 g. What you cooked before keeps the dates and figures of its own.`,
    ]);
    expect(kitchen.platform.stored.at(-1)?.to.userId).toBe(MEMBER.userId);
    expect(await newsAt("2026-10-11T19:45:00Z")).toEqual([]);
    await kitchen.test.ask(STRANGER, "stock");
    for (const who of [COACH, OTHER, STRANGER]) expect(await rowsOf(who)).toEqual([]);
  });

  it("is not told again by a press that came twice, nor where nothing changes for a cook", async () => {
    const read = await kitchen.test.ask(COACH, "recipe publish", {
      file: { name: "a.txt", bytes: new TextEncoder().encode(POT_TEXT.replace("200 g", "150 g")) },
    });
    const press = buttonOf(read, "Publish");
    await Promise.all([kitchen.test.press(COACH, press), kitchen.test.press(COACH, press)]);
    expect(await newsAt("2026-10-11T19:40:00Z")).toHaveLength(1);
    const tagged = await publish("200 g carrots, sliced", "150 g carrots, sliced\n\nTags: soup");
    expect(tagged.heading).toMatch(/^Published as revision 3/u);
    expect(wordsOf(tagged)).not.toContain("is told");
    expect(await rowsOf(MEMBER)).toEqual([]);
  });

  it("says first what may hurt: allergens, shorter keeping, freezing", async () => {
    await kitchen.test.publish(
      COACH,
      POT_TEXT.replace("200 g carrots, sliced", "200 g plain yogurt")
        .replace("Keeps 3 days", "Keeps 2 days")
        .replace("Freezes 3 months", "Does not freeze: it splits"),
    );
    const [said = ""] = await newsAt("2026-10-11T19:40:00Z");
    expect(said).toContain(
      "Mind: it now contains milk (plain yogurt); it keeps 3 → 2 days in the fridge: go by the shorter for what you have, too; it is not to be frozen any more: it splits. Changed: ",
    );
  });

  it("waits for the end of quiet hours and for the end of being away", async () => {
    kitchen.test.clock.advanceTo(instant("2026-10-11T22:30:00Z"));
    await publish("200 g carrots", "150 g carrots");
    expect(await newsAt("2026-10-11T23:30:00Z")).toEqual([]);
    expect(await newsAt("2026-10-12T06:00:00Z")).toHaveLength(1);
    await kitchen.test.ask(MEMBER, "reminders", { away: "until Wed" });
    await publish("200 g carrots", "140 g carrots");
    expect(await newsAt("2026-10-13T12:00:00Z")).toEqual([]);
    const back = await newsAt("2026-10-15T12:00:00Z");
    expect(back.join("\n")).toContain("carrots 150 → 140 g");
  });

  it("is never told to who asked not to be, not even when it waits already", async () => {
    await publish("200 g carrots", "150 g carrots");
    const set = await kitchen.test.ask(MEMBER, "reminders", { recipes: "no" });
    expect(wordsOf(set)).toContain("Recipes changes are not told");
    expect(await newsAt("2026-10-11T19:40:00Z")).toEqual([]);
    const done = await publish("200 g carrots", "140 g carrots");
    expect(wordsOf(done)).not.toContain("is told");
    expect(await rowsOf(MEMBER)).toEqual([]);
    const again = await kitchen.test.ask(MEMBER, "reminders", { recipes: "yes" });
    expect(wordsOf(again)).toContain("Recipes told when one you have changes");
  });

  it("survives the reminders being derived anew, and does not offer to come again", async () => {
    kitchen.test.clock.advanceTo(instant("2026-10-11T22:30:00Z"));
    await publish("200 g carrots", "150 g carrots");
    await kitchen.test.ask(MEMBER, "meals", { days: "Mon-Fri", time: "13:00" });
    expect(await rowsOf(MEMBER)).toHaveLength(1);
    const [message] = (await kitchen.at("2026-10-12T06:00:00Z")).filter((one) =>
      /new revision/u.test(wordsOf(one)),
    );
    expect(message?.buttons.map(({ label }) => label)).toEqual(["See the card"]);
  });

  it("leads to the card, from a direct message too", async () => {
    await publish("200 g carrots", "150 g carrots");
    const [message] = await kitchen.at("2026-10-11T19:40:00Z");
    const press = message === undefined ? "" : buttonOf(message, "See the card");
    const direct: Person = { ...MEMBER, group: "" };
    const card = await kitchen.test.press(direct, press);
    expect(card.heading).toBe(`${TITLE}: 6 portions`);
    expect(wordsOf(card)).toContain("Changed since you cooked it: carrots 200 → 150 g");
    expect((await kitchen.test.press({ ...OTHER, group: "" }, press)).heading).toMatch(
      /not yours/u,
    );
    // And from there into the stock: the form knows whose it is.
    const log = buttonOf(card, "Log it");
    const form = formIn(await kitchen.test.form(direct, { pressId: log }));
    const blank = Object.fromEntries(form.fields.map(({ name, value }) => [name, value]));
    const theirs = await kitchen.test.submit({ ...OTHER, group: "" }, form.id, blank);
    expect(theirs.heading).toMatch(/not yours/u);
    const logged = await kitchen.test.submit(direct, form.id, blank);
    expect(logged.heading).toBe(`Logged: 6 portions of ${TITLE}.`);
  });

  it("is told at the next command where direct messages are closed and there is no channel", async () => {
    await publish("200 g carrots", "150 g carrots");
    kitchen.platform.script.push({
      kind: "impossible",
      reason: "direct messages are closed (50007)",
      directClosed: true,
    });
    await kitchen.at("2026-10-11T19:40:00Z");
    const next = await kitchen.test.ask(MEMBER, "stock");
    expect(wordsOf(next)).toContain("carrots 200 → 150 g");
  });
});

describe("a withdrawal", () => {
  it("is told once to who has the recipe", async () => {
    const asked = await kitchen.test.ask(COACH, "recipe withdraw", { recipe: TITLE });
    expect(wordsOf(asked)).toContain("One will be told.");
    await kitchen.test.press(COACH, buttonOf(asked, "Withdraw"));
    await kitchen.test.press(COACH, buttonOf(asked, "Withdraw"));
    const [said, ...more] = await newsAt("2026-10-11T19:40:00Z");
    expect(more).toEqual([]);
    expect(said).toMatch(new RegExp(`^Your coach withdrew ${TITLE}: .*keeps its dates`, "u"));
  });
});
