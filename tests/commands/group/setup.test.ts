import { describe, expect, it } from "vitest";
import { groupSetup } from "../../../commands/group/setup.ts";
import { Refusal } from "../../../commands/kit/command.ts";
import type { Group, Groups } from "../../../commands/kit/ports.ts";
import { GROUP, readAloud, storesWith, testContext } from "../../kit/recipes-and-context.ts";

/** A group in memory, and what was written to it. */
function memoryGroups(): { readonly groups: Groups; readonly group: () => Group } {
  let group = GROUP;
  const groups: Groups = {
    open: async () => group,
    set: async (_id, patch) => {
      group = { ...group, ...patch };
      return group;
    },
  };
  return { groups, group: () => group };
}

describe("/group setup labels", () => {
  it("keeps the style and shows by which rules figures go from then on", async () => {
    const { groups, group } = memoryGroups();
    const context = testContext({ stores: storesWith({ groups }) });
    const said = readAloud(await groupSetup.run(context, { labels: "US" }));
    expect(group().labelStyle).toBe("us");
    expect(said).toMatch(/^The group is set up\./u);
    expect(said).toContain("Labels: US (21 CFR 101.9");
    expect(group().zone).toBe(GROUP.zone);
  });

  it("stays as it is when left out", async () => {
    const { groups, group } = memoryGroups();
    const context = testContext({ stores: storesWith({ groups }) });
    const said = readAloud(await groupSetup.run(context, {}));
    expect(group().labelStyle).toBe("eu");
    expect(said).toContain("Labels: EU (Regulation 1169/2011");
  });

  it("refuses any other word with what to type", async () => {
    const { groups, group } = memoryGroups();
    const context = testContext({ stores: storesWith({ groups }) });
    await expect(groupSetup.run(context, { labels: "uk" })).rejects.toThrow(
      new Refusal("Labels are us or eu: type one of them."),
    );
    expect(group().labelStyle).toBe("eu");
  });
});
