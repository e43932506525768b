import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { groupId, slotRuleId } from "../../../../shared/ids.ts";
import { time } from "../../../kit/stock.ts";
import type { Given } from "../contract.ts";
import { publish, recipe, remind, reminder, world } from "../kit.ts";

const HOSTILE = [
  '\'; DROP TABLE "Member"; --',
  "@everyone <@1> **bold** `code` ||spoiler||",
  // biome-ignore lint/suspicious/noTemplateCurlyInString: text that would be dangerous as a template
  "${process.exit(1)} {{x}} %s %n \\u0000 \\x00",
  "日本語 العربية हिन्दी ไทย \u{1F35B}\u{1F468}\u200D\u{1F373} e\u0301 \u202Eright to left",
  '{"lotId":"x","__proto__":{"a":1}}',
  "line\r\none\ttwo\u2028three",
  "  spaces kept  ",
  "",
];

export function textContract({ store, restart }: Given): void {
  describe("text", () => {
    test("hostile text comes back as it was and is never interpreted", async () => {
      const w = await world(store());
      for (const [index, text] of HOSTILE.entries()) {
        const what = recipe({ title: `${index} ${text}`, tags: [text], notes: [text, text] });
        const { published } = await publish(w, what, `c ${text}`);
        const { recipes } = store().stores;
        expect(published.recipe).toEqual(what);
        expect((await recipes.find(w.member.groupId, what.title))?.recipe).toEqual(what);
        const again = await publish(w, what, `c ${text}`);
        expect(again.published).toEqual(published);
        await store().stores.members.open(w.member.groupId, `user ${text}`, text);
        await store().settings.set(text, text);
      }
      const after = await restart();
      for (const text of HOSTILE) {
        expect(await after.settings.get(text)).toBe(text);
        const id = groupId(w.member.groupId);
        expect((await after.stores.members.open(id, `user ${text}`, text)).name).toBe(text);
      }
    });

    test("any text in a reminder and a meal comes back as it was", async () => {
      const w = await world(store());
      const anyText = fc.string({ unit: "grapheme", maxLength: 60 });
      const { reminders, meals } = store().stores;
      await fc.assert(
        fc.asyncProperty(anyText, anyText, async (title, key) => {
          const about = { ...reminder("").about, title, meal: title };
          await remind(w, [reminder(key, { about })]);
          const meal = {
            id: slotRuleId("m"),
            name: title,
            weekdays: [],
            time: time("01:02"),
            portions: 1,
          };
          const plan = { memberId: w.member.id, version: 0, replanAt: null, meals: [meal] };
          await reminders.replan({ ...plan, reminders: [reminder(key, { about })] });
          const [row] = await reminders.coming(w.member.id, 10);
          expect([row?.key, row?.about]).toEqual([key, about]);
          expect(await meals.list(w.member.id)).toEqual([meal]);
        }),
        { numRuns: 60 },
      );
    });
  });
}
