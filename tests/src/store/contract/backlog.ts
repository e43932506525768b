import { describe, expect, test } from "vitest";
import { settleDue } from "../claim-kit.ts";
import type { Given } from "../contract.ts";
import { later, NOW, remind, reminder, world } from "../kit.ts";

const SENT = { state: "sent", messageId: "m", where: "direct message" } as const;

export function backlogContract({ store }: Given): void {
  describe("the backlog", () => {
    test("counts what is due and not being sent, and tells since when the oldest waits", async () => {
      const w = await world(store());
      const { upkeep } = store();
      expect(await upkeep.backlog(NOW)).toEqual({ due: 0, oldestDueAt: null });
      const due = [-30, -20, -10, 0, 1].map((minutes) =>
        reminder(`k${minutes}`, { dueAt: later(minutes) }),
      );
      await remind(w, due);
      expect(await upkeep.backlog(NOW)).toEqual({ due: 4, oldestDueAt: later(-30) });
      await settleDue(w, later(-30), SENT);
      await settleDue(w, later(-20), null);
      expect(await upkeep.backlog(NOW)).toEqual({ due: 2, oldestDueAt: later(-10) });
      // Two minutes on, the lease of the one has run out and another has fallen due.
      expect(await upkeep.backlog(later(2))).toEqual({ due: 4, oldestDueAt: later(-20) });
    });

    test("counts what waits for its next try, but not what waits for its member", async () => {
      const w = await world(store());
      const { upkeep } = store();
      await remind(
        w,
        [-30, -20, -10].map((minutes) => reminder(`k${minutes}`, { dueAt: later(minutes) })),
      );
      await settleDue(w, later(-30), { state: "waits", until: later(60) });
      expect(await upkeep.backlog(NOW)).toEqual({ due: 2, oldestDueAt: later(-20) });
      await settleDue(w, later(-20), { state: "retry", retryAt: later(30), reason: "error 500" });
      expect(await upkeep.backlog(NOW)).toEqual({ due: 2, oldestDueAt: later(-20) });
      await settleDue(w, later(-10), SENT);
      expect(await upkeep.backlog(NOW)).toEqual({ due: 1, oldestDueAt: later(-20) });
      // An hour on, the member's wait is over too.
      expect(await upkeep.backlog(later(60))).toEqual({ due: 2, oldestDueAt: later(-30) });
    });
  });
}
