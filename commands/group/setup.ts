import { z } from "zod";
import { command } from "../kit/command.ts";
import { idText, zoneText } from "../kit/options.ts";
import { reply, rows } from "../kit/reply.ts";

export const groupSetup = command({
  path: ["group", "setup"],
  description: "The coach's role, the reminder channel and the group's time zone",
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
  ],
  input: z.object({
    coach: idText.optional(),
    channel: idText.optional(),
    zone: zoneText.optional(),
  }),
  handle: async (context, input) => {
    const group = await context.stores.groups.set(context.group.id, {
      ...(input.coach === undefined ? {} : { coachRoleId: input.coach }),
      ...(input.channel === undefined ? {} : { reminderChannelId: input.channel }),
      ...(input.zone === undefined ? {} : { zone: input.zone }),
    });
    const changed = Object.values(input).some((value) => value !== undefined);
    return reply(changed ? "The group is set up." : "The group as it is set up.", {
      parts: [
        rows(null, [
          {
            label: "Coach role",
            figure:
              group.coachRoleId === null
                ? "not set: whoever manages the server"
                : `role ${group.coachRoleId}`,
          },
          {
            label: "Reminder channel",
            figure:
              group.reminderChannelId === null ? "not set" : `channel ${group.reminderChannelId}`,
            note: "used when direct messages are closed",
          },
          { label: "Time zone", figure: group.zone, note: "for members who set none" },
        ]),
      ],
    });
  },
});
