import { describe, expect, test } from "vitest";
import { manualClock } from "../../../../src/clock.ts";
import { type App, compose } from "../../../../src/compose.ts";
import type { Messenger, OutgoingMessage, SendResult } from "../../../../src/jobs/ports.ts";
import { silentLog } from "../../../../src/log.ts";
import { NOW } from "../kit.ts";
import type { PostgresRun } from "../postgres-place.ts";
import { fill } from "./fill.ts";

const COUNTS = { members: 60, each: 2 };
const PROCESSES = 3;

/** The platform as the processes share it: one message for one nonce, however often it is sent. */
class Platform implements Messenger {
  readonly messages = new Map<string, OutgoingMessage>();
  sends = 0;
  /** Every so many sends arrive, and say that nobody knows. */
  readonly #vague: number;

  constructor(vague: number) {
    this.#vague = vague;
  }

  async send(message: OutgoingMessage): Promise<SendResult> {
    this.sends += 1;
    const vague = this.sends % this.#vague === 0;
    // Another turn of the event loop, in which the other processes go on.
    await new Promise(setImmediate);
    if (!this.messages.has(message.nonce)) this.messages.set(message.nonce, message);
    return vague
      ? { kind: "unknown", reason: "cut off", retryAfterMs: null }
      : { kind: "sent", messageId: message.nonce, where: "channel", directClosed: false };
  }
}

export function ticksOnServer(given: () => PostgresRun): void {
  describe("the sweeps of several processes on it", () => {
    const sweeping = async (vague: number, rounds: number) => {
      const { url } = await given().place();
      await fill(given().server, url, COUNTS, String(NOW));
      const clock = manualClock(NOW);
      const platform = new Platform(vague);
      const apps: App[] = [];
      for (let i = 0; i < PROCESSES; i++) {
        const app = await compose({ face: "discord", databaseUrl: url, clock, log: silentLog });
        if (!app.ok) throw new Error(app.problem.sentence);
        apps.push(app.value);
      }
      const ticks = apps.map((app) => app.tickFor(platform));
      const reports = [];
      for (let round = 0; round < rounds; round++) {
        reports.push(...(await Promise.all(ticks.map((tick) => tick()))));
        clock.advanceTo(clock.now().add({ minutes: 3 }));
      }
      await Promise.all(apps.map((app) => app.close()));
      const states = await given().server.ask(
        url,
        `SELECT "state", count(*)::int AS n FROM "Reminder" GROUP BY 1 ORDER BY 1`,
      );
      return { platform, reports, states };
    };
    const total = (reports: readonly Record<string, number>[], what: string): number =>
      reports.reduce((sum, report) => sum + (report[what] ?? 0), 0);

    test("send each message once and derive each member once, though they sweep at the same time", async () => {
      const { platform, reports, states } = await sweeping(Number.POSITIVE_INFINITY, 1);
      expect(platform.sends).toBe(COUNTS.members);
      const to = [...platform.messages.values()].map((message) => message.to.id);
      expect(new Set(to).size).toBe(COUNTS.members);
      const counted = reports.map((report) => ({ ...report }));
      expect(total(counted, "sent")).toBe(COUNTS.members);
      expect(total(counted, "replanned")).toBe(COUNTS.members);
      expect(total(counted, "errors")).toBe(0);
      expect(states).toEqual([{ state: "sent", n: COUNTS.members * COUNTS.each }]);
      // The work was shared.
      expect(reports.filter(({ sent }) => sent > 0).length).toBeGreaterThan(1);
    });

    test("repeat under the same nonce what nobody knows of, whichever process comes to it", async () => {
      const { platform, reports, states } = await sweeping(4, 5);
      expect(platform.sends).toBeGreaterThan(COUNTS.members);
      expect(platform.messages.size).toBe(COUNTS.members);
      expect(
        total(
          reports.map((report) => ({ ...report })),
          "errors",
        ),
      ).toBe(0);
      expect(states).toEqual([{ state: "sent", n: COUNTS.members * COUNTS.each }]);
    });
  });
}
