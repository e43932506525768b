import Database from "better-sqlite3";
import type { Instant } from "../../../shared/time.ts";
import type { PostgresServer } from "../../src/store/postgres-server.ts";

/** How many of each a table is filled with. Row i is member i mod `members`', as rows come in practice. */
export interface Fill {
  readonly groups: number;
  readonly members: number;
  /** Reminders, those that are due included. */
  readonly waiting: number;
  /** Due at the instant; the rest fall due one second after another from an hour later on. */
  readonly due: number;
}

const ABOUT = JSON.stringify({
  lotId: "lot1",
  title: "Bench pot",
  portions: 1,
  date: "2026-10-26",
  meal: null,
  mealAt: null,
});
const CHOICES = "'Etc/UTC', '08:00', '19:00', '22:00', '07:00', 'direct message'";
const MEMBER_COLUMNS = `"id", "groupId", "userId", "name", "replanAt",
  "zone", "morning", "evening", "quietFrom", "quietUntil", "deliverTo"`;
const REMINDER_COLUMNS = `"id", "memberId", "key", "kind", "dueAt", "helpsUntil", "about"`;

/** Written straight into the file, which nobody has open: through the store a million rows take an hour. */
export function fillFile(path: string, at: Instant, fill: Fill): void {
  const file = new Database(path);
  const time = (shift: string) =>
    `strftime('%Y-%m-%dT%H:%M:%f+00:00', ${at.epochMilliseconds / 1_000} + ${shift}, 'unixepoch')`;
  const series = (count: number) =>
    `WITH RECURSIVE s(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM s WHERE i + 1 < ${count})`;
  file.pragma("synchronous = OFF");
  file.exec(`BEGIN;
    ${series(fill.groups)}
    INSERT INTO "Group" ("id", "name", "zone") SELECT 'g' || i, 'Kitchen ' || i, 'Etc/UTC' FROM s;
    ${series(fill.members)}
    INSERT INTO "Member" (${MEMBER_COLUMNS})
      SELECT 'm' || i, 'g' || (i % ${fill.groups}), 'u' || i, 'Ana', ${time("7200")}, ${CHOICES}
        FROM s;
    ${series(fill.waiting)}
    INSERT INTO "Reminder" (${REMINDER_COLUMNS})
      SELECT 'r' || i, 'm' || (i % ${fill.members}), 'k' || i, 'last good day',
             ${time(dueShift(fill.due))}, ${time(`${dueShift(fill.due)} + 43200`)}, '${ABOUT}'
        FROM s;
    COMMIT;`);
  file.pragma("wal_checkpoint(TRUNCATE)");
  file.close();
}

/** Seconds from the instant at which row i falls due. */
function dueShift(due: number): string {
  return `(CASE WHEN i < ${due} THEN 0 ELSE 3600 + i - ${due} END)`;
}

/** The same on a server. */
export async function fillServer(
  server: PostgresServer,
  url: string,
  at: Instant,
  fill: Fill,
): Promise<void> {
  const series = (count: number) => `generate_series(0, ${count - 1}) AS i`;
  const time = (shift: string) =>
    `timestamp '${at.toString().replace("Z", "")}' + make_interval(secs => ${shift})`;
  await server.ask(
    url,
    `INSERT INTO "Group" ("id", "name", "zone")
       SELECT 'g' || i, 'Kitchen ' || i, 'Etc/UTC' FROM ${series(fill.groups)};
     INSERT INTO "Member" (${MEMBER_COLUMNS})
       SELECT 'm' || i, 'g' || (i % ${fill.groups}), 'u' || i, 'Ana', ${time("7200")}, ${CHOICES}
         FROM ${series(fill.members)};
     INSERT INTO "Reminder" (${REMINDER_COLUMNS})
       SELECT 'r' || i, 'm' || (i % ${fill.members}), 'k' || i, 'last good day',
              ${time(dueShift(fill.due))}, ${time(`${dueShift(fill.due)} + 43200`)}, '${ABOUT}'
         FROM ${series(fill.waiting)};
     ANALYZE`,
  );
  await server.ask(url, 'VACUUM "Reminder"');
}
