import Database from "better-sqlite3";
import { Temporal } from "temporal-polyfill";
import { changeStock } from "../../commands/kit/plan.ts";
import { batchId, causeId, groupId, lotId, type MemberId } from "../../shared/ids.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { decideLog } from "../../shared/stock/decide.ts";
import { dateIn, type Instant } from "../../shared/time.ts";
import type { Deliveries } from "../../src/jobs/ports.ts";
import { openStore } from "../../src/store/open.ts";
import { batch, counter } from "../kit/stock.ts";

export interface Bench {
  readonly memberId: string;
  readonly deliveries: Deliveries;
  readonly logOne: () => Promise<void>;
  readonly instantText: (instant: Instant) => string;
  readonly close: () => Promise<void>;
}

/** An instant as the SQLite adapter writes it. */
function instantText(instant: Instant): string {
  return new Date(instant.epochMilliseconds).toISOString().replace("Z", "+00:00");
}

const NOTHING = { fridgeDays: null, freezerMonths: null, freezes: null, reason: "" } as const;
const RECIPE: Recipe = {
  title: "Bench pot",
  portions: 6,
  portionWord: "portion",
  yieldG: null,
  tags: [],
  components: [{ name: "Base", optional: false, lines: [], keeping: NOTHING }],
  steps: [],
  keeping: NOTHING,
  reheating: [],
  notes: [],
};

/** A store on a fresh file with one group, one member and one recipe. */
export async function openBench(path: string): Promise<Bench> {
  const opened = await openStore(`file:${path}`);
  if (!opened.ok) throw new Error(opened.problem.sentence);
  const { stores, deliveries, close } = opened.value;
  const group = await stores.groups.open(groupId("bench"), "Bench");
  const member = await stores.members.open(group.id, "1", "Bench");
  const newId = counter("bench");
  const now = Temporal.Instant.from("2026-10-25T17:00:00Z");
  const { published } = await stores.recipes.publish({
    groupId: group.id,
    by: member.id,
    causeId: causeId("bench publish"),
    now,
    recipe: RECIPE,
    sourceText: "",
    takenFor: {},
    newId,
  });
  return {
    memberId: member.id,
    deliveries,
    instantText,
    close,
    async logOne() {
      const made = batch({
        id: batchId(newId()),
        memberId: member.id,
        revisionId: published.revisionId,
        cookedAt: now,
        cookedOn: dateIn(now, "Etc/UTC"),
      });
      const done = await changeStock({
        stores,
        member,
        now,
        causeId: causeId(newId()),
        newId,
        newBatch: made,
        decide: () => decideLog(made, 2, { at: now, on: made.cookedOn }, () => lotId(newId())),
      });
      if (!done.ok) throw new Error(done.problem.code);
    },
  };
}

/** Writes waiting reminders straight into the file: `due` of them due at `now`, the rest later. */
export function fillReminders(
  path: string,
  member: MemberId,
  now: Instant,
  count: { readonly waiting: number; readonly due: number },
): void {
  const file = new Database(path);
  const insert = file.prepare(
    "INSERT INTO Reminder (id, memberId, key, kind, dueAt, helpsUntil, about, state, attempts) VALUES (?, ?, ?, 'last good day', ?, ?, ?, 'scheduled', 0)",
  );
  const about = JSON.stringify({
    lotId: "lot1",
    title: "Bench pot",
    portions: 1,
    date: "2026-10-26",
    meal: null,
    mealAt: null,
  });
  file.transaction(() => {
    for (let i = 0; i < count.waiting; i += 1) {
      const dueAt =
        i < count.due ? now.subtract({ minutes: i % 60 }) : now.add({ hours: 1 + (i % 1000) });
      insert.run(
        `b${i}`,
        member,
        `bench/${i}`,
        instantText(dueAt),
        instantText(dueAt.add({ hours: 12 })),
        about,
      );
    }
  })();
  file.close();
}
