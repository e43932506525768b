import { afterEach, beforeEach } from "vitest";
import type { Form } from "../../../commands/kit/form.ts";
import type { Choice, Reply } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, COACH, fileOf, openTestBot, type TestBot } from "../../kit/bot.ts";

/** Two names that no food has, and one that has. */
export const NETTLES = `Green pot
Makes 4 portions
Ingredients
- 300 g nettle spinach mix
- 200 g jumbled chard leaves
- 100 g rice
Steps
1. Simmer for 25 minutes.
Keeps 2 days in the fridge`;

/** A fresh bot for each test, on a Sunday morning. */
export function botForEach(): () => TestBot {
  let bot: TestBot;
  beforeEach(async () => {
    bot = await openTestBot("2026-10-11T10:00:00Z");
  });
  afterEach(() => bot.close());
  return () => bot;
}

export const attach = (bot: TestBot, content: string, who = COACH): Promise<Reply> =>
  bot.ask(who, "recipe publish", fileOf(content));

export const published = (bot: TestBot) => bot.stores.recipes.all(groupId(COACH.group));

/** The empty form of /recipe publish. */
export async function blankForm(bot: TestBot): Promise<Form> {
  return formIn(await bot.form(COACH, { path: ["recipe", "publish"], given: [] }));
}

/** The form behind a draft's Edit button, or why there is none. */
export const edit = (bot: TestBot, reply: Reply, who = COACH): Promise<Form | Reply> =>
  bot.form(who, { pressId: buttonOf(reply, "Edit") });

export function formIn(made: Form | Reply): Form {
  if ("fields" in made) return made;
  throw new Error(made.heading);
}

export function choiceOf(reply: Reply): Choice {
  const [choice] = reply.choices;
  if (choice === undefined) throw new Error(`no choice: ${reply.heading}`);
  return choice;
}

/** The value of the entry whose label starts so. */
export function optionIn(reply: Reply, label: string): string {
  const found = choiceOf(reply).options.find((one) => one.label.startsWith(label));
  if (found === undefined) {
    throw new Error(
      choiceOf(reply)
        .options.map((one) => one.label)
        .join("\n"),
    );
  }
  return found.value;
}
