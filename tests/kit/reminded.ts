import type { Reply } from "../../commands/kit/reply.ts";
import { FakePlatform } from "../src/jobs/fake-deliveries.ts";
import { buttonOf, MEMBER, wordsOf } from "./bot.ts";
import { type Kitchen, openKitchen } from "./kitchen.ts";
import { instant } from "./stock.ts";

/** A kitchen whose member is told by the bot's own sweep, every minute that a test names. */
export interface Reminded extends Kitchen {
  readonly platform: FakePlatform;
  /** Moves the clock there, sweeps, and gives what has arrived since the last sweep. */
  readonly at: (time: string) => Promise<readonly Reply[]>;
  /** The same in words. */
  readonly told: (time: string) => Promise<readonly string[]>;
}

/** Eight portions cooked on Sunday 11 October at 18:30 in Lisbon; five of them frozen if asked. */
export async function openReminded(freeze: boolean): Promise<Reminded> {
  const kitchen = await openKitchen();
  const { test } = kitchen;
  const logged = await kitchen.log();
  if (freeze) await test.press(MEMBER, buttonOf(logged, "Froze 5"));
  const platform = new FakePlatform();
  const tick = test.tickFor(platform, 1);
  const at = async (time: string): Promise<readonly Reply[]> => {
    test.clock.advanceTo(instant(time));
    const before = platform.stored.length;
    const report = await tick();
    if (report.errors > 0) throw new Error("the sweep met an error");
    return platform.stored.slice(before).map(({ reply }) => reply);
  };
  return { ...kitchen, platform, at, told: async (time) => (await at(time)).map(wordsOf) };
}
