import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Temporal } from "temporal-polyfill";
import { groupId } from "../../shared/ids.ts";
import { writeWhen } from "../../shared/words/write-when.ts";
import { writeLedger } from "./ledger-page.ts";
import { END, SCRIPT, START, type Step, type Who } from "./script.ts";
import { type Offer, openStage, type Stage } from "./stage.ts";

/** Where each person's wall clock hangs; for the log alone, the bot learns it from /reminders zone. */
const ZONES: Readonly<Record<Who, string>> = {
  Mara: "Europe/Lisbon",
  Ines: "Europe/Lisbon",
  Theo: "America/Chicago",
};

/** Plays the week and checks it. Ends with 0 only if every balance holds and every reminder came once. */
async function main(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "batch-clerk-demo-"));
  const write = (text: string): void => {
    process.stdout.write(text);
  };
  const stage = await openStage(`file:${join(folder, "demo.db")}`, START, write);
  try {
    for (const step of SCRIPT) await play(stage, step, write);
    await stage.session.moveTo(Temporal.Instant.from(END));
    const good = await checked(stage, write);
    if (!good) process.exitCode = 1;
  } finally {
    await stage.close();
    await rm(folder, { recursive: true, force: true });
  }
}

async function play(stage: Stage, step: Step, write: (text: string) => void): Promise<void> {
  await stage.session.moveTo(Temporal.Instant.from(step.at));
  if ("note" in step) {
    write(`\n=== ${step.note}\n`);
    return;
  }
  await stage.speakAs(step.who, step.who === "Mara");
  const clock = writeWhen(stage.clock.now(), ZONES[step.who]);
  if ("say" in step) {
    write(`\n[${clock}] ${step.who}: ${step.say}\n`);
    await stage.session.say(step.say);
    return;
  }
  const label = "press" in step ? step.press : step.pick;
  const of = "of" in step ? step.of : step.who;
  const offer = stage.offers.find((one) => one.of === of && one.label.startsWith(label));
  if (offer === undefined) throw new Error(`${step.who} was never offered “${label}”`);
  write(
    `\n[${clock}] ${step.who} presses [${offer.label}]${of === step.who ? "" : ` under a message to ${of}`}\n`,
  );
  await pressed(stage, offer);
}

async function pressed(stage: Stage, offer: Offer): Promise<void> {
  const reply = await stage.bot.press(
    stage.session.asked(offer.isDirect),
    offer.pressId,
    offer.picked,
  );
  stage.screen.show(reply, { isDirect: offer.isDirect });
}

async function checked(stage: Stage, write: (text: string) => void): Promise<boolean> {
  write("\n=== The ledgers\n");
  const { stores, seen, clock } = stage;
  let good = true;
  for (const person of stage.session.people()) {
    const member = await stores.members.open(groupId("demo"), person.userId, person.name);
    good = (await writeLedger(stores, member, write)) && good;
    const waiting = await stores.reminders.coming(member.id, 100);
    const overdue = waiting.filter((row) => Temporal.Instant.compare(row.dueAt, clock.now()) <= 0);
    if (overdue.length > 0) {
      write(`!! ${overdue.length} reminders of ${person.name} fell due and were not delivered\n`);
      good = false;
    }
  }
  const counts = [...seen.fellDue].map((key) => seen.delivered.get(key) ?? 0);
  const once = counts.filter((count) => count === 1).length;
  write(`\nReminders: ${counts.length} fell due, ${once} delivered exactly once.\n`);
  write(
    good && once === counts.length ? "All balances hold.\n" : "!! Something does not add up.\n",
  );
  return good && once === counts.length && counts.length > 0;
}

await main();
