import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { causeId, foodId, groupId, slotRuleId } from "../../../../shared/ids.ts";
import { time } from "../../../kit/stock.ts";
import type { Given } from "../contract.ts";
import { NOW, publish, recipe, remind, reminder, world } from "../kit.ts";
import { packed } from "../packed.ts";

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

    test("signs that cannot be kept are replaced, and a text is found again under what was written", async () => {
      const w = await world(store());
      const { groups, members, recipes, foods } = store().stores;
      const [nul, half] = ["a\u0000b", "c\uD83Cd"];
      for (const text of [nul, half]) {
        const kept = text.replace(text.charAt(1), "\uFFFD");
        expect((await groups.open(groupId(text), text)).name).toBe(kept);
        const member = await members.open(groupId(text), text, text);
        expect(member.name).toBe(kept);
        expect((await members.open(groupId(text), text, text)).id).toBe(member.id);
        await store().settings.set(text, text);
        expect(await store().settings.get(text)).toBe(kept);
        const what = recipe({ title: `Pot ${text}`, tags: [text], notes: [text] });
        const { published } = await publish(w, what, `cause ${text}`);
        expect((await recipes.find(w.member.groupId, what.title))?.id).toBe(published.id);
        expect((await publish(w, what, `cause ${text}`)).published.id).toBe(published.id);
        await foods.put({
          groupId: w.member.groupId,
          by: w.member.id,
          causeId: causeId(`food ${text}`),
          now: NOW,
          food: { ...packed, id: foodId(`own ${text}`), name: `Bread ${text}` },
        });
        const about = { ...reminder("").about, title: text };
        await remind(w, [reminder(`k ${text}`, { about })]);
        const [row] = await store().stores.reminders.coming(w.member.id, 10);
        expect([row?.key, row?.about.title]).toEqual([`k ${kept}`, text]);
      }
      expect(await foods.list(w.member.groupId)).toHaveLength(2);
    });

    test("the longest texts that a request can carry are kept", async () => {
      const w = await world(store());
      // What is compressed least: no two signs alike in a row, four bytes each.
      const long = (length: number) =>
        Array.from({ length }, (_, i) =>
          String.fromCodePoint(0x20000 + ((i * 7919) % 40_000)),
        ).join("");
      const { members, recipes } = store().stores;
      const name = long(100);
      const member = await members.open(w.member.groupId, long(25), name);
      expect(member.name).toBe(name);
      const what = recipe({ title: long(200), tags: [long(500)], notes: [long(10_000)] });
      const { published } = await publish(w, what, `c ${long(100)}`);
      expect((await recipes.find(w.member.groupId, what.title))?.id).toBe(published.id);
      await remind(w, [reminder(long(100))]);
      expect(await store().stores.reminders.coming(w.member.id, 10)).toHaveLength(1);
    });

    test("any text in a reminder and a meal comes back as it was", async () => {
      const w = await world(store());
      // Without the signs that are replaced, which have a test of their own.
      const anyText = fc.oneof(
        fc.string({ unit: "grapheme", maxLength: 60 }),
        fc.string({ unit: "binary", maxLength: 60 }).map((text) => text.replaceAll("\u0000", "")),
      );
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
          const plan = {
            memberId: w.member.id,
            version: 0,
            now: NOW,
            replanAt: null,
            meals: [meal],
          };
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
