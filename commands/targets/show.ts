import { z } from "zod";
import { figuresOn, type HeldTarget, targetsByDay } from "../../shared/target/holding.ts";
import type { TargetRule } from "../../shared/target/types.ts";
import { writeTarget } from "../../shared/target/write.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { command } from "../kit/command.ts";
import { optionalText } from "../kit/options.ts";
import { type Reply, reply, text } from "../kit/reply.ts";
import { sayByOf } from "./said-by.ts";
import { beforePart, laterPart, type SayBy, weekPart, writeFrom } from "./target-rows.ts";
import { pregnancyAlert, type Whose, whoseTargets } from "./whose.ts";

export const targetsShow = command({
  path: ["targets", "show"],
  description: "What a day of yours should hold, since when, and what comes later",
  who: "everyone",
  options: [
    {
      name: "member",
      description: "For the coach: whose targets, if they let you",
      required: false,
      kind: "member",
    },
  ],
  input: z.object({ member: optionalText(100) }),
  handle: async (context, input) => {
    const whose = await whoseTargets(context, input.member);
    const rules = await context.stores.targets.list(whose.member.id);
    return showReply(whose, rules, await sayByOf(context, whose, rules));
  },
});

function showReply(whose: Whose, rules: readonly TargetRule[], sayBy: SayBy): Reply {
  const { today } = whose;
  const held = figuresOn(rules, today);
  const holdsAtAll = targetsByDay(rules, today).some((day) => day.held !== null);
  return reply(headingOf(whose, held), {
    alerts: holdsAtAll ? pregnancyAlert(whose) : [],
    parts: [
      ...(held === null
        ? []
        : [text(`Since ${writeFrom(held.since, today)}, ${sayBy(held.rule)}.`)]),
      ...weekPart(rules, today, today, sayBy),
      ...laterPart(rules, today, today, sayBy),
      ...beforePart(rules, today, sayBy),
      ...(rules.length === 0
        ? [text("Set some: /targets set energy:2100 kcal protein:120 g. Any of them will do.")]
        : []),
    ],
  });
}

function headingOf({ member, isSelf, today }: Whose, held: HeldTarget | null): string {
  const when = isSelf ? "Today" : `${member.name} today`;
  return `${when}, ${writeDate(today)}: ${held === null ? "no target" : writeTarget(held.figures)}`;
}
