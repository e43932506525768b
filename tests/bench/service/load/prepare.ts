import { readFileSync } from "node:fs";
import { Temporal } from "temporal-polyfill";
import type { RawInput } from "../../../../commands/kit/command.ts";
import type { Reply } from "../../../../commands/kit/reply.ts";
import type { Asked, Bot } from "../../../../src/bot/face.ts";
import { manualClock } from "../../../../src/clock.ts";
import { compose } from "../../../../src/compose.ts";
import { silentLog } from "../../../../src/log.ts";
import { counter } from "../../../kit/stock.ts";

/** Recipes with steps, parts and swaps, as coaches write them. */
const FILES = [
  "cold-noodle-and-cucumber-bowl",
  "dill-salmon-and-rice-tray",
  "paprika-thigh-and-white-bean-bake",
];
export const TITLES = [
  "Cold noodle and cucumber bowl",
  "Dill salmon and rice tray",
  "Paprika thigh and white bean bake",
] as const;

export interface Home {
  readonly id: string;
  readonly name: string;
  readonly people: readonly { readonly id: string; readonly name: string }[];
}

function pressOf(answer: Reply, label: string): string {
  const found = answer.buttons.find((button) => button.label.startsWith(label));
  if (found === undefined) throw new Error(`no button ${label}: ${answer.heading}`);
  return found.id;
}

/** Fills a fresh file by the bot itself: each group has recipes, each member meals and `logs` batches. */
export async function prepare(
  path: string,
  homes: readonly Home[],
  logs: number,
  now: Temporal.Instant = Temporal.Now.instant(),
): Promise<void> {
  const app = await compose({
    face: "discord",
    databaseUrl: `file:${path}`,
    clock: manualClock(now),
    log: silentLog,
  });
  if (!app.ok) throw new Error(app.problem.sentence);
  for (const home of homes) await furnish(app.value.bot, home, logs);
  await app.value.close();
}

async function furnish(bot: Bot, { id, name, people }: Home, logs: number): Promise<void> {
  const request = counter(`bench-${id}-`);
  const asked = (person: { id: string; name: string }, isManager: boolean): Asked => ({
    groupId: id,
    groupName: name,
    requestId: request(),
    actor: { userId: person.id, name: person.name, roleIds: [], isManager },
  });
  const coach = asked({ id: `coach-${id}`, name: "Mara" }, true);
  const ask = async (who: Asked, path: string, raw: RawInput = {}): Promise<Reply> =>
    bot.command({ ...who, requestId: request() }, path.split(" "), raw);
  for (const file of FILES) {
    const bytes = readFileSync(`prisma/seed/recipes/${file}.txt`);
    const draft = await ask(coach, "recipe publish", { file: { name: "recipe.txt", bytes } });
    await bot.press({ ...coach, requestId: request() }, pressOf(draft, "Publish"), []);
  }
  for (const person of people) {
    const member = asked(person, false);
    await ask(member, "meals", { days: "Mon-Fri", time: "12:30" });
    for (let n = 0; n < logs; n += 1) {
      const recipe = TITLES[n % TITLES.length] ?? "";
      await ask(member, "batch log", { recipe, portions: "6" });
    }
  }
}
