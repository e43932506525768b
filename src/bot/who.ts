import { Refusal } from "../../commands/kit/command.ts";
import type { Actor } from "../../commands/kit/context.ts";
import type { Group, Member, Stores } from "../../commands/kit/ports.ts";
import { groupId, lotId, type MemberId, reminderId } from "../../shared/ids.ts";
import type { Asked } from "./face.ts";
import type { MarkedPress } from "./mark.ts";

/** The group and the member a request is answered for. */
export interface Standing {
  readonly group: Group;
  readonly member: Member;
}

/** Opens the group and the member's own row in it, both under the names they bear now. */
export async function standingInGroup(stores: Stores, asked: Asked): Promise<Standing> {
  const { groupName, actor } = asked;
  const id = groupId(asked.groupId);
  const known = await stores.members.known(id, actor.userId);
  // Nearly always: one look instead of two, at every letter that is typed for a completion.
  if (known?.group.name === groupName && known.member.name === actor.name) return known;
  const group = await stores.groups.open(id, groupName);
  return { group, member: await stores.members.open(id, actor.userId, actor.name) };
}

/**
 * A press in a direct message names no group: its mark does, or else the lot or reminder in its first
 * argument. Null when there is no such thing or it is somebody else's; the two are not told apart, so
 * that nobody learns from the answer whose it is.
 */
async function standingByPress(
  stores: Stores,
  groupOf: (member: MemberId) => Promise<Group | null>,
  userId: string,
  press: MarkedPress,
): Promise<Standing | null> {
  const owner = press.markedFor ?? (await ownerOf(stores, press.args[0]));
  const member = owner === null ? null : await stores.members.find(owner);
  if (member === null || member.userId !== userId) return null;
  const group = await groupOf(member.id);
  return group === null ? null : { group, member };
}

/** One sentence for "somebody else's" and "no such thing": it must not tell which. */
const NOT_YOURS =
  "This button is not yours to press, or what it spoke of is gone. Type /stock in your group to see what you have.";

/** The same for a request as it comes in; a refusal where there is none. */
export async function standingOrRefuse(
  parts: {
    readonly stores: Stores;
    readonly groupOf: (member: MemberId) => Promise<Group | null>;
  },
  { actor }: Asked,
  press: MarkedPress,
): Promise<Standing> {
  const standing = await standingByPress(parts.stores, parts.groupOf, actor.userId, press);
  if (standing === null) throw new Refusal(NOT_YOURS);
  return standing;
}

async function ownerOf(stores: Stores, thing: string | undefined): Promise<MemberId | null> {
  if (thing === undefined) return null;
  const found = await stores.stocks.findLot(lotId(thing));
  if (found !== null) return found.batch.memberId;
  return (await stores.reminders.find(reminderId(thing)))?.memberId ?? null;
}

/** The coach: whoever may manage the server, and whoever bears the group's coach role. */
export function isCoachOf(group: Group, actor: Actor): boolean {
  return (
    actor.isManager || (group.coachRoleId !== null && actor.roleIds.includes(group.coachRoleId))
  );
}
