import type { KeepingWord, KeepingWords } from "../../commands/kit/keeping-words.ts";
import { memberId, revisionId } from "../../shared/ids.ts";
import {
  confirmedDocument,
  fromText,
  keepingWordKind,
  toColumn,
  toInstant,
  toText,
} from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { isConflict, patiently } from "./patience.ts";

const WITH_COACH = { by: { select: { id: true, name: true } } } as const;

function toWord(row: Prisma.KeepingWordGetPayload<{ include: typeof WITH_COACH }>): KeepingWord {
  return {
    revisionId: revisionId(row.revisionId),
    position: row.position,
    kind: keepingWordKind.parse(row.kind),
    parts: fromText(confirmedDocument, row.document),
    by: row.by === null ? null : { id: memberId(row.by.id), name: row.by.name },
    at: toInstant(row.at),
  };
}

export function prismaKeepingWords(db: PrismaClient): KeepingWords {
  return {
    list: async (groupId, revision) => {
      const rows = await db.keepingWord.findMany({
        where: { revisionId: revision, revision: { recipe: { groupId } } },
        orderBy: { position: "asc" },
        include: WITH_COACH,
      });
      return rows.map(toWord);
    },

    add: async ({ groupId, parts, by, at, ...word }) => {
      const of = { id: word.revisionId, recipe: { groupId } };
      if ((await db.revision.findFirst({ where: of })) === null) return "moved on";
      const document = toText(confirmedDocument, parts);
      const data = { ...word, document, byId: by, at: toColumn(at) };
      try {
        await patiently(() =>
          db.$transaction([
            db.keepingWord.create({ data }),
            // What is kept of the group's recipes in memory holds no longer.
            db.group.update({
              where: { id: groupId },
              data: { recipesVersion: { increment: 1 } },
            }),
          ]),
        );
        return "recorded";
      } catch (error) {
        if (!isConflict(error)) throw error;
        const { causeId } = word;
        const before = await db.keepingWord.findUnique({ where: { causeId } });
        return before === null ? "moved on" : "already";
      }
    },
  };
}
