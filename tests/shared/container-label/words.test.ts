import { describe, expect, it } from "vitest";
import { bestBefore, discardBy } from "../../../shared/keeping/dates.ts";
import { writeDate } from "../../../shared/words/write-when.ts";
import { batch, date, keeping, lot } from "../../kit/stock.ts";
import { COACHS, FROZEN, label } from "./samples.ts";

const said = (words: ReturnType<typeof label>) =>
  words.notes.flatMap(({ forms: [whole] }) => whole ?? []).join(" ");

describe("what a label says", () => {
  it("has the very date that the reminders go by, in the fridge and in the freezer", () => {
    for (const fridgeDays of [1, 2, 3, 6]) {
      for (const usedDays of [0, 1]) {
        const kept = batch({ keeping: keeping({ fridgeDays }) });
        const cold = lot({ usedDays });
        expect(label({ batch: kept, lot: cold }).date).toBe(
          writeDate(discardBy(cold, kept.keeping) ?? date("1970-01-01")),
        );
        const frozen = { ...FROZEN, usedDays };
        expect(label({ batch: kept, lot: frozen }).date).toContain(
          writeDate(bestBefore(frozen, kept.keeping) ?? date("1970-01-01")),
        );
      }
    }
  });

  // FDA Food Code 3-501.17: what was used before freezing is gone. Keeps 3 days: four calendar days in all.
  it("gives thawed food only the days that are left, never a date of its own", () => {
    expect(said(label({ lot: { ...FROZEN, usedDays: 1 } }))).toContain("eat within 3 days");
    expect(said(label({ lot: { ...FROZEN, usedDays: 2 } }))).toContain("eat within 2 days");
    expect(said(label({ lot: { ...FROZEN, usedDays: 3 } }))).toContain(
      "Do not thaw first: heat straight from frozen.",
    );
  });

  it("calls the freezer's date one for quality, and the fridge's one to throw away by", () => {
    expect(said(label({ lot: FROZEN }))).toContain("A date for quality");
    expect(label({ lot: FROZEN }).lead).toBe("Best before");
    expect(said(label())).toContain("In the fridge; after this day throw it away.");
    const thawing = lot({ place: "thawing", since: date("2026-10-20"), usedDays: 2 });
    expect(label({ lot: thawing })).toMatchObject({ lead: "Eat by", date: "Wed 21 Oct" });
    expect(said(label({ lot: thawing }))).toContain("thawing since Tue 20 Oct");
  });

  it("says when a date rests on the coach's word, and what the chart gives", () => {
    const cold = label({ batch: COACHS });
    expect(cold.date).toBe("Fri 16 Oct");
    for (const form of cold.notes.find(({ id }) => id === "after")?.forms ?? []) {
      expect(form).toContain("coach's word; chart: 3 days");
    }
    const frozen = label({ batch: COACHS, lot: FROZEN });
    expect(said(frozen)).toContain(
      "eat within 4 days, that day counted. Coach's word; chart: 2 days.",
    );
  });

  it("prints a name of two scripts, and leaves a line to write on for what it has no letters for", () => {
    expect(label({}, "חומוס hummus").name).toBe("חומוס hummus");
    expect(label({}, "鶏の照り焼き").name).toBe("");
    expect(label({}, "Pot 🍲 of beans").name).toBe("Pot of beans");
    expect(label({}, "Żurek à la crème").name).toBe("Żurek à la crème");
  });
});
