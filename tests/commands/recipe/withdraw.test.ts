import { beforeEach, describe, expect, it } from "vitest";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, COACH, MEMBER, POT_TEXT, STRANGER } from "../../kit/bot.ts";
import { readAloud } from "../../kit/recipes-and-context.ts";
import { botForEach, published } from "./draft-kit.ts";

const bot = botForEach();
const RECIPE = { recipe: "Barley and lamb pot" };

beforeEach(async () => {
  await bot().publish(COACH, POT_TEXT);
});

describe("/recipe withdraw", () => {
  it("asks first, and says what stays and whom it concerns", async () => {
    await bot().ask(MEMBER, "batch log", { ...RECIPE, cooked: "now" });
    const asked = await bot().ask(COACH, "recipe withdraw", RECIPE);
    expect(asked.heading).toBe("Withdraw Barley and lamb pot?");
    expect(readAloud(asked)).toMatch(/batches cooked of it, their dates and reminders stay/u);
    expect(readAloud(asked)).toContain("1 member has portions of it");
    expect(asked.buttons).toMatchObject([{ weight: "grave" }]);
    expect(await published(bot())).toHaveLength(1);
  });

  it("hides the recipe once, keeps stock, and publishing brings it back", async () => {
    await bot().ask(MEMBER, "batch log", { ...RECIPE, cooked: "now" });
    const go = buttonOf(await bot().ask(COACH, "recipe withdraw", RECIPE), "Withdraw");
    expect((await bot().press(COACH, go)).heading).toBe("Withdrawn: Barley and lamb pot.");
    expect((await bot().press(COACH, go)).heading).toMatch(/withdrawn already/u);
    expect((await bot().ask(MEMBER, "recipe card", RECIPE)).heading).toMatch(/There is no recipe/u);
    expect(readAloud(await bot().ask(MEMBER, "stock"))).toContain("Barley and lamb pot");
    const back = await bot().publish(COACH, POT_TEXT);
    expect(back.heading).toBe("Published as revision 2: Barley and lamb pot, 6 portions.");
  });

  it("is for the coach of that very group", async () => {
    const go = buttonOf(await bot().ask(COACH, "recipe withdraw", RECIPE), "Withdraw");
    expect((await bot().press(MEMBER, go)).heading).toMatch(/for the group's coach/u);
    expect((await bot().press(STRANGER, go)).heading).toMatch(/not in the book/u);
    expect((await bot().press(COACH, "recipe withdraw.go~barley and lamb pot")).heading).toMatch(
      /not in the book/u,
    );
    const group = groupId(COACH.group);
    expect(await bot().stores.recipes.find(group, RECIPE.recipe)).not.toBeNull();
  });
});
