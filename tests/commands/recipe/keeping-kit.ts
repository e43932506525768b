import type { Reply } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, COACH, openTestBot, type Person, type TestBot, wordsOf } from "../../kit/bot.ts";

/** States two days more than the chart gives. */
export const STEW = `Lentil and chicken stew
Makes 6 portions

- 600 g chicken thigh
- 300 g lentils
- 200 g carrots, sliced

Steps
1. Simmer for 60 minutes.

Keeps 5 days in the fridge
Freezes 3 months
`;

export const STEW_NAME = "Lentil and chicken stew";

/** A group on a Sunday evening in Lisbon, and what its coach and members do. */
export interface KeepingKit {
  readonly test: TestBot;
  readonly ask: (who?: Person) => Promise<Reply>;
  readonly confirm: () => Promise<Reply>;
  readonly takeBack: () => Promise<Reply>;
  readonly log: (who: Person) => Promise<Reply>;
  readonly stockOf: (who: Person) => Promise<string>;
  readonly card: (who: Person) => Promise<string>;
  /** The dates of a member's coming reminders of a kind. */
  readonly remindersOf: (who: Person, kind: string) => Promise<readonly (string | null)[]>;
}

export async function openKeepingKit(): Promise<KeepingKit> {
  const test = await openTestBot("2026-10-11T18:00:00Z");
  await test.ask(COACH, "group setup", { zone: "Europe/Lisbon" });
  const ask = (who: Person = COACH) => test.ask(who, "recipe keeping", { recipe: STEW_NAME });
  return {
    test,
    ask,
    confirm: async () => test.press(COACH, buttonOf(await ask(), "Confirm 5 days")),
    takeBack: async () => test.press(COACH, buttonOf(await ask(), "Take my word back")),
    log: (who) => test.ask(who, "batch log", { recipe: STEW_NAME, portions: "4", cooked: "18:30" }),
    stockOf: async (who) => wordsOf(await test.ask(who, "stock")),
    card: async (who) => wordsOf(await test.ask(who, "recipe card", { recipe: STEW_NAME })),
    remindersOf: async (who, kind) => {
      const member = await test.stores.members.open(groupId(who.group), who.userId, who.name);
      const rows = await test.stores.reminders.coming(member.id, 50);
      return rows.filter((row) => row.kind === kind).map(({ about }) => about.date);
    },
  };
}
