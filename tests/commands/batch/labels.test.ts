import { Temporal } from "temporal-polyfill";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Reply } from "../../../commands/kit/reply.ts";
import { buttonOf, COACH, MEMBER, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";
import { bytesOf, readPdf, scan } from "../../kit/printed.ts";

const DIP_TEXT = `Bean bowl
Makes 2 portions

Base:
- 400 g kidney beans, cooked
- 80 g wheat bread (optional)

Yoghurt sauce (optional):
- 120 g plain yogurt

Steps
1. Simmer for 20 minutes.

Keeps 3 days in the fridge
`;

let kitchen: Kitchen;
beforeEach(async () => {
  kitchen = await openKitchen();
});
afterEach(() => kitchen.test.close());

const labels = (raw: Record<string, string> = {}) => kitchen.test.ask(MEMBER, "batch labels", raw);
const find = (code: string) => kitchen.test.ask(MEMBER, "stock", { code });
const press = (reply: Reply, label: string) => kitchen.test.press(MEMBER, buttonOf(reply, label));
const pdfOf = async (reply: Reply) =>
  readPdf(await bytesOf(reply.prints.find(({ format }) => format === "pdf")));
const codesIn = (reply: Reply) =>
  [...wordsOf(reply).matchAll(/code (\w{5})/gu)].map(([, code]) => code ?? "");
const at = (time: string) => kitchen.test.clock.advanceTo(Temporal.Instant.from(time));

describe("/batch labels", () => {
  it("prints one label for each portion of what was cooked last, and a card for the phone", async () => {
    await kitchen.log({ freeze: "3" });
    const reply = await labels();
    expect(reply.heading).toBe("8 labels on 1 A4 sheet: Barley and lamb pot.");
    expect(wordsOf(reply)).toMatch(/Fridge 5 labels code \w{5}, eat by Wed 14 Oct/u);
    expect(wordsOf(reply)).toMatch(/Freezer 3 labels code \w{5}, best before Mon 11 Jan 2027/u);
    expect(reply.prints.map(({ format }) => format)).toEqual(["pdf", "png", "png"]);
    const [page] = await pdfOf(reply);
    const texts = page?.texts.map(({ text }) => text) ?? [];
    expect(texts.filter((text) => text === "Barley and lamb pot")).toHaveLength(8);
    expect(texts.filter((text) => text.includes("Wed 14 Oct"))).toHaveLength(5);
    expect(texts.filter((text) => text === "eaten")).toHaveLength(8);
  });

  it("says in words all that a label says", async () => {
    await kitchen.log({ freeze: "3", weight: "3.2 kg" });
    const said = wordsOf(await labels());
    expect(said).toContain("Cooked and frozen Sun 11 Oct 2026");
    expect(said).toContain("A date for quality: kept frozen it stays safe.");
    expect(said).toContain("One portion: 400 g");
    expect(said).toContain("eat within 3 days, that day counted");
    expect(said).toContain("Contains gluten.");
  });

  it("says what was left out, and only the allergens of what was cooked", async () => {
    await kitchen.test.publish(COACH, DIP_TEXT);
    const allergens = async (raw: Record<string, string>) => {
      await kitchen.log({ recipe: "Bean bowl", portions: "2", ...raw });
      return wordsOf(await labels());
    };
    const whole = await allergens({});
    expect(whole).toContain("Contains milk, wheat (gluten).");
    expect(whole).not.toContain("Without");
    kitchen.test.clock.advanceTo(Temporal.Instant.from("2026-10-11T19:00:00Z"));
    const part = await allergens({ without: "sauce, bread", cooked: "19:45" });
    expect(part).toContain("Without Yoghurt sauce, wheat bread.");
    expect(part).toContain("Allergens: none known.");
  });

  it("labels as many boxes as there are, and never leaves a portion without a place to tick", async () => {
    await kitchen.log();
    const reply = await labels({ copies: "3", grid: "99.1 x 67.7 mm" });
    expect(reply.heading).toContain("3 labels");
    const squares = reply.prints[0]?.pages.flatMap(({ items }) =>
      items.filter(({ kind }) => kind === "frame"),
    );
    expect(squares).toHaveLength(8);
  });

  it("begins at the first free label of a used sheet", async () => {
    await kitchen.log({ portions: "2" });
    const reply = await labels({ grid: "63.5 x 38.1", start: "20" });
    const pages = await pdfOf(reply);
    expect(pages).toHaveLength(1);
    const scale = 300 / 72;
    const image = await pages[0]?.image(scale);
    const found = image === undefined ? [] : await scan(image);
    expect(found).toHaveLength(2);
    // The last row of seven begins 15.15 + 6 x 38.1 mm from the top.
    for (const { y } of found) expect(y / scale / (72 / 25.4)).toBeGreaterThan(15.15 + 6 * 38.1);
    expect(found.map(({ text }) => text)).toEqual([...codesIn(reply), ...codesIn(reply)]);
  });

  it("prints on Letter when asked, and at the touch of a button", async () => {
    await kitchen.log();
    for (const reply of [
      await labels({ paper: "letter" }),
      await press(await labels(), "On US Letter"),
    ]) {
      const [page] = await pdfOf(reply);
      expect([page?.widthPt, page?.heightPt]).toEqual([612, 792]);
    }
  });

  it("stays on plain paper when only its size is changed", async () => {
    await kitchen.log();
    const reply = await press(await labels({ grid: "plain" }), "On US Letter");
    expect(wordsOf(reply)).toContain("Letter, plain paper to cut");
  });

  it("offers the labels of a batch right after it is logged", async () => {
    const reply = await press(await kitchen.log(), "Labels");
    expect(reply.heading).toBe("8 labels on 1 A4 sheet: Barley and lamb pot.");
  });

  it("asks to freeze first what no meal takes", async () => {
    await kitchen.log();
    const reply = await labels();
    expect(wordsOf(reply)).toContain("Freeze 5 portions of Barley and lamb pot first, then print");
    await press(reply, "Froze 5");
    expect(await kitchen.portionsIn("freezer")).toBe(5);
  });

  it("gives no label to what is past its date, and says to throw it away", async () => {
    await kitchen.log({ freeze: "3" });
    at("2026-10-15T08:00:00Z");
    const some = await labels();
    expect(some.heading).toContain("3 labels");
    expect(some.alerts.join(" ")).toContain(
      "Barley and lamb pot of Sun 11 Oct, in the fridge, was good until Wed 14 Oct: throw it away.",
    );
    const [fridge] = (await kitchen.test.ask(MEMBER, "stock")).choices[0]?.options ?? [];
    const lot = await kitchen.test.press(MEMBER, "stock.lot", [fridge?.value ?? ""]);
    const code = /Lot code (\w{5})/u.exec(wordsOf(lot))?.[1] ?? "";
    const none = await labels({ batch: code });
    expect(none.prints).toEqual([]);
    expect(wordsOf(none)).toContain("throw it away. It gets no label.");
  });

  it("refuses more than 200 labels, an unknown grid and a start beyond the sheet, each with what to type", async () => {
    await kitchen.log();
    expect(wordsOf(await labels({ copies: "201" }))).toContain("from 1 to 200");
    await kitchen.log({ recipe: "Cucumber bowl" });
    expect(wordsOf(await labels({ batch: "all", copies: "150" }))).toContain(
      "200 is the most at once",
    );
    expect(wordsOf(await labels({ grid: "50 x 50 mm" }))).toContain("99.1 x 38.1 mm");
    expect(wordsOf(await labels({ grid: "63.5 x 38.1", start: "22" }))).toContain(
      "start:1 to start:21",
    );
    expect(wordsOf(await labels({ grid: "63.5 x 38.1", paper: "letter" }))).toContain(
      "2 5/8 x 1 in",
    );
  });

  it("reads a grid by its dimensions however they are typed", async () => {
    await kitchen.log();
    for (const [typed, name] of [
      ["63,5 × 38,1 mm 3 x 7", "63.5 x 38.1 mm"],
      ["4 x 2 in", "4 x 2 in"],
      ["2 5/8 x 1 in", "2 5/8 x 1 in"],
      ["70x37", "70 x 37 mm"],
      ["plain paper", "A4, plain paper to cut"],
    ] as const) {
      expect(wordsOf(await labels({ grid: typed }))).toContain(name);
    }
  });

  it("answers when there is nothing to label, or nothing of that name", async () => {
    expect(wordsOf(await labels())).toContain("Nothing in stock to label");
    await kitchen.log();
    expect(wordsOf(await labels({ batch: "goulash soup" }))).toContain("type Barley and lamb pot");
  });
});

describe("the code on a box", () => {
  it("finds the portions, in any case and with look-alikes", async () => {
    await kitchen.log();
    const [code = ""] = codesIn(await labels());
    const found = await find(` ${code.toLowerCase().replaceAll("0", "o")} `);
    expect(found.heading).toBe("Barley and lamb pot, fridge: 8 portions.");
    expect(wordsOf(found)).toContain(`Lot code ${code}`);
  });

  it("still finds portions that were frozen, in part and in whole", async () => {
    await kitchen.log();
    const sheet = await labels();
    const [code = ""] = codesIn(sheet);
    await press(sheet, "Froze 5");
    const part = await find(code);
    expect(part.heading).toContain("3 in the fridge, 5 in the freezer.");
    expect(wordsOf(part)).toContain("Fridge, this code 3 portions");
    const fridge = part.choices[0]?.options.find(({ label }) => label.includes("fridge"));
    const lot = await kitchen.test.press(MEMBER, `stock.count~${fridge?.value}`, ["3"]);
    await press(lot, "Ate 3");
    const whole = await find(code);
    expect(whole.heading).toContain("5 in the freezer.");
    const again = await press(whole, "Print labels again");
    expect(again.heading).toContain("5 labels");
  });

  it("says so when nothing is left of the batch", async () => {
    await kitchen.log({ portions: "1" });
    const [code = ""] = codesIn(await labels());
    await press(await find(code), "Ate");
    expect(wordsOf(await find(code))).toContain("by your records nothing is left of it");
  });

  it("says nothing of another member's portions, not even that they are there", async () => {
    await kitchen.log();
    const [code = ""] = codesIn(await labels());
    const said = wordsOf(await kitchen.test.ask(COACH, "stock", { code }));
    expect(said).toBe(
      `No portions of yours have the code ${code}. Type /stock to see what you have.`,
    );
    const sheet = buttonOf(await find(code), "Print labels");
    expect(wordsOf(await kitchen.test.press(COACH, sheet))).toContain(
      "Nothing of yours is left to label there",
    );
  });

  it("is called mistyped when a character is wrong", async () => {
    await kitchen.log();
    const [code = ""] = codesIn(await labels());
    const wrong = `${code.slice(0, 4)}${code.endsWith("7") ? "9" : "7"}`;
    expect(wordsOf(await find(wrong))).toContain("a character is wrong");
    expect(wordsOf(await find("hello there"))).toContain("That is not a lot code");
  });
});
