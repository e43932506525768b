import type { Targets } from "../../commands/kit/ports.ts";
import { figuresDocument, toColumn, toText, weekdaysDocument } from "./documents.ts";
import type { PrismaClient } from "./generated/client.ts";
import { isConflict, patiently } from "./patience.ts";
import { toTarget } from "./rows.ts";

export function prismaTargets(db: PrismaClient): Targets {
  return {
    list: async (memberId) => {
      const rows = await db.target.findMany({
        where: { memberId },
        orderBy: [{ setAt: "asc" }, { id: "asc" }],
      });
      return rows.map(toTarget);
    },

    add: async (rule, causeId) => {
      const row = {
        id: rule.id,
        memberId: rule.memberId,
        causeId,
        from: rule.from.toString(),
        weekdays: toText(weekdaysDocument, rule.weekdays),
        figures: toText(figuresDocument, rule.figures),
        setById: rule.setBy,
        setAt: toColumn(rule.setAt),
      };
      try {
        await patiently(() => db.target.createMany({ data: [row] }));
      } catch (error) {
        // The cause decides: the same request twice finds its row and leaves it as it is.
        const before = isConflict(error) && (await db.target.findUnique({ where: { causeId } }));
        if (!before) throw error;
      }
    },
  };
}
