import { z } from "zod";
import { command } from "../kit/command.ts";
import { idText, wordText, zoneText } from "../kit/options.ts";
import type { Group } from "../kit/ports.ts";
import { type Row, reply, rows } from "../kit/reply.ts";

const STYLES = ["us", "eu"] as const;

export const groupSetup = command({
  path: ["group", "setup"],
  description: "The coach's role, the reminder channel, the time zone and how figures are labelled",
  who: "coach",
  options: [
    {
      name: "coach",
      description: "The role whose holders are coaches here",
      required: false,
      kind: "role",
    },
    {
      name: "channel",
      description: "Where reminders go when direct messages are closed",
      required: false,
      kind: "channel",
    },
    {
      name: "zone",
      description: "Time zone of members who set none, such as Europe/Lisbon",
      required: false,
      kind: "text",
    },
    {
      name: "labels",
      description: "How figures are shown: us (sodium, daily values) or eu (kJ, fibre apart, salt)",
      required: false,
      kind: "text",
      choices: STYLES,
    },
  ],
  input: z.object({
    coach: idText.optional(),
    channel: idText.optional(),
    zone: zoneText.optional(),
    labels: wordText(STYLES, "Labels are us or eu: type one of them.").optional(),
  }),
  handle: async (context, input) => {
    const group = await context.stores.groups.set(context.group.id, {
      ...(input.coach === undefined ? {} : { coachRoleId: input.coach }),
      ...(input.channel === undefined ? {} : { reminderChannelId: input.channel }),
      ...(input.zone === undefined ? {} : { zone: input.zone }),
      ...(input.labels === undefined ? {} : { labelStyle: input.labels }),
    });
    const changed = Object.values(input).some((value) => value !== undefined);
    return reply(changed ? "The group is set up." : "The group as it is set up.", {
      parts: [rows(null, setupRows(group))],
    });
  },
});

const STYLE_WORDS: Readonly<Record<Group["labelStyle"], { figure: string; note: string }>> = {
  us: { figure: "US", note: "21 CFR 101.9: sodium, daily values, carbohydrate with fiber" },
  eu: { figure: "EU", note: "Regulation 1169/2011: kJ and kcal, carbohydrate without fibre, salt" },
};

function setupRows(group: Group): readonly Row[] {
  const { coachRoleId, reminderChannelId } = group;
  return [
    {
      label: "Coach role",
      figure: coachRoleId === null ? "not set: whoever manages the server" : `role ${coachRoleId}`,
    },
    {
      label: "Reminder channel",
      figure: reminderChannelId === null ? "not set" : `channel ${reminderChannelId}`,
      note: "used when direct messages are closed",
    },
    { label: "Time zone", figure: group.zone, note: "for members who set none" },
    { label: "Labels", ...STYLE_WORDS[group.labelStyle] },
  ];
}
