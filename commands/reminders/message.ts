import { Temporal } from "temporal-polyfill";
import { helpsAt, LATER, laterAt } from "../../shared/reminder/again.ts";
import { isWelcome } from "../../shared/reminder/hold.ts";
import type { ReminderChoice, ReminderRow } from "../../shared/reminder/types.ts";
import { dateIn, type Instant, isBefore, isDateBefore } from "../../shared/time.ts";
import { writeHalves } from "../../shared/words/halves.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate, writeWhen } from "../../shared/words/write-when.ts";
import type { Group, Member } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";
import { type Button, type Reply, reply, text } from "../kit/reply.ts";
import { newsButtons, sayNews } from "./news.ts";

export interface ReminderInput {
  readonly member: Member;
  readonly group: Group;
  /** What is due, in order; may be empty when all of it came too late. */
  readonly rows: readonly ReminderRow[];
  /** What came too late to help. */
  readonly late: readonly ReminderRow[];
  readonly now: Instant;
  readonly nonce: string;
}

const BUTTONS_MAX = 10;

/** Most urgent first. */
const ORDER: Readonly<Record<ReminderRow["kind"], number>> = {
  "discard today": 0,
  "into the fridge": 1,
  "last good day": 2,
  "thaw tonight": 3,
  "freeze the surplus": 4,
  "freezer quality": 5,
  "recipe changed": 6,
  "recipe withdrawn": 7,
};

/** One message for everything that falls due together. */
export function reminderReply(input: ReminderInput): Reply {
  const { choice } = input.member;
  const rows = inOrder(input.rows);
  const lines = [...heldLine(rows, choice), ...new Set(rows.map((row) => sayRow(row, input)))];
  const late = lateLine(input.late, choice.zone);
  const [first, ...more] = lines;
  return reply(first ?? late ?? "Nothing to remind you of.", {
    parts: [...more, ...(first !== undefined && late !== null ? [late] : [])].map((line) =>
      text(line),
    ),
    cautions: rows.some((row) => row.kind === "discard today")
      ? ["Do not taste it to find out: food can make you ill and smell fine."]
      : [],
    buttons: [
      ...rows
        .flatMap((row) => buttonsOf(row, input, tag(row, rows, choice.zone)))
        .slice(0, BUTTONS_MAX - LATER.length),
      ...laterButtons(rows, choice, input.now),
    ],
  });
}

function inOrder(rows: readonly ReminderRow[]): readonly ReminderRow[] {
  return [...rows].sort((a, b) => ORDER[a.kind] - ORDER[b.kind] || (a.key < b.key ? -1 : 1));
}

/** Above what was held while the member was away and still holds. */
function heldLine(rows: readonly ReminderRow[], choice: ReminderChoice): readonly string[] {
  const isBack = rows.some(({ dueAt }) => isWelcome(dueAt, choice));
  return isBack ? ["Welcome back. What was held and still holds:"] : [];
}

/** For the whole message, where some of it would still help then. */
function laterButtons(
  rows: readonly ReminderRow[],
  choice: ReminderChoice,
  now: Instant,
): readonly Button[] {
  const hour = laterAt("hour", choice, now);
  return LATER.flatMap((later): readonly Button[] => {
    const at = laterAt(later, choice, now);
    const isNoLater = later === "tonight" && at !== null && hour !== null && !isBefore(hour, at);
    const row =
      at === null || isNoLater ? undefined : rows.find((one) => helpsAt(one, at, choice, now));
    if (row === undefined) return [];
    const id = writePress("reminders", "later", row.id, later);
    return [{ id, label: later === "hour" ? "In an hour" : "Tonight", weight: "plain" }];
  });
}

/** The line for one reminder, its dates in the member's zone. */
export function sayRow(
  row: ReminderRow,
  { member, now }: Pick<ReminderInput, "member" | "now">,
): string {
  const { zone } = member.choice;
  const { about } = row;
  const what = `${count(about.portions, "portion")} of ${about.title}`;
  const [it, was] = about.portions <= 1 ? ["it", "it was"] : ["them", "they were"];
  const date = about.date === null ? null : Temporal.PlainDate.from(about.date);
  const day = date === null ? "its date" : writeDate(date);
  const at = about.mealAt === null ? "" : writeWhen(Temporal.Instant.from(about.mealAt), zone);
  switch (row.kind) {
    case "thaw tonight":
      return `Move ${what} from the freezer to the fridge: for ${at} ${about.meal ?? "meal"}.`;
    case "last good day":
      return date?.equals(dateIn(now, zone)) === true
        ? `Last good day for ${what}: eat ${it} today.`
        : `Last good day for ${what} is ${day}.`;
    case "discard today":
      return date !== null && !isDateBefore(date, dateIn(now, zone))
        ? `From tomorrow throw away ${what}: good until ${day} only.`
        : `Throw away ${what}: ${was} good until ${day}.`;
    case "freeze the surplus":
      return `Freeze ${what} now: no meal takes ${it} by ${day}.`;
    case "into the fridge":
      return `Put ${about.title} into the fridge by ${at}: two hours after cooking is the limit. Shallow boxes cool fastest.`;
    case "freezer quality":
      return `Best eaten by ${day}: ${what} in the freezer. Safe later, but not as good.`;
    case "recipe changed":
    case "recipe withdrawn":
      return sayNews(row);
  }
}

function lateLine(late: readonly ReminderRow[], zone: string): string | null {
  const [first] = late;
  if (first === undefined) return null;
  const what = first.kind === "thaw tonight" ? "to thaw" : first.kind;
  const more = late.length > 1 ? ` and ${late.length - 1} more` : "";
  return `I was away and missed a reminder (${what}: ${first.about.title}, ${writeWhen(first.dueAt, zone)}${more}). Type /stock to see what is good.`;
}

/** Tells the buttons of several lots in one message apart: by the food, and by the day where the food is the same. */
function tag(row: ReminderRow, all: readonly ReminderRow[], zone: string): string {
  const { about } = row;
  const isOneFood = all.every((other) => other.about.title === about.title);
  const alike = all.filter((other) => other.about.title === about.title).length;
  const food = isOneFood
    ? ""
    : ` ${about.title.length > 12 ? `${about.title.slice(0, 11)}…` : about.title}`;
  return alike > 1 ? `${food} (${dayOf(row, zone)})` : food;
}

function dayOf({ about }: ReminderRow, zone: string): string {
  if (about.mealAt !== null) {
    const at = Temporal.Instant.from(about.mealAt).toZonedDateTimeISO(zone);
    return writeDate(at.toPlainDate());
  }
  return about.date === null ? "" : writeDate(Temporal.PlainDate.from(about.date));
}

function buttonsOf(row: ReminderRow, { nonce }: ReminderInput, tagged: string): readonly Button[] {
  const { about } = row;
  const button = (kind: string, label: string, weight: Button["weight"]): Button => ({
    id: writePress("stock", "remind", about.lotId ?? "", kind, about.portions, nonce, row.id),
    label: `${label}${tagged}`.slice(0, 34),
    weight,
  });
  const n = writeHalves(about.portions);
  switch (row.kind) {
    case "thaw tonight":
      return [button("thaw", `Set ${n} to thaw`, "main")];
    case "discard today":
      return [
        button("threw", `Threw away ${n}`, "grave"),
        button("ate", `Ate ${n} before`, "plain"),
      ];
    case "last good day":
      return [button("ate", `Ate ${n}`, "main"), button("gave", `Gave away ${n}`, "plain")];
    case "freeze the surplus":
      return [button("froze", `Froze ${n}`, "main")];
    case "recipe changed":
      return newsButtons(row, tagged);
    case "into the fridge":
    case "freezer quality":
    case "recipe withdrawn":
      return [];
  }
}
