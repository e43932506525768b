import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import type { ReminderChoice, ReminderRow } from "../../shared/reminder/types.ts";
import { type Instant, isBefore, type PlainTime } from "../../shared/time.ts";
import { fold } from "../../shared/words/fold.ts";
import { readTimeOfDay } from "../../shared/words/read-time-of-day.ts";
import { writeTime, writeWhen } from "../../shared/words/write-when.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { optionalText, timeText, yesNo, zoneText } from "../kit/options.ts";
import { type MemberPatch, replanMember } from "../kit/plan.ts";
import { type Reply, reply, rows, text } from "../kit/reply.ts";
import { awayUntil, readAway } from "./away.ts";
import { currentReminders } from "./current.ts";
import { pressLater } from "./later.ts";
import { sayRow } from "./message.ts";

const SHOWN = 12;

export const reminders = command({
  path: ["reminders"],
  description: "What is coming, and when, where and how you are told",
  who: "everyone",
  options: [
    {
      name: "morning",
      description: "When to be told in the morning, such as 08:00",
      required: false,
      kind: "text",
    },
    {
      name: "evening",
      description: "When to be told in the evening, such as 19:00 or 7pm",
      required: false,
      kind: "text",
    },
    {
      name: "quiet",
      description: "Hours without messages, such as 22:00-07:00, or none",
      required: false,
      kind: "text",
    },
    {
      name: "zone",
      description: "Your time zone, such as Europe/Lisbon",
      required: false,
      kind: "text",
      complete: completeZone,
    },
    {
      name: "where",
      description: "By direct message, or in the group's channel",
      required: false,
      kind: "text",
      choices: ["direct message", "channel"],
    },
    {
      name: "away",
      description:
        "Hold all but safety reminders, such as until Sun or 3 days; add all to hold all; off when back",
      required: false,
      kind: "text",
    },
    {
      name: "recipes",
      description: "Whether you are told when a recipe that you have changes or is withdrawn",
      required: false,
      kind: "yes-no",
    },
  ],
  input: z.object({
    morning: timeText.optional(),
    evening: timeText.optional(),
    quiet: optionalText(30),
    zone: zoneText.optional(),
    where: z
      .enum(["direct message", "channel"], { error: "Type where:direct message or where:channel." })
      .optional(),
    away: optionalText(40),
    recipes: yesNo.optional(),
  }),
  handle: async (context, input) => {
    const choice = choiceOf(context, input);
    const { recipes } = input;
    const isReplanned = Object.keys(choice).length > 0 || input.where !== undefined;
    if (!isReplanned && recipes === undefined) return coming(context, null);
    checkOrder({ ...context.member.choice, ...choice });
    const patch: MemberPatch = {
      choice,
      ...(input.where === undefined ? {} : { deliverTo: input.where }),
    };
    if (recipes !== undefined) {
      await context.stores.members.setRecipeNews(context.member.id, recipes);
    }
    if (isReplanned) await replanMember(context.stores, context.member, context.now, patch);
    const member = (await context.stores.members.find(context.member.id)) ?? context.member;
    const named = Object.entries(input).flatMap(([name, value]) => {
      if (value === undefined) return [];
      return name === "away" ? [sayAway(member.choice, context.now)] : [name];
    });
    return coming({ ...context, member }, `Noted: ${named.join(", ")}.`);
  },
  actions: { later: pressLater },
});

interface Wanted {
  readonly morning?: PlainTime | undefined;
  readonly evening?: PlainTime | undefined;
  readonly quiet?: string | undefined;
  readonly zone?: string | undefined;
  readonly away?: string | undefined;
}

/** Of when a member is told, what they change. */
function choiceOf({ member, now }: Context, input: Wanted): NonNullable<MemberPatch["choice"]> {
  const { morning, evening } = input;
  const zone = input.zone ?? member.choice.zone;
  return {
    ...(morning === undefined ? {} : { morning }),
    ...(evening === undefined ? {} : { evening }),
    ...(input.zone === undefined ? {} : { zone, zoneIsOwn: true }),
    ...(input.quiet === undefined ? {} : quietHours(input.quiet)),
    ...(input.away === undefined ? {} : readAway(input.away, now, { ...member.choice, zone })),
  };
}

function sayAway(choice: ReminderChoice, now: Instant): string {
  const until = awayUntil(choice, now);
  return until === null ? "you are back" : `away until ${writeWhen(until, choice.zone)}`;
}

function quietHours(typed: string): Pick<ReminderChoice, "quietFrom" | "quietUntil"> {
  if (["none", "off", "no"].includes(fold(typed))) {
    const midnight = Temporal.PlainTime.from("00:00");
    return { quietFrom: midnight, quietUntil: midnight };
  }
  const [from, until, ...rest] = typed.split(/\s*(?:-|–|\bto\b)\s*/u);
  const start = readTimeOfDay(from ?? "");
  const end = readTimeOfDay(until ?? "");
  if (!start.ok || !end.ok || rest.length > 0) {
    throw new Refusal(`“${typed}” is not a span of hours: type such as 22:00-07:00, or none.`);
  }
  return { quietFrom: start.value, quietUntil: end.value };
}

function checkOrder(choice: ReminderChoice): void {
  if (Temporal.PlainTime.compare(choice.morning, choice.evening) >= 0) {
    throw new Refusal("The morning time must be before the evening time. Nothing was changed.");
  }
}

async function completeZone(
  _context: Context,
  typed: string,
): Promise<readonly { label: string; value: string }[]> {
  const wanted = fold(typed).replaceAll(" ", "");
  return Intl.supportedValuesOf("timeZone")
    .filter((zone) => fold(zone).replaceAll(" ", "").includes(wanted))
    .slice(0, 25)
    .map((zone) => ({ label: zone, value: zone }));
}

/** "due now" for what the sweep has yet to send. */
function whenOf({ dueAt }: ReminderRow, { member, now }: Context): string {
  return isBefore(now, dueAt) ? writeWhen(dueAt, member.choice.zone) : "due now";
}

function later(a: Instant, b: Instant): Instant {
  return isBefore(a, b) ? b : a;
}

async function coming(context: Context, lead: string | null): Promise<Reply> {
  const { stores, member } = context;
  const kept = await stores.reminders.coming(member.id, SHOWN);
  // What was put off or waits for a retry may have been dealt with since, or have come too late.
  const list = (await currentReminders(stores, member, kept, context.now))
    .map(({ row }) => row)
    .filter(({ helpsUntil }) => isBefore(context.now, helpsUntil));
  const away = awayUntil(member.choice, context.now);
  const { choice } = member;
  const [next] = list;
  const answer =
    next === undefined ? "No reminders are coming." : `Next reminder: ${whenOf(next, context)}.`;
  return reply(lead === null ? answer : `${lead} ${answer}`, {
    parts: [
      ...(list.length === 0
        ? []
        : [
            rows(
              "Coming",
              list.map((row) => ({
                label: whenOf(row, context),
                figure: sayRow(row, { member, now: later(row.dueAt, context.now) }),
              })),
            ),
          ]),
      rows("How you are told", [
        { label: "Morning", figure: writeTime(choice.morning) },
        { label: "Evening", figure: writeTime(choice.evening) },
        {
          label: "Quiet",
          figure: choice.quietFrom.equals(choice.quietUntil)
            ? "none"
            : `${writeTime(choice.quietFrom)} to ${writeTime(choice.quietUntil)}`,
        },
        {
          label: "Zone",
          figure: choice.zone,
          ...(member.zoneIsOwn ? {} : { note: "the group's; set yours with zone:" }),
        },
        { label: "Where", figure: member.deliverTo },
        {
          label: "Recipes",
          figure: member.wantsRecipeNews
            ? "told when one you have changes"
            : "changes are not told",
        },
        ...(away === null
          ? []
          : [
              {
                label: "Away until",
                figure: writeWhen(away, choice.zone),
                note: choice.pausesSafety
                  ? "all is held, also what is to be thrown away; then I tell what still holds"
                  : "only safety reminders come; then I tell what still holds",
              },
            ]),
      ]),
      ...(member.directClosedAt === null
        ? []
        : [
            text(
              "Your direct messages are closed to me. Open them in this server's privacy settings, or type where:channel.",
            ),
          ]),
    ],
  });
}
