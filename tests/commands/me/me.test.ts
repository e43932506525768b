import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Reply } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import {
  COACH,
  MEMBER,
  OTHER,
  openTestBot,
  type Person,
  SALAD_TEXT,
  STRANGER,
  type TestBot,
} from "../../kit/bot.ts";
import { readAloud } from "../../kit/recipes-and-context.ts";

let bot: TestBot;
beforeAll(async () => {
  bot = await openTestBot("2026-11-25T10:00:00Z");
});
afterAll(() => bot.close());

let people = 0;
/** Somebody new, so that no test leans on another. */
const anybody = (): Person => {
  people += 1;
  return { ...MEMBER, userId: `9${people}`, name: `Person ${people}` };
};
const stored = async (who: Person) =>
  (await bot.stores.members.inGroup(groupId(who.group), who.userId))?.profile;

describe("/me", () => {
  it("shows what is stored, that it is private, and what each is for", async () => {
    const reply = await bot.ask(anybody(), "me");
    expect(reply.heading).toBe("What you have told me about yourself");
    expect(reply.audience).toBe("private");
    const said = readAloud(reply);
    expect(said).toContain("Avoided: nothing stated (so no recipe warns you");
    expect(said).toContain("At your table: nobody stated (for stricter cautions");
    expect(said).toContain("Coach and your targets: may not see them (coach:yes allows it)");
    expect(said).toContain("Only you see this page.");
    expect(reply.cautions.join(" ")).toContain("The label in your hand");
    expect(reply.alerts).toEqual([]);
  });

  it("sets one thing and leaves the others", async () => {
    const who = anybody();
    const first = await bot.ask(who, "me", { allergens: "nuts and milk" });
    expect(first.heading).toBe("Kept: you avoid milk, tree nuts and peanut.");
    expect(first.alerts.join(" ")).toContain("“nuts” counts as tree nuts and peanut");
    const second = await bot.ask(who, "me", { table: "pregnant, toddler" });
    expect(second.heading).toBe("Kept: at your table: pregnant and under five.");
    const third = await bot.ask(who, "me", { coach: "yes" });
    expect(third.heading).toBe("Kept: your coach may see and set your targets.");
    expect(await stored(who)).toEqual({
      allergens: ["milk", "tree nuts", "peanut"],
      vulnerable: ["pregnant", "under five"],
      coachMaySetTargets: true,
    });
    expect(readAloud(await bot.ask(who, "me"))).toContain("Avoided: milk, tree nuts, peanut");
  });

  it("takes all three at once, and clears each by its word", async () => {
    const who = anybody();
    await bot.ask(who, "me", { allergens: "egg", table: "over 65", coach: "yes" });
    const cleared = await bot.ask(who, "me", { allergens: "none", table: "nobody", coach: "no" });
    expect(cleared.heading).toBe(
      "Kept: you avoid nothing; nobody vulnerable eats with you; your coach may not see and set your targets.",
    );
    expect(await stored(who)).toEqual({
      allergens: [],
      vulnerable: [],
      coachMaySetTargets: false,
    });
  });

  it("says loudly what a new list no longer watches for, and how to keep both", async () => {
    const who = anybody();
    await bot.ask(who, "me", { allergens: "milk, egg" });
    const alerts = (await bot.ask(who, "me", { allergens: "egg, soy" })).alerts.join(" ");
    expect(alerts).toContain("No longer watched for: milk.");
    expect(alerts).toContain("/me allergens:milk, egg, soy");
    expect((await bot.ask(who, "me", { allergens: "egg, soy" })).alerts).toEqual([]);
  });

  it("changes nothing when a part of what was typed is not understood", async () => {
    const who = anybody();
    await bot.ask(who, "me", { allergens: "milk" });
    const refused = await bot.ask(who, "me", {
      allergens: "nuts and kiwi",
      table: "a cat",
      coach: "yes",
    });
    const said = readAloud(refused);
    expect(said).toContain("“kiwi” is not an allergen I can watch for. Type from milk, egg");
    expect(said).toContain("I do not know who “cat” says. Type from pregnant");
    expect(said).toContain("Nothing was changed.");
    expect(await stored(who)).toEqual({
      allergens: ["milk"],
      vulnerable: [],
      coachMaySetTargets: false,
    });
  });

  it.each(["-", "🥜", "???", "x".repeat(300), "milk; DROP TABLE", "<@123> @everyone"])(
    "never takes “%s” for none",
    async (allergens) => {
      const who = anybody();
      await bot.ask(who, "me", { allergens: "peanuts" });
      await bot.ask(who, "me", { allergens });
      expect((await stored(who))?.allergens).toEqual(["peanut"]);
    },
  );

  it("leaves what is stored alone when an option is blank", async () => {
    const who = anybody();
    await bot.ask(who, "me", { allergens: "peanuts" });
    const reply = await bot.ask(who, "me", { allergens: "   " });
    expect(reply.heading).toBe("What you have told me about yourself");
    expect((await stored(who))?.allergens).toEqual(["peanut"]);
  });

  it("says that lactose is milk and that one nut stands for all", async () => {
    const alerts = (who: Person, allergens: string): Promise<Reply> =>
      bot.ask(who, "me", { allergens });
    expect((await alerts(anybody(), "lactose")).alerts).toEqual([
      "“lactose” counts as milk, all of it: lactose-free milk is milk too, and I warn of it as well.",
    ]);
    expect((await alerts(anybody(), "walnuts")).alerts).toEqual([
      "I cannot watch for walnuts alone: it counts as tree nuts, all kinds.",
    ]);
    expect((await alerts(anybody(), "penuts")).alerts).toEqual([
      "I took “penuts” for peanut. If that is wrong, type it again.",
    ]);
    expect((await alerts(anybody(), "coeliac")).alerts[0]).toContain("wheat, barley, rye and oats");
  });

  it("keeps it to the member: neither the coach, another member nor another group is shown it", async () => {
    const who = { ...MEMBER, userId: "777", name: "Sole" };
    await bot.ask(who, "me", { allergens: "milk", table: "pregnant", coach: "yes" });
    for (const other of [COACH, OTHER, STRANGER, { ...who, group: "g2" }]) {
      const said = readAloud(await bot.ask(other, "me"));
      expect(said).toContain("Avoided: nothing stated");
      expect(said).toContain("At your table: nobody stated");
    }
  });

  it("is what /recipe find goes by from then on", async () => {
    const who = anybody();
    await bot.publish(COACH, SALAD_TEXT);
    expect(readAloud(await bot.ask(who, "recipe find"))).not.toContain("which you avoid");
    await bot.ask(who, "me", { allergens: "dairy" });
    expect(readAloud(await bot.ask(who, "recipe find"))).toMatch(
      /Cucumber bowl: .* \(contains milk, which you avoid/u,
    );
  });
});
