import type { PostgresServer } from "../postgres-server.ts";

const ABOUT = JSON.stringify({
  lotId: "lot",
  title: "Barley pot",
  portions: 2,
  date: "2026-10-14",
  meal: "Lunch",
  mealAt: "2026-10-12T12:00:00Z",
});

/**
 * Members m1, m2 ... of one group, each due for replanning and with some reminders (key k1, k2 ...),
 * all at the instant. By SQL, because through the store thousands take minutes.
 */
export async function fill(
  server: PostgresServer,
  url: string,
  counts: { readonly members: number; readonly each: number },
  at: string,
): Promise<void> {
  const instant = `timestamp '${at.replace("Z", "")}'`;
  await server.ask(
    url,
    `INSERT INTO "Group" ("id", "name", "zone") VALUES ('g', 'Kitchen', 'Etc/UTC');
     INSERT INTO "Member" ("id", "groupId", "userId", "name", "zone", "morning", "evening",
                           "quietFrom", "quietUntil", "deliverTo", "replanAt")
       SELECT 'm' || i, 'g', 'u' || i, 'Ana', 'Etc/UTC', '08:00', '19:00', '22:00', '07:00',
              'channel', ${instant} FROM generate_series(1, ${counts.members}) i;
     INSERT INTO "Reminder" ("id", "memberId", "key", "kind", "dueAt", "helpsUntil", "about")
       SELECT 'r' || i || '.' || k, 'm' || i, 'k' || k, 'thaw tonight', ${instant},
              ${instant} + interval '10 hours', '${ABOUT}'
         FROM generate_series(1, ${counts.members}) i, generate_series(1, ${counts.each}) k;
     ANALYZE`,
  );
}
