import { dateIn, type PlainDate } from "../../shared/time.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { Member } from "../kit/ports.ts";

/** Whose targets a request is about, and their day. */
export interface Whose {
  readonly member: Member;
  readonly isSelf: boolean;
  /** In that member's zone. */
  readonly today: PlainDate;
}

/**
 * The asker, or the member the coach named and who lets the coach. Read anew for every request, so that a
 * consent taken back holds at once. One sentence for "no such member" and "does not let you": it must
 * not tell which, and nothing about that member.
 */
export async function whoseTargets(context: Context, named: string | undefined): Promise<Whose> {
  const { stores, group, member, isCoach, now } = context;
  const found = named === undefined ? member : await stores.members.inGroup(group.id, named);
  const isSelf = found?.id === member.id;
  if (!isSelf && !isCoach) {
    throw new Refusal(
      "A member's targets are theirs: only the group's coach can see or set them, and only if that member lets them. Leave member out for your own.",
    );
  }
  if (found === null || !(isSelf || found.profile.coachMaySetTargets)) {
    throw new Refusal(
      "That member has not let the coach see or set their targets. They can allow it with /me coach:yes.",
    );
  }
  return { member: found, isSelf, today: dateIn(now, found.choice.zone) };
}

/** For the member alone: who eats with them is not the coach's to learn. */
export function pregnancyAlert({ member, isSelf }: Whose): readonly string[] {
  return isSelf && member.profile.vulnerable.includes("pregnant")
    ? [
        "Somebody at your table is pregnant, says your /me. If that is you, do not eat by figures set here: a midwife, doctor or registered dietitian sets them.",
      ]
    : [];
}
