import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Temporal } from "temporal-polyfill";
import type { RawInput } from "../../commands/kit/command.ts";
import type { FilledForm, Form } from "../../commands/kit/form.ts";
import type { Stores } from "../../commands/kit/ports.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import type { Asked, Opening } from "../../src/bot/face.ts";
import { type MovableClock, manualClock } from "../../src/clock.ts";
import { type App, compose } from "../../src/compose.ts";
import { silentLog } from "../../src/log.ts";
import { counter } from "./stock.ts";

/** The real bot on a real SQLite file in a temporary folder, on a clock of the test's own. */
export interface TestBot {
  readonly stores: Stores;
  readonly clock: MovableClock;
  readonly ask: (who: Person, path: string, raw?: RawInput, requestId?: string) => Promise<Reply>;
  readonly press: (
    who: Person,
    id: string,
    picked?: readonly string[],
    requestId?: string,
  ) => Promise<Reply>;
  /** What a command or a button opens; a form, or the refusal. */
  readonly form: (who: Person, opening: Opening) => Promise<Form | Reply>;
  readonly submit: (who: Person, id: string, filled: FilledForm) => Promise<Reply>;
  /** Attaches a recipe's text and presses Publish. */
  readonly publish: (who: Person, content: string) => Promise<Reply>;
  /** The bot's own reminder sweep. */
  readonly tickFor: App["tickFor"];
  readonly close: () => Promise<void>;
}

export interface Person {
  readonly userId: string;
  readonly name: string;
  readonly group: string;
  readonly isManager: boolean;
}

export const COACH: Person = { userId: "100", name: "Mara", group: "g1", isManager: true };
export const MEMBER: Person = { userId: "200", name: "Ines", group: "g1", isManager: false };
export const OTHER: Person = { userId: "300", name: "Theo", group: "g1", isManager: false };
export const STRANGER: Person = { userId: "400", name: "Zoe", group: "g2", isManager: true };

export async function openTestBot(now: string): Promise<TestBot> {
  const folder = await mkdtemp(join(tmpdir(), "batch-clerk-test-"));
  const clock = manualClock(Temporal.Instant.from(now));
  const app = await compose({
    face: "terminal",
    databaseUrl: `file:${join(folder, "test.db")}`,
    clock,
    log: silentLog,
    newId: counter("id"),
  });
  if (!app.ok) throw new Error(app.problem.sentence);
  const { bot, stores } = app.value;
  const request = counter("request");
  const asked = (who: Person, requestId = request()): Asked => ({
    groupId: who.group,
    groupName: who.group,
    requestId,
    actor: { userId: who.userId, name: who.name, roleIds: [], isManager: who.isManager },
  });
  const ask: TestBot["ask"] = (who, path, raw = {}, requestId) =>
    bot.command(asked(who, requestId), path.split(" "), raw);
  const press: TestBot["press"] = (who, id, picked = [], requestId) =>
    bot.press(asked(who, requestId), id, picked);
  return {
    stores,
    clock,
    ask,
    press,
    form: (who, opening) => bot.form(asked(who), opening),
    submit: (who, id, filled) => bot.submit(asked(who), id, filled),
    publish: async (who, content) =>
      press(who, buttonOf(await ask(who, "recipe publish", fileOf(content)), "Publish")),
    tickFor: app.value.tickFor,
    close: async () => {
      await app.value.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** All words of a reply, for looking into. */
export function wordsOf(reply: Reply): string {
  const parts = reply.parts.flatMap((part) =>
    part.kind === "text"
      ? part.lines
      : [
          part.title ?? "",
          ...part.rows.map((row) => `${row.label} ${row.figure} ${row.note ?? ""}`),
        ],
  );
  return [reply.heading, ...reply.alerts, ...parts, ...reply.cautions].join("\n");
}

/** The id of the button whose label starts so; throws when there is none. */
export function buttonOf(reply: Reply, label: string): string {
  const found = reply.buttons.find((button) => button.label.startsWith(label));
  if (found === undefined)
    throw new Error(
      `no button “${label}” among ${reply.buttons.map((one) => one.label).join(", ")}`,
    );
  return found.id;
}

/** The text of a reply's first file; throws when there is none. */
export function fileTextOf(reply: Reply): string {
  const [file] = reply.files;
  if (file === undefined || !("text" in file)) throw new Error("no file of text");
  return file.text;
}

export const POT_TEXT = `Barley and lamb pot
Makes 6 portions

- 600 g lamb, diced
- 300 g pearl barley
- 200 g carrots, sliced

Steps
1. Simmer for 60 minutes.

Keeps 3 days in the fridge
Freezes 3 months
`;

export const SALAD_TEXT = `Cucumber bowl
Makes 4 portions

- 400 g cucumber, sliced
- 200 g romaine lettuce
- 150 g plain yogurt

Steps
1. Mix.

Keeps 2 days in the fridge
Does not freeze: the leaves turn limp
`;

export const fileOf = (content: string, name = "recipe.txt"): RawInput => ({
  file: { name, bytes: new TextEncoder().encode(content) },
});
