import { UNTOLD } from "../../src/jobs/ports.ts";

/** A reminder as the database has it at the end. */
export interface EndRow {
  readonly key: string;
  readonly state: string;
  readonly reason: string | null;
  readonly nonce: string | null;
  readonly dueMs: number;
  readonly settledMs: number | null;
}

/** A message as the platform stored it. */
export interface EndMessage {
  readonly text: string;
  readonly nonce: string | null;
}

/** How one member's reminders ended. */
export interface EndOf {
  readonly name: string;
  readonly titles: readonly string[];
  readonly rows: readonly EndRow[];
  /** What the platform stored for them, wherever. */
  readonly messages: readonly EndMessage[];
  /** How many of their reminders the coach is shown as having reached nobody. */
  readonly shownToCoach: number;
}

export interface Verdict {
  readonly problems: readonly string[];
  readonly sent: number;
  readonly toldLate: number;
  readonly failed: number;
  readonly doubled: number;
  readonly lost: number;
  readonly lagsMs: readonly number[];
}

const LATE = /missed a reminder \((?<what>.*?)(?: and (?<more>\d+) more)?\)\. Type/gu;

/** What a member read: how often each reminder in time, and how many too late. */
function readBy(messages: readonly EndMessage[], titles: readonly string[]) {
  const times = new Map(titles.map((title) => [title, 0]));
  let late = 0;
  for (const { text } of messages) {
    for (const { groups } of text.matchAll(LATE)) late += 1 + Number(groups?.["more"] ?? 0);
    const inTime = text.replaceAll(LATE, "");
    for (const title of titles) {
      if (inTime.includes(title)) times.set(title, (times.get(title) ?? 0) + 1);
    }
  }
  return { times, late };
}

/**
 * Holds what the database says became of a member's reminders against what the platform stored: each
 * was told once, or the record says why not and the coach sees it.
 */
export function judge({ name, titles, rows, messages, shownToCoach }: EndOf): Verdict {
  const problems: string[] = [];
  let [doubled, lost, toldLate, unseen] = [0, 0, 0, 0];
  const { times, late } = readBy(messages, titles);
  for (const title of titles) {
    const row = rows.find(({ key }) => key === title);
    const told = times.get(title) ?? 0;
    const say = (what: string): unknown =>
      problems.push(`${name}, ${title}: ${what} (${row?.state}, ${row?.reason}, told ${told})`);
    if (told > 1) {
      doubled += 1;
      say("told more than once");
    }
    if (row === undefined) {
      lost += 1;
      say("the row is gone");
    } else if (row.state === "sent") {
      if (told === 0) {
        lost += 1;
        say("recorded as sent and never told");
      }
    } else if (row.state === "scheduled" || row.state === "claimed") {
      lost += 1;
      say("still waiting");
    } else {
      if (told > 0) say("told, and recorded as if not");
      if (row.state === "failed" || row.reason?.startsWith(UNTOLD) === true) unseen += 1;
      else toldLate += 1;
    }
  }
  if (late > toldLate) {
    doubled += late - toldLate;
    problems.push(`${name}: told of ${late} that came too late, ${toldLate} are recorded so`);
  }
  if (late < toldLate) {
    lost += toldLate - late;
    problems.push(`${name}: told of ${late} that came too late, ${toldLate} are recorded so`);
  }
  if (shownToCoach !== unseen) {
    lost += Math.max(0, unseen - shownToCoach);
    problems.push(`${name}: ${unseen} reached nobody, the coach is shown ${shownToCoach}`);
  }
  const nonces = messages.flatMap(({ nonce }) => nonce ?? []);
  if (new Set(nonces).size < nonces.length) {
    problems.push(`${name}: two messages under one nonce`);
  }
  const sentRows = rows.filter(({ state }) => state === "sent");
  return {
    problems,
    sent: sentRows.length,
    toldLate,
    failed: unseen,
    doubled,
    lost,
    lagsMs: sentRows.flatMap(({ dueMs, settledMs }) =>
      settledMs === null ? [] : [Math.max(0, settledMs - dueMs)],
    ),
  };
}
