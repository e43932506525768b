import { groupId, type MemberId } from "../../../shared/ids.ts";
import type { Profile } from "../../../shared/people/types.ts";
import type { TargetRule } from "../../../shared/target/types.ts";
import { COACH, MEMBER, openTestBot, type Person, type TestBot, wordsOf } from "../../kit/bot.ts";
import { instant } from "../../kit/stock.ts";

export type Typed = Readonly<Record<string, string>>;

/** The bot on Wed 25 Nov 2026, 18:00 in Lisbon, with what these tests ask of it. */
export interface TargetBot extends TestBot {
  readonly set: (who: Person, raw: Typed, requestId?: string) => ReturnType<TestBot["ask"]>;
  /** The words of /targets show. */
  readonly show: (who: Person, raw?: Typed) => Promise<string>;
  readonly idOf: (who: Person) => Promise<MemberId>;
  readonly profile: (who: Person, patch: Partial<Profile>) => Promise<unknown>;
  readonly decisions: (who: Person) => Promise<readonly TargetRule[]>;
  readonly moveTo: (time: string) => void;
}

export async function openTargetBot(): Promise<TargetBot> {
  const test = await openTestBot("2026-11-25T18:00:00Z");
  await test.ask(COACH, "group setup", { zone: "Europe/Lisbon" });
  await test.ask(MEMBER, "targets show");
  const idOf = async (who: Person) => {
    const found = await test.stores.members.inGroup(groupId(who.group), who.userId);
    if (found === null) throw new Error(`${who.name} is not known`);
    return found.id;
  };
  return {
    ...test,
    set: (who, raw, requestId) => test.ask(who, "targets set", raw, requestId),
    show: async (who, raw = {}) => wordsOf(await test.ask(who, "targets show", raw)),
    idOf,
    profile: async (who, patch) => test.stores.members.setProfile(await idOf(who), patch),
    decisions: async (who) => test.stores.targets.list(await idOf(who)),
    moveTo: (time) => test.clock.advanceTo(instant(time)),
  };
}
