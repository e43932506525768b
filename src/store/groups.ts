import type { Groups } from "../../commands/kit/ports.ts";
import type { PrismaClient } from "./generated/client.ts";
import { patiently } from "./patience.ts";
import { AT_ONCE } from "./reminder-rewrite.ts";
import { toGroup } from "./rows.ts";

/** Until the coach says otherwise. */
const DEFAULT_ZONE = "Etc/UTC";

export function prismaGroups(db: PrismaClient): Groups {
  return {
    open: async (id, name) => {
      const known = await db.group.findUnique({ where: { id } });
      if (known?.name === name) return toGroup(known);
      const create = { id, name, zone: DEFAULT_ZONE };
      return toGroup(
        await patiently(() => db.group.upsert({ where: { id }, create, update: { name } })),
      );
    },

    set: async (id, patch) => {
      const write = () => db.group.update({ where: { id }, data: patch });
      // Who has no zone of their own lives by the group's: their reminders are derived again. Also of
      // those who have nothing waiting: they may be logging their first batch at this moment.
      const askReplan = () =>
        db.member.updateMany({
          where: { groupId: id, zoneIsOwn: false },
          data: { replanAt: AT_ONCE },
        });
      if (patch.zone === undefined) return toGroup(await patiently(write));
      const [row] = await patiently(() => db.$transaction([write(), askReplan()]));
      return toGroup(row);
    },
  };
}
