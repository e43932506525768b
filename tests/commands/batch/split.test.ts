import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { buttonOf, MEMBER, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";

let test: Kitchen["test"];
let portionsIn: Kitchen["portionsIn"];
beforeEach(async () => {
  ({ test, portionsIn } = await openKitchen());
});
afterEach(() => test.close());

const log = (raw: Record<string, string>) =>
  test.ask(MEMBER, "batch log", { recipe: "Barley and lamb pot", cooked: "18:30", ...raw });
const places = async () => [await portionsIn("fridge"), await portionsIn("freezer")];

describe("logging with where all of it went", () => {
  it("says how many it made and where they are, in one go", async () => {
    const reply = await log({ split: "1½ eaten, 2½ fridge, 2 x 2 freezer" });
    expect(reply.heading).toBe("Logged: 8 portions of Barley and lamb pot.");
    expect(wordsOf(reply)).toContain("Eaten 1½ portions");
    expect(wordsOf(reply)).toContain("In the freezer 4 portions");
    expect(await places()).toEqual([2.5, 4]);
    await test.press(MEMBER, buttonOf(reply, "Undo"));
    expect(await places()).toEqual([0, 0]);
  });
  it.each([
    [{ split: "2 fridge, rest freezer" }, [2, 4]],
    [{ split: "2 fridge, rest freezer", portions: "9" }, [2, 7]],
    [{ split: "all freezer" }, [0, 6]],
  ])("%o counts the rest from what it made", async (raw, expected) => {
    await log(raw);
    expect(await places()).toEqual(expected);
  });
  it.each([
    [{ split: "3 fridge, 4 freezer", portions: "8" }, /7 portions together, and the batch made 8/u],
    [{ split: "9 fridge, rest freezer" }, /9 portions together, and the batch made 6/u],
    [{ split: "2½ fridge" }, /whole portions/u],
    [{ split: "500 fridge" }, /1 to 200/u],
    [{ split: "some fridge" }, /does not say where/u],
    [{ split: "3 fridge", freeze: "2" }, /not both/u],
  ])("%o is refused with a sentence and changes nothing", async (raw, sentence) => {
    expect((await log(raw)).heading).toMatch(sentence);
    expect(await places()).toEqual([0, 0]);
  });
});
