import { Temporal } from "temporal-polyfill";
import { reply } from "../../../commands/kit/reply.ts";
import { groupId, memberId } from "../../../shared/ids.ts";
import type { OutgoingMessage } from "../../../src/jobs/ports.ts";
import type { Rig } from "./rig.ts";

/** What a test of the messenger may vary. */
export interface Varied extends Partial<Omit<OutgoingMessage, "to" | "group">> {
  readonly channelId?: string | null;
  readonly deliverTo?: "direct message" | "channel";
}

/** A reminder for Mika; the group's second channel is for reminders unless a test says otherwise. */
export function outgoing(rig: Rig, varied: Varied = {}): OutgoingMessage {
  const { channelId = rig.guild.channels[1]?.id ?? null, deliverTo, ...rest } = varied;
  const at = (time: string) => Temporal.PlainTime.from(time);
  return {
    to: {
      id: memberId("m1"),
      groupId: groupId(rig.guild.id),
      userId: rig.mika.id,
      name: "Mika",
      zoneIsOwn: false,
      choice: {
        zone: "Europe/Amsterdam",
        morning: at("07:30"),
        evening: at("19:00"),
        quietFrom: at("22:00"),
        quietUntil: at("07:00"),
        pausedUntil: null,
        pausesSafety: false,
      },
      deliverTo: deliverTo ?? "direct message",
      directClosedAt: null,
      profile: { allergens: [], vulnerable: [], coachMaySetTargets: false },
      wantsRecipeNews: true,
      planVersion: 0,
    },
    group: {
      id: groupId(rig.guild.id),
      name: "Sunday Prep",
      coachRoleId: null,
      reminderChannelId: channelId,
      zone: "Europe/Amsterdam",
      labelStyle: "eu",
      foodsVersion: 0,
      recipesVersion: 0,
    },
    nonce: "r-2026-11-25-abc",
    attempt: 1,
    since: Temporal.Now.instant().subtract({ hours: 1 }),
    wordedAt: Temporal.Now.instant().round({ smallestUnit: "second", roundingMode: "floor" }),
    isOurs: () => true,
    onlyLooks: false,
    reply: reply("Move 2 portions of chilli to the fridge tonight"),
    ...rest,
  };
}
