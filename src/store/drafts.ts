import type { Drafts, RecipeDraft } from "../../commands/kit/ports.ts";
import { draftId, groupId, memberId } from "../../shared/ids.ts";
import { fromText, takenForDocument, toColumn, toInstant, toText } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { patiently } from "./patience.ts";

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

function toDraft(row: Prisma.DraftGetPayload<object>): RecipeDraft {
  return {
    id: draftId(row.id),
    groupId: groupId(row.groupId),
    by: memberId(row.memberId),
    title: row.title,
    text: row.text,
    takenFor: fromText(takenForDocument, row.takenFor),
    changedAt: toInstant(row.changedAt),
  };
}
