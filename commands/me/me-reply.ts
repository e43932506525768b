import type { Profile } from "../../shared/people/types.ts";
import { type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { allOf } from "./say-stated.ts";

/** What is stored of a member, what each is for, and what was just changed. Only ever for that member. */
export function meReply(
  profile: Profile,
  changed: Partial<Profile>,
  alerts: readonly string[],
): Reply {
  return reply(headingOf(profile, changed), {
    alerts,
    parts: [
      rows(null, [avoidRow(profile), tableRow(profile), coachRow(profile)]),
      text(
        "Only you see this page. Your coach sees nothing of it but, with your yes, your targets.",
        "Change one: /me allergens:nuts, milk · /me table:under five · /me coach:no. The others stay. None and nobody clear.",
      ),
    ],
    cautions: [
      "I know only what recipes and packs say, and traces I do not know. The label in your hand and your doctor, midwife or dietitian come first.",
    ],
    audience: "private",
  });
}

function headingOf(profile: Profile, changed: Partial<Profile>): string {
  const said = [
    changed.allergens === undefined
      ? ""
      : profile.allergens.length === 0
        ? "you avoid nothing"
        : `you avoid ${allOf(profile.allergens)}`,
    changed.vulnerable === undefined
      ? ""
      : profile.vulnerable.length === 0
        ? "nobody vulnerable eats with you"
        : `at your table: ${allOf(profile.vulnerable)}`,
    changed.coachMaySetTargets === undefined
      ? ""
      : `your coach may ${profile.coachMaySetTargets ? "" : "not "}see and set your targets`,
  ].filter((one) => one !== "");
  return said.length === 0 ? "What you have told me about yourself" : `Kept: ${said.join("; ")}.`;
}

function avoidRow({ allergens }: Profile): Row {
  return {
    label: "Avoided",
    figure: allergens.length === 0 ? "nothing stated" : allergens.join(", "),
    note:
      allergens.length === 0
        ? "so no recipe warns you; set it with allergens:"
        : "every card, list and plan that contains it, may hide it or is not known says so first",
  };
}

function tableRow({ vulnerable }: Profile): Row {
  return {
    label: "At your table",
    figure: vulnerable.length === 0 ? "nobody stated" : vulnerable.join(", "),
    note: "for stricter cautions: raw egg and fish, sprouts, soft cheese, cold meats; dates then follow the published chart, never a coach's longer word",
  };
}

function coachRow({ coachMaySetTargets }: Profile): Row {
  return {
    label: "Coach and your targets",
    figure: coachMaySetTargets ? "may see and set them" : "may not see them",
    note: coachMaySetTargets ? "coach:no ends it at once" : "coach:yes allows it",
  };
}
