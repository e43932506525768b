import { describe, expect, it } from "vitest";
import type { z } from "zod";
import {
  fileText,
  gramsText,
  idText,
  optionalText,
  portionsText,
  requiredText,
  timeText,
  weekdaysText,
  wordText,
  yesNo,
  zeroOrMoreText,
  zoneText,
} from "../../../commands/kit/options.ts";

function said(schema: z.ZodType, typed: unknown): string {
  const parsed = schema.safeParse(typed);
  if (parsed.success) throw new Error(`accepted ${JSON.stringify(typed)}`);
  return parsed.error.issues.map((issue) => issue.message).join(" ");
}

describe("reading options", () => {
  it.each([
    ["8", 8],
    [" 8 ", 8],
    ["8 portions", 8],
    ["1", 1],
    ["200", 200],
  ])("takes “%s” for %d portions", (typed, portions) => {
    expect(portionsText.parse(typed)).toBe(portions);
  });

  it.each(["0", "-3", "1.5", "½", "201", "1e3", "abc", "", "4-6", "9".repeat(400)])(
    "refuses “%s” as a number of portions and says what to type",
    (typed) => {
      expect(said(portionsText, typed)).toMatch(/type a whole number from 1 to 200, such as 8\.$/u);
    },
  );

  it("says back what was typed, cut short", () => {
    expect(said(portionsText, "lots")).toContain("“lots” is not a number of portions");
    expect(said(portionsText, "x".repeat(5000)).length).toBeLessThan(160);
  });

  it("takes none where none makes sense", () => {
    expect(zeroOrMoreText.parse("0")).toBe(0);
    expect(said(zeroOrMoreText, "-1")).toContain("0 to 200");
  });

  it.each([
    ["2.4 kg", 2400],
    ["2,4kg", 2400],
    ["850 g", 850],
    ["850 grams", 850],
    ["1,500 g", 1500],
    ["2 lb", 907.18474],
    ["1 1/2 lbs", 680.388555],
    ["5 lb 4 oz", 2381.3599],
  ])("takes “%s” for %d g", (typed, grams) => {
    expect(gramsText.parse(typed)).toBeCloseTo(grams, 3);
  });

  it.each(["2.4", "0 g", "-1 kg", "900 kg", "heavy", "2 kg of it", "1-2 kg", "3 cups", "kg"])(
    "refuses “%s” as a weight",
    (typed) => {
      expect(said(gramsText, typed)).toContain("is not a weight");
    },
  );

  it("reads times, weekdays, zones, words and yes or no", () => {
    expect(timeText.parse("7 pm").toString()).toBe("19:00:00");
    expect(weekdaysText.parse("Mon-Fri")).toEqual([1, 2, 3, 4, 5]);
    expect(zoneText.parse("europe/lisbon")).toBe("Europe/Lisbon");
    expect(zoneText.parse("America/New York")).toBe("America/New_York");
    expect(zoneText.parse("utc")).toBe("UTC");
    expect(wordText(["metric", "us"], "Type units:metric or units:us.").parse("US")).toBe("us");
    expect(yesNo.parse("Yes")).toBe(true);
    expect(idText.parse("123456789012345678")).toBe("123456789012345678");
  });

  it("answers each slip with one sentence", () => {
    expect(said(timeText, "25:00")).toContain("is not a time of day");
    expect(said(weekdaysText, "someday")).toContain("are not weekdays");
    expect(said(zoneText, "Lisbon time!")).toContain("is not a time zone");
    expect(said(zoneText, "+01:00")).toContain("is not a time zone");
    expect(said(zoneText, "Mars/Base")).toContain("is not a time zone");
    expect(said(wordText(["metric", "us"], "Type units:metric or units:us."), "stone")).toBe(
      "Type units:metric or units:us.",
    );
    expect(said(idText, "<@everyone>")).toBe("Pick one from the list.");
  });

  it("takes blank for left out, and refuses what is too long", () => {
    expect(optionalText(10).parse("  ")).toBeUndefined();
    expect(optionalText(10).parse(undefined)).toBeUndefined();
    expect(said(optionalText(10), "x".repeat(11))).toContain("longer than 10");
    expect(said(requiredText("recipe", 10), " ")).toBe("Fill in recipe:");
    expect(said(requiredText("recipe", 10), undefined)).toBe("Fill in recipe:");
    expect(requiredText("recipe", 10).parse(" stew ")).toBe("stew");
  });

  it("reads an attached file as text, or says why not", () => {
    const file = (bytes: Uint8Array) => ({ name: "recipe.txt", bytes });
    const schema = fileText("file", 1000);
    expect(schema.parse(file(new TextEncoder().encode("Crème")))).toBe("Crème");
    expect(said(schema, file(new Uint8Array([0xff, 0xfe, 0x00])))).toContain("not plain text");
    expect(said(schema, file(new Uint8Array(1001)))).toContain("larger than 1 kB");
    expect(said(schema, "text")).toBe("Attach a text file as file:");
  });
});
