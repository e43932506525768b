import { Temporal } from "temporal-polyfill";
import { groupId, lotId } from "../../shared/ids.ts";
import type { DerivedReminder } from "../../shared/reminder/types.ts";
import { openStore } from "../../src/store/open.ts";
import type { DiscordServer } from "../discord-server/server.ts";
import type { Guild, User } from "../discord-server/world.ts";
import type { FlockPlan, PersonPlan, RowPlan, RunPlan } from "./plan.ts";

/** Somebody of a run, on the platform. */
export interface Person {
  readonly plan: PersonPlan;
  readonly run: RunPlan;
  readonly user: User;
  readonly guild: Guild;
}

const REMINDER_CHANNEL = 1;

export function channelOf(guild: Guild): string {
  return guild.channels[REMINDER_CHANNEL]?.id ?? "";
}

/** The groups of all runs as the platform has them. */
export function gather(server: DiscordServer, flock: FlockPlan): readonly Person[] {
  return flock.runs.flatMap((run) => {
    const guild = server.guild(`Run ${run.seed}`, ["kitchen", "reminders"]);
    return run.people.map((plan) => ({ plan, run, guild, user: server.join(guild, plan.name) }));
  });
}

/** Ids that follow from the seed, so that nonces do too. */
function idsOf(flock: number): () => string {
  let count = 0;
  return () => {
    count += 1;
    return `f${flock.toString(36).padStart(5, "0")}${count.toString(36).padStart(6, "0")}`;
  };
}

function reminderOf(row: RowPlan, startMs: number): DerivedReminder {
  const start = Temporal.Instant.fromEpochMilliseconds(startMs);
  const dueAt = start.add({ minutes: row.dueAfterMinutes });
  return {
    kind: row.kind,
    key: row.title,
    dueAt,
    helpsUntil: dueAt.add({ minutes: row.helpsForMinutes }),
    about: {
      lotId: lotId(`lot-${row.title}`),
      title: row.title,
      portions: 2,
      date: dueAt.toString().slice(0, 10),
      meal: "lunch",
      mealAt: dueAt.toString(),
    },
  };
}

/** Writes every run's group, members and reminders to the database. */
export async function fill(
  databaseUrl: string,
  flock: FlockPlan,
  people: readonly Person[],
  startMs: number,
): Promise<void> {
  const opened = await openStore(databaseUrl, { newId: idsOf(flock.number) });
  if (!opened.ok) throw new Error(opened.problem.sentence);
  const { stores, close } = opened.value;
  for (const { plan, run, user, guild } of people) {
    const group = await stores.groups.open(groupId(guild.id), guild.name);
    if (run.hasChannel) {
      await stores.groups.set(group.id, { reminderChannelId: channelOf(guild) });
    }
    const member = await stores.members.open(group.id, user.id, plan.name);
    await stores.reminders.replan({
      memberId: member.id,
      version: 0,
      now: Temporal.Instant.fromEpochMilliseconds(startMs),
      reminders: plan.rows.map((row) => reminderOf(row, startMs)),
      replanAt: null,
      deliverTo: plan.deliverTo,
    });
  }
  await close();
}
