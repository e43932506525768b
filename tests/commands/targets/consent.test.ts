import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { COACH, MEMBER, OTHER, type Person, STRANGER, wordsOf } from "../../kit/bot.ts";
import { openTargetBot, type TargetBot } from "./kit.ts";

let test: TargetBot;
beforeEach(async () => {
  test = await openTargetBot();
});
afterEach(() => test.close());

describe("whose targets they are", () => {
  const REFUSED =
    "That member has not let the coach see or set their targets. They can allow it with /me coach:yes.";

  it("the coach sees and sets nothing without consent, and learns nothing from the answer", async () => {
    await test.set(MEMBER, { energy: "2100" });
    for (const member of [MEMBER.userId, "Ines", "nobody", STRANGER.userId]) {
      for (const [path, raw] of [
        ["targets set", { energy: "1900", member }],
        ["targets show", { member }],
        ["targets clear", { member }],
      ] as const) {
        const answer = await test.ask(COACH, path, raw);
        expect(wordsOf(answer)).toBe(REFUSED);
      }
    }
    expect(await test.decisions(MEMBER)).toHaveLength(1);
  });

  it("with consent the coach sets them, the member sees who did, and both may change them", async () => {
    await test.profile(MEMBER, { coachMaySetTargets: true });
    const answer = await test.set(COACH, { energy: "2000", member: "ines" });
    expect(answer.heading).toBe("Targets of Ines, every day from today: 2,000 kcal");
    const [decision] = await test.decisions(MEMBER);
    expect(decision?.setBy).toBe(await test.idOf(COACH));
    expect(await test.show(MEMBER)).toContain("Since today, set by Mara, with your consent.");
    expect(await test.show(COACH, { member: "Ines" })).toContain(
      "Ines today, Wed 25 Nov: 2,000 kcal\nSince today, set by you.",
    );
    await test.set(MEMBER, { energy: "2100" });
    expect(await test.show(COACH, { member: "Ines" })).toContain("set by Ines");
    expect(await test.decisions(COACH)).toEqual([]);
  });

  it("consent taken back ends the coach's sight at once, and the targets stay the member's", async () => {
    await test.profile(MEMBER, { coachMaySetTargets: true });
    await test.set(COACH, { energy: "2000", member: "Ines" });
    await test.profile(MEMBER, { coachMaySetTargets: false });
    expect(await test.show(COACH, { member: "Ines" })).toBe(REFUSED);
    expect(wordsOf(await test.set(COACH, { fat: "70", member: "Ines" }))).toBe(REFUSED);
    expect(await test.show(MEMBER)).toContain("2,000 kcal");
  });

  it("a member who is not the coach gets the same answer for everybody else, consent or not", async () => {
    await test.profile(MEMBER, { coachMaySetTargets: true });
    const answers = await Promise.all(
      ["Ines", "nobody", COACH.userId].map((member) => test.show(OTHER, { member })),
    );
    expect(new Set(answers).size).toBe(1);
    expect(answers[0]).toMatch(/only the group's coach/u);
  });

  it("whoever names themselves gets their own", async () => {
    await test.set(MEMBER, { energy: "2100", member: "Ines" });
    expect(await test.show(MEMBER, { member: MEMBER.userId })).toContain("2,100 kcal");
    await test.set(COACH, { energy: "2300", member: COACH.userId });
    expect(await test.show(COACH)).toContain("2,300 kcal");
  });

  it("a coach of another group finds nobody here, and a person's targets in two groups are apart", async () => {
    await test.profile(MEMBER, { coachMaySetTargets: true });
    await test.set(MEMBER, { energy: "2100" });
    expect(await test.show(STRANGER, { member: MEMBER.userId })).toBe(REFUSED);
    const elsewhere: Person = { ...MEMBER, group: STRANGER.group };
    expect(await test.show(elsewhere)).toContain("no target");
    await test.set(elsewhere, { energy: "1800" });
    expect(await test.show(STRANGER, { member: MEMBER.userId })).toBe(REFUSED);
    expect(await test.show(MEMBER)).toContain("2,100 kcal");
  });
});
