import type { Drafts } from "../../commands/kit/ports.ts";
import { takenForDocument, toColumn, toText } from "./documents.ts";
import type { PrismaClient } from "./generated/client.ts";
import { patiently } from "./patience.ts";
import { toDraft } from "./rows.ts";

export function prismaDrafts(db: PrismaClient): Drafts {
  return {
    list: async (by) => {
      const rows = await db.draft.findMany({
        where: { memberId: by },
        orderBy: [{ changedAt: "desc" }, { id: "asc" }],
      });
      return rows.map(toDraft);
    },

    find: async (id) => {
      const row = await db.draft.findUnique({ where: { id } });
      return row === null ? null : toDraft(row);
    },

    save: async (draft) => {
      const { id, groupId, by, title, text } = draft;
      const said = {
        title,
        text,
        takenFor: toText(takenForDocument, draft.takenFor),
        changedAt: toColumn(draft.changedAt),
      };
      await patiently(() =>
        db.draft.upsert({
          where: { id },
          create: { id, groupId, memberId: by, ...said },
          update: said,
        }),
      );
    },

    drop: async (id) => {
      await patiently(() => db.draft.deleteMany({ where: { id } }));
    },
  };
}
