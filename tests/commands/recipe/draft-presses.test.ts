import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { buttonOf, COACH, MEMBER, type Person, STRANGER } from "../../kit/bot.ts";
import { readAloud } from "../../kit/recipes-and-context.ts";
import {
  attach,
  blankForm,
  botForEach,
  choiceOf,
  edit,
  formIn,
  NETTLES,
  published,
} from "./draft-kit.ts";

/** Another coach of the same group. */
const SECOND: Person = { userId: "150", name: "Olu", group: "g1", isManager: true };

const bot = botForEach();

describe("pressing Publish", () => {
  it("twice, at once or one after the other, makes one revision", async () => {
    await bot().publish(COACH, NETTLES);
    const read = await attach(bot(), NETTLES.replace("100 g rice", "120 g rice"));
    const id = buttonOf(read, "Publish");
    const both = await Promise.all([bot().press(COACH, id), bot().press(COACH, id)]);
    for (const { heading } of both) expect(heading).toMatch(/ublished.*revision 2|not there any/u);
    expect((await bot().press(COACH, id)).heading).toMatch(/already published/u);
    expect(await published(bot())).toMatchObject([{ revisionNumber: 2 }]);
  });

  it("on a text that is published already makes no new revision", async () => {
    await bot().publish(COACH, NETTLES);
    const again = await bot().publish(COACH, `${NETTLES}\n`);
    expect(again.heading).toBe("Already published: revision 1 of Green pot says the same.");
    expect(await published(bot())).toMatchObject([{ revisionNumber: 1 }]);
    expect((await bot().ask(COACH, "recipe drafts")).heading).toBe("You have no drafts.");
  });

  it("on a message older than the draft shows how it stands now instead", async () => {
    const read = await attach(bot(), NETTLES);
    const form = formIn(await edit(bot(), read));
    await bot().submit(COACH, form.id, { text: NETTLES.replace("4 portions", "5 portions") });
    for (const stale of [buttonOf(read, "Publish"), buttonOf(read, "Drop"), choiceOf(read).id]) {
      const shown = await bot().press(COACH, stale, stale === choiceOf(read).id ? ["-"] : []);
      expect(shown.heading).toBe("Read: Green pot, 5 portions");
      expect(readAloud(shown)).toContain("has changed since that message");
    }
    expect(await published(bot())).toEqual([]);
  });
});

describe("a draft of somebody else", () => {
  it("is nobody's to see, change, publish or drop: one sentence for all, and for what is gone", async () => {
    const read = await attach(bot(), NETTLES);
    const form = formIn(await edit(bot(), read));
    const said = new Set<string>();
    for (const who of [SECOND, STRANGER]) {
      for (const button of ["Publish", "Drop"]) {
        said.add((await bot().press(who, buttonOf(read, button))).heading);
      }
      said.add((await bot().press(who, choiceOf(read).id, ["-"])).heading);
      const opened = await edit(bot(), read, who);
      said.add("heading" in opened ? opened.heading : "opened");
      said.add((await bot().submit(who, form.id, { text: "Mine now" })).heading);
      expect((await bot().ask(who, "recipe drafts")).heading).toBe("You have no drafts.");
    }
    for (const forged of [
      "show~nosuch",
      "show",
      "publish~x~y~z",
      "drop~%20~1",
      "food~a.b.c~1~0.0.0",
    ]) {
      said.add((await bot().press(COACH, `recipe publish.${forged}`)).heading);
    }
    expect([...said]).toEqual([expect.stringContaining("or it is not yours")]);
    expect((await bot().press(COACH, buttonOf(read, "Publish"))).heading).toMatch(/^Published/u);
  });

  it("is beyond a member, and beyond a coach who is one no longer", async () => {
    const read = await attach(bot(), NETTLES);
    const demoted = { ...COACH, isManager: false };
    for (const who of [MEMBER, demoted]) {
      expect((await bot().press(who, buttonOf(read, "Publish"))).heading).toMatch(
        /for the group's coach/u,
      );
      expect((await bot().ask(who, "recipe drafts")).heading).toMatch(/for the group's coach/u);
    }
    expect(await published(bot())).toEqual([]);
  });

  it("of another group cannot be taken over by a form of its id", async () => {
    const form = await blankForm(bot());
    await bot().submit(COACH, form.id, { text: NETTLES });
    const taken = await bot().submit(STRANGER, form.id, {
      text: "Other\nMakes 2 portions\n- 5 g salt",
    });
    expect(taken.heading).toContain("or it is not yours");
    bot().clock.advanceTo(Temporal.Instant.from("2026-10-12T10:00:00Z"));
    expect(readAloud(await bot().ask(COACH, "recipe drafts"))).toContain("Green pot");
  });
});
