import { describe, expect, it } from "vitest";
import { foodBook } from "../../../shared/food/book.ts";
import { createBot } from "../../../src/bot/dispatch.ts";
import type { Asked } from "../../../src/bot/face.ts";
import { manualClock } from "../../../src/clock.ts";
import { silentLog } from "../../../src/log.ts";
import { T0 } from "../jobs/fake-deliveries.ts";
import { COACH_ROLE, fakeStores } from "./fake-stores.ts";
import { form } from "./sample-commands.ts";

const bot = createBot({
  face: "discord",
  commands: [form],
  stores: fakeStores(),
  groupOf: async () => null,
  bookOf: async () => foodBook([]),
  clock: manualClock(T0),
  newId: () => "abcdefghijkl",
  log: silentLog,
});

const asked = (roleIds: readonly string[] = [COACH_ROLE], groupId = "g1"): Asked => ({
  groupId,
  groupName: "Group",
  actor: { userId: "user-ana", name: "ana", roleIds, isManager: false },
  requestId: "r1",
});

const typed = (...given: string[]) => ({ path: ["form"], given });

describe("forms", () => {
  it("opens where the options ask for one, and nowhere else", () => {
    expect(bot.opensForm(typed())).toBe(true);
    expect(bot.opensForm(typed("what"))).toBe(false);
    expect(bot.opensForm({ path: ["nothing"], given: [] })).toBe(false);
    expect(bot.opensForm({ pressId: "form.blank~a" })).toBe(true);
    for (const pressId of ["form.other", "form.constructor", "no id", "form.send~7"]) {
      expect(bot.opensForm({ pressId }), pressId).toBe(false);
    }
  });

  it("hands the arguments of the press to the form", async () => {
    const made = await bot.form(asked(), { pressId: "form.blank~a~b" });
    expect(made).toMatchObject({ id: "form.send~7", fields: [{ value: "a,b" }] });
  });

  it("answers with a sentence where the form is refused", async () => {
    const made = await bot.form(asked(), { pressId: "form.blank~refuse" });
    expect(made).toMatchObject({ heading: "No form for that." });
  });

  it("opens nothing for who may not use the command, and takes nothing from them", async () => {
    expect(await bot.form(asked([]), typed())).toMatchObject({
      heading: expect.stringContaining("for the group's coach"),
    });
    const sent = await bot.submit(asked([]), "form.send~7", { t: "x" });
    expect(sent.heading).toContain("for the group's coach");
  });

  it("opens none in a direct message", async () => {
    expect(await bot.form(asked([COACH_ROLE], ""), typed())).toMatchObject({
      heading: expect.stringContaining("your group's server"),
    });
  });

  it("brings the texts to the submission with its arguments", async () => {
    const sent = await bot.submit(asked(), "form.send~7", { t: "hello" });
    expect(sent.heading).toBe("g1 ana coach 7 hello");
  });

  it("says so when a form leads nowhere, and apologises when its submission breaks", async () => {
    expect((await bot.submit(asked(), "form.gone", {})).heading).toContain("no longer leads");
    const broken = await bot.submit(asked(), "form.send~7", { t: "break" });
    expect(broken.heading).toContain("Something went wrong");
    expect(JSON.stringify(broken)).not.toContain("hunter2");
  });
});
