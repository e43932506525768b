import { describe, expect, it } from "vitest";
import { lotId } from "../../shared/ids.ts";
import { discardBy } from "../../shared/keeping/dates.ts";
import { decideLog, decideMove, type MoveKind } from "../../shared/stock/decide.ts";
import type { Lot } from "../../shared/stock/types.ts";
import { batch, counter, date, instant, keeping, stockOf } from "../kit/stock.ts";

/**
 * U.S. Food and Drug Administration, Food Code 2017, 3-501.17 (A) and (C): ready-to-eat food is held at 5 °C
 * for at most seven days, the day of preparation is day 1; freezing stops the count and what was used
 * before it is gone. Here through the ledger: what is logged, frozen, thawed and frozen again.
 */
const MADE = batch({
  keeping: keeping({ fridgeDays: 7 }),
  cookedAt: instant("2026-04-01T17:00:00Z"),
  cookedOn: date("2026-04-01"),
});

interface Done {
  readonly on: string;
  readonly kind: MoveKind;
  readonly portions: number;
  readonly place: Lot["place"];
}

/** The lots after a batch made on 1 April went through all that. */
function lotsAfter(...deeds: readonly Done[]): readonly Lot[] {
  const ids = counter("lot");
  const fresh = () => lotId(ids());
  const log = decideLog(MADE, 0, { at: MADE.cookedAt, on: MADE.cookedOn }, fresh);
  if (!log.ok) throw new Error(log.problem.code);
  let lots = log.value.lots;
  for (const { on, kind, portions, place } of deeds) {
    const lot = lots.find((one) => one.place === place && one.portions >= portions);
    const when = { at: instant(`${on}T18:00:00Z`), on: date(on) };
    const wish = { lotId: lot?.id ?? lotId("none"), kind, portions };
    const step = decideMove(stockOf([MADE], lots), wish, when, fresh);
    if (!step.ok) throw new Error(step.problem.code);
    const touched = new Set(step.value.lots.map((one) => one.id));
    lots = [...lots.filter((one) => !touched.has(one.id)), ...step.value.lots].filter(
      (one) => one.portions > 0,
    );
  }
  return lots;
}

const froze = (on: string, portions = 6, place: Lot["place"] = "fridge"): Done => ({
  on,
  kind: "froze",
  portions,
  place,
});
const thawed = (on: string, portions = 6): Done => ({
  on,
  kind: "set to thaw",
  portions,
  place: "freezer",
});
const dates = (lots: readonly Lot[]) =>
  lots.map((one) => discardBy(one, MADE.keeping)?.toString() ?? null);

describe("FDA Food Code 2017, 3-501.17, date marking through the ledger", () => {
  it("never frozen: made on 1 April, the seventh day is 7 April", () => {
    expect(dates(lotsAfter())).toEqual(["2026-04-07"]);
  });

  // Minnesota Department of Health, date marking poster (after Minn. R. 4626.0400): seven days less
  // those held before freezing, from the day of thawing.
  it("held three days, frozen, thawed on 10 May: four days are left, 10 to 13 May", () => {
    expect(dates(lotsAfter(froze("2026-04-03")))).toEqual([null]);
    expect(dates(lotsAfter(froze("2026-04-03"), thawed("2026-05-10")))).toEqual(["2026-05-13"]);
  });

  it("however long it was frozen", () => {
    const near = lotsAfter(froze("2026-04-03"), thawed("2026-04-04"));
    const far = lotsAfter(froze("2026-04-03"), thawed("2026-06-30"));
    expect([dates(near), dates(far)]).toEqual([["2026-04-07"], ["2026-07-03"]]);
  });

  // USDA FSIS, The Big Thaw: food thawed in the refrigerator may be refrozen without cooking. The days of
  // the thaw are used up as any others (Food Code, as above).
  it("thawed for two days and frozen again: two of the seven are left", () => {
    const lots = lotsAfter(
      froze("2026-04-03"),
      thawed("2026-05-10"),
      froze("2026-05-11", 6, "thawing"),
      thawed("2026-06-01"),
    );
    expect(dates(lots)).toEqual(["2026-06-02"]);
  });

  it("what has no full day left after that is not thawed in the fridge any more", () => {
    const spent = [froze("2026-04-06"), thawed("2026-06-01")] as const;
    expect(() => lotsAfter(...spent)).toThrow("no fridge days left after thawing");
  });

  it("frozen on the evening it was made, it has used its first day", () => {
    expect(dates(lotsAfter(froze("2026-04-01"), thawed("2026-05-10")))).toEqual(["2026-05-15"]);
  });
});

describe("portions that nobody can tell apart", () => {
  const brief = (lots: readonly Lot[]) =>
    lots.map((one) => `${one.portions} ${one.place} ${one.since.toString()}`).toSorted();

  it("frozen on one day, in two goes, are one lot", () => {
    expect(brief(lotsAfter(froze("2026-04-02", 1.5), froze("2026-04-02", 2)))).toEqual([
      "2.5 fridge 2026-04-01",
      "3.5 freezer 2026-04-02",
    ]);
  });

  it("frozen on two days are two, since one has a day less", () => {
    expect(brief(lotsAfter(froze("2026-04-02", 1), froze("2026-04-03", 2)))).toEqual([
      "1 freezer 2026-04-02",
      "2 freezer 2026-04-03",
      "3 fridge 2026-04-01",
    ]);
  });

  it("set to thaw at one moment from one lot are one", () => {
    const lots = lotsAfter(froze("2026-04-02"), thawed("2026-05-10", 1), thawed("2026-05-10", 2));
    expect(brief(lots)).toEqual(["3 freezer 2026-04-02", "3 thawing 2026-05-10"]);
  });
});
