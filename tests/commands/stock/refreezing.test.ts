import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { MEMBER, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";

let test: Kitchen["test"];
let log: Kitchen["log"];
beforeEach(async () => {
  ({ test, log } = await openKitchen());
});
afterEach(() => test.close());

const days = (many: number): void =>
  test.clock.advanceTo(test.clock.now().add({ hours: 24 * many }));
const stock = () => test.ask(MEMBER, "stock");
const lotIn = async (place: string): Promise<string> => {
  const options = (await stock()).choices[0]?.options ?? [];
  const found = options.find(({ label }) => label.endsWith(`, ${place}`));
  if (found === undefined) throw new Error(`nothing in the ${place}`);
  return found.value;
};

// USDA FSIS, Freezing and Food Safety: food thawed in the fridge may be frozen again without cooking, with
// a loss of quality; cooked leftovers within 3 to 4 days. FDA Food Code 3-501.17: freezing stops the clock
// and does not set it back.
describe("freezing again what was thawed in the fridge", () => {
  it("is done, with a word on its quality", async () => {
    await log({ freeze: "8" });
    await test.press(MEMBER, `stock.move~${await lotIn("freezer")}~thaw~3~8`);
    const done = await test.press(MEMBER, `stock.move~${await lotIn("thawing")}~froze~3~3`);
    expect(done.heading).toBe(
      "Froze 3 portions of Barley and lamb pot. Frozen a second time is safe when it stayed in the fridge, but softer: eat it first.",
    );
  });

  it("does not give back the days in the fridge that are used", async () => {
    // Cooked and frozen on Sunday (one day used), thawing from Monday to Tuesday (two more): of four days
    // one is left, too little to thaw it in the fridge again.
    await log({ freeze: "8" });
    days(1);
    await test.press(MEMBER, `stock.move~${await lotIn("freezer")}~thaw~8~8`);
    days(1);
    await test.press(MEMBER, `stock.move~${await lotIn("thawing")}~froze~8~8`);
    expect(wordsOf(await stock())).toMatch(/best before .*, heat straight from frozen/u);
    const again = await test.press(MEMBER, `stock.move~${await lotIn("freezer")}~thaw~8~8`);
    expect(again.heading).not.toMatch(/^Set to thaw/u);
  });

  it("is refused once it is past its date", async () => {
    await log({ freeze: "8" });
    await test.press(MEMBER, `stock.move~${await lotIn("freezer")}~thaw~8~8`);
    days(5);
    const done = await test.press(MEMBER, `stock.move~${await lotIn("thawing")}~froze~8~8`);
    expect(done.heading).toMatch(/had to be eaten by Tue 13 Oct.*does not make them safe/u);
    expect(wordsOf(await stock())).toMatch(/^Throw away 8 portions/u);
  });
});
