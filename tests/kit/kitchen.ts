import type { Reply } from "../../commands/kit/reply.ts";
import { groupId } from "../../shared/ids.ts";
import { COACH, MEMBER, openTestBot, POT_TEXT, SALAD_TEXT, type TestBot } from "./bot.ts";

/** A group with two recipes and a member with weekday lunches, on a Sunday evening in Lisbon. */
export interface Kitchen {
  readonly test: TestBot;
  /** The member logs the pot: eight portions cooked at 18:30 unless told otherwise. */
  readonly log: (raw?: Record<string, string>, requestId?: string) => Promise<Reply>;
  readonly portionsIn: (place: string) => Promise<number>;
}

export async function openKitchen(): Promise<Kitchen> {
  const test = await openTestBot("2026-10-11T18:00:00Z");
  await test.ask(COACH, "group setup", { zone: "Europe/Lisbon" });
  await test.publish(COACH, POT_TEXT);
  await test.publish(COACH, SALAD_TEXT);
  await test.ask(MEMBER, "meals", { days: "Mon-Fri", time: "12:30" });
  const { members, stocks } = test.stores;
  return {
    test,
    log: (raw = {}, requestId) =>
      test.ask(
        MEMBER,
        "batch log",
        { recipe: "Barley and lamb pot", portions: "8", cooked: "18:30", ...raw },
        requestId,
      ),
    portionsIn: async (place) => {
      const member = await members.open(groupId(MEMBER.group), MEMBER.userId, MEMBER.name);
      const { lots } = await stocks.load(member.id);
      return lots.reduce((sum, lot) => sum + (lot.place === place ? lot.portions : 0), 0);
    },
  };
}
