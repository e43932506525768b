import type { TargetRule } from "../../shared/target/types.ts";
import type { Context } from "../kit/context.ts";
import type { SayBy } from "./target-rows.ts";
import type { Whose } from "./whose.ts";

/** Makes the words for who took each decision, looking every name up once. */
export async function sayByOf(
  context: Context,
  whose: Whose,
  rules: readonly TargetRule[],
): Promise<SayBy> {
  const { stores, member: asker } = context;
  const names = new Map<string, string>();
  for (const id of new Set(rules.flatMap(({ setBy }) => setBy ?? []))) {
    if (id === asker.id || id === whose.member.id) continue;
    const found = await stores.members.find(id);
    if (found !== null) names.set(id, found.name);
  }
  return ({ setBy }) => {
    if (setBy === asker.id) return "set by you";
    if (setBy === whose.member.id) return `set by ${whose.member.name}`;
    const name = names.get(setBy ?? "");
    return name === undefined
      ? "set by somebody who has left"
      : `set by ${name}, with ${whose.isSelf ? "your" : "the member's"} consent`;
  };
}
