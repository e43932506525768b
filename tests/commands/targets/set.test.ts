import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { causeId } from "../../../shared/ids.ts";
import { COACH, MEMBER, wordsOf } from "../../kit/bot.ts";
import { date, instant } from "../../kit/stock.ts";
import { rule } from "../../shared/target/kit.ts";
import { openTargetBot, type TargetBot, type Typed } from "./kit.ts";

let test: TargetBot;
beforeEach(async () => {
  test = await openTargetBot();
});
afterEach(() => test.close());

describe("/targets set", () => {
  it("answers with the figures, keeps what is left out and says so", async () => {
    expect((await test.set(MEMBER, { energy: "2100", protein: "120 g" })).heading).toBe(
      "Targets, every day from today: 2,100 kcal · protein 120 g",
    );
    const more = await test.set(MEMBER, { fibre: "30" });
    expect(more.heading).toBe(
      "Targets, every day from today: 2,100 kcal · protein 120 g · fibre 30 g",
    );
    expect(wordsOf(more)).toContain("Kept as before: energy, protein.");
    expect((await test.set(MEMBER, { protein: "none" })).heading).toBe(
      "Targets, every day from today: 2,100 kcal · fibre 30 g",
    );
    expect(more.audience).toBe("private");
  });

  it("makes one decision of each kind of day, all in one request", async () => {
    await test.set(MEMBER, { energy: "2100" });
    await test.set(MEMBER, { energy: "2,400 kcal", days: "Sat Sun" });
    const both = await test.set(MEMBER, { protein: "120" });
    const words = wordsOf(both);
    expect(both.heading).toBe("Targets from today are set; they differ by day.");
    expect(words).toContain("Mon-Fri 2,100 kcal · protein 120 g");
    expect(words).toContain("Sat, Sun 2,400 kcal · protein 120 g");
  });

  it("the same request twice is one", async () => {
    await test.set(MEMBER, { energy: "2400", days: "Sat Sun" });
    const first = wordsOf(await test.set(MEMBER, { protein: "120" }, "twice"));
    const before = await test.decisions(MEMBER);
    expect(wordsOf(await test.set(MEMBER, { protein: "120" }, "twice"))).toBe(first);
    expect(await test.decisions(MEMBER)).toEqual(before);
    expect(before).toHaveLength(3);
  });

  it("of many decisions on one stroke of the clock the last holds", async () => {
    for (let kcal = 2000; kcal <= 2150; kcal += 10) await test.set(MEMBER, { energy: `${kcal}` });
    expect(await test.show(MEMBER)).toContain("Today, Wed 25 Nov: 2,150 kcal");
  });

  it("a clock that was set back does not bring the earlier decision back", async () => {
    const memberId = await test.idOf(MEMBER);
    const early = rule({ memberId, from: date("2026-11-25"), setBy: null });
    const setAt = instant("2026-11-25T19:00:00Z");
    await test.stores.targets.add({ ...early, setAt }, causeId("before the clock was set back"));
    await test.set(MEMBER, { energy: "2200" });
    expect(await test.show(MEMBER)).toContain("Today, Wed 25 Nov: 2,200 kcal");
  });

  it("shows the cautions every time, and a word about shares outside the published ranges", async () => {
    const { cautions } = await test.set(MEMBER, { energy: "2000", protein: "200" });
    // 200 g x 4 = 800 of 2,000 kcal.
    expect(cautions[0]).toContain("Protein gives 40 %");
    expect(cautions.at(-1)).toMatch(
      /healthy adults.*[Pp]regnan.*breastfeeding.*under 18.*dietitian/u,
    );
    expect((await test.set(MEMBER, { fibre: "30" })).cautions.at(-1)).toMatch(/healthy adults/u);
  });

  it.each([
    [{ energy: "1199.9" }, /1,199 kcal is below 1,200 kcal/u, /doctor or a registered dietitian/u],
    [{ energy: "5020 kJ" }, /below 1,200 kcal/u, /dietitian/u],
    [{ energy: "1199", floor: "1200 (women)" }, /below 1,200 kcal/u, /dietitian/u],
    [{ energy: "1.500" }, /below 1,200 kcal/u, /2100 or 2,100/u],
    [{ energy: "1499" }, /below 1,500 kcal/u, /floor:1200 \(women\)/u],
    [
      { protein: "75", fat: "40", carbohydrate: "134" },
      /together come to 1,196 kcal/u,
      /dietitian/u,
    ],
  ])("does not take %o and refers to licensed care", async (raw, heading, rest) => {
    const answer = await test.set(MEMBER, raw);
    expect(answer.heading).toMatch(heading);
    expect(wordsOf(answer)).toMatch(rest);
    expect(wordsOf(answer)).toContain("Nothing was changed.");
    expect(await test.decisions(MEMBER)).toEqual([]);
  });

  it("takes the floor of women where it is chosen, and says so", async () => {
    const answer = await test.set(MEMBER, { energy: "1200", floor: "1200 (women)" });
    expect(answer.heading).toContain("1,200 kcal");
    expect(wordsOf(answer)).toContain("Taken on the floor for women, 1,200 kcal a day.");
  });

  it.each([
    [{}, /at least one figure/u],
    [{ days: "Mon" }, /at least one figure/u],
    [{ energy: "lots" }, /“lots” is not a day's energy/u],
    [{ energy: "8800" }, /kJ behind it/u],
    [{ protein: "900" }, /30 to 400 g/u],
    [{ energy: "2100", days: "Blursday" }, /Blursday/u],
    [{ energy: "2100", from: "yesterday" }, /has passed/u],
    [{ energy: "2000", fat: "250" }, /come to 2,250 kcal, more than the energy of 2,000 kcal/u],
    [{ carbohydrate: "25", fibre: "30" }, /Fibre \(30 g\) is part of the carbohydrate \(25 g\)/u],
    [{ energy: "2100", floor: "900" }, /floor must be one of/u],
  ])("refuses %o with a sentence and changes nothing", async (raw, sentence) => {
    expect((await test.set(MEMBER, raw as Typed)).heading).toMatch(sentence);
    expect(await test.decisions(MEMBER)).toEqual([]);
  });

  it("names every faulty figure at once", async () => {
    const answer = wordsOf(await test.set(MEMBER, { energy: "lots", protein: "some" }));
    expect(answer).toMatch(/“lots”.*\n.*“some”/u);
  });

  it("warns whoever has somebody pregnant at the table, and does not tell the coach", async () => {
    await test.profile(MEMBER, { vulnerable: ["pregnant"], coachMaySetTargets: true });
    expect((await test.set(MEMBER, { energy: "2100" })).alerts.join()).toMatch(
      /pregnant.*midwife/u,
    );
    expect((await test.ask(MEMBER, "targets show")).alerts.join()).toMatch(/pregnant/u);
    const byCoach = await test.set(COACH, { energy: "2200", member: MEMBER.userId });
    expect(byCoach.alerts).toEqual([]);
    expect(byCoach.heading).toContain("Targets of Ines");
    expect((await test.ask(COACH, "targets show", { member: MEMBER.userId })).alerts).toEqual([]);
  });
});
