import { z } from "zod";
import { readAllergens } from "../../shared/allergen/read.ts";
import { readTable } from "../../shared/people/read-table.ts";
import type { Profile } from "../../shared/people/types.ts";
import { dateIn } from "../../shared/time.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { optionalText, yesNo } from "../kit/options.ts";
import { loadStock, replanMember } from "../kit/plan.ts";
import { meReply } from "./me-reply.ts";
import { sayOtherDates } from "./other-dates.ts";
import {
  droppedAllergens,
  sayAllergenProblem,
  sayAllergenRemark,
  sayTableProblem,
} from "./say-stated.ts";

export const me = command({
  path: ["me"],
  description: "What you avoid, who eats with you, and what your coach may see",
  who: "everyone",
  options: [
    {
      name: "allergens",
      description:
        "All that somebody at your table must not eat, such as nuts and milk; none clears it",
      required: false,
      kind: "text",
    },
    {
      name: "table",
      description: "Who eats along: pregnant, under five, over 65, weak immune system; or nobody",
      required: false,
      kind: "text",
    },
    {
      name: "coach",
      description: "Whether your coach may see and set your daily targets",
      required: false,
      kind: "yes-no",
    },
  ],
  input: z.object({
    allergens: optionalText(200),
    table: optionalText(200),
    coach: yesNo.optional(),
  }),
  handle: async (context, input) => {
    const { patch, alerts } = read(input, context.member.profile);
    const { profile, told } = await keep(context, patch);
    return meReply(profile, patch, [...told, ...alerts]);
  },
});

/**
 * Stores what was stated. Who eats along decides whose keeping times count, so the dates and reminders
 * of what is in stock follow in the same write.
 */
async function keep(
  { stores, member, now }: Context,
  patch: Partial<Profile>,
): Promise<{ readonly profile: Profile; readonly told: readonly string[] }> {
  if (Object.keys(patch).length === 0) return { profile: member.profile, told: [] };
  if (patch.vulnerable === undefined) {
    return { profile: (await stores.members.setProfile(member.id, patch)).profile, told: [] };
  }
  const before = await loadStock(stores, member);
  await replanMember(stores, member, now, { profile: patch });
  const after = (await stores.members.find(member.id)) ?? member;
  const stock = await loadStock(stores, after);
  const today = dateIn(now, after.choice.zone);
  return { profile: after.profile, told: sayOtherDates(before, stock, today) };
}

interface Typed {
  readonly allergens?: string | undefined;
  readonly table?: string | undefined;
  readonly coach?: boolean | undefined;
}

/** What is to be stored, and what must be said of it; refuses all when any of it is not understood. */
function read(
  input: Typed,
  before: Profile,
): { readonly patch: Partial<Profile>; readonly alerts: readonly string[] } {
  const stated = input.allergens === undefined ? null : readAllergens(input.allergens);
  const table = input.table === undefined ? null : readTable(input.table);
  const refused = [
    ...(stated === null || stated.ok ? [] : [sayAllergenProblem(stated.problem)]),
    ...(table === null || table.ok ? [] : [sayTableProblem(table.problem)]),
  ];
  if (refused.length > 0) throw new Refusal([...refused, "Nothing was changed."]);
  const { coach } = input;
  return {
    patch: {
      ...(stated?.ok === true ? { allergens: stated.value.allergens } : {}),
      ...(table?.ok === true ? { vulnerable: table.value } : {}),
      ...(coach === undefined ? {} : { coachMaySetTargets: coach }),
    },
    alerts:
      stated?.ok === true
        ? [
            ...droppedAllergens(before.allergens, stated.value.allergens),
            ...stated.value.remarks.map(sayAllergenRemark),
          ]
        : [],
  };
}
