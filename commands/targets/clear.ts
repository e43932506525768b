import { z } from "zod";
import { decideClear } from "../../shared/target/decide.ts";
import { command } from "../kit/command.ts";
import { optionalText, weekdaysText } from "../kit/options.ts";
import { reply, text } from "../kit/reply.ts";
import { record } from "./record.ts";
import { sayByOf } from "./said-by.ts";
import { laterPart, weekPart, writeWeekdays } from "./target-rows.ts";
import { whoseTargets } from "./whose.ts";

const EVERY_DAY = [1, 2, 3, 4, 5, 6, 7];

export const targetsClear = command({
  path: ["targets", "clear"],
  description: "End targets from today on, those planned for later with them",
  who: "everyone",
  options: [
    {
      name: "days",
      description: "For which days, such as Sat Sun; every day if left out",
      required: false,
      kind: "text",
    },
    {
      name: "member",
      description: "For the coach: whose targets, if they let you",
      required: false,
      kind: "member",
    },
  ],
  input: z.object({
    days: weekdaysText.default(EVERY_DAY),
    member: optionalText(100),
  }),
  handle: async (context, input) => {
    const whose = await whoseTargets(context, input.member);
    const { member, isSelf, today } = whose;
    const before = await context.stores.targets.list(member.id);
    const ended = decideClear(before, input.days, today);
    const days = writeWeekdays(input.days);
    const of = isSelf ? "" : ` of ${member.name}`;
    if (ended.length === 0) {
      return reply(`No targets${of}, ${days} from today on: there is nothing to clear.`);
    }
    const rules = await record(context, whose, before, ended);
    const sayBy = await sayByOf(context, whose, rules);
    return reply(`Cleared: no targets${of}, ${days} from today on.`, {
      parts: [
        ...weekPart(rules, today, today, sayBy),
        ...laterPart(rules, today, today, sayBy),
        text("What held before stays on record: /targets show."),
      ],
    });
  },
});
