import { describe, expect, it } from "vitest";
import type { TickReport } from "../../../src/jobs/reminder-tick.ts";
import { startSchedule } from "../../../src/jobs/schedule.ts";
import { type Log, silentLog } from "../../../src/log.ts";

const nothing: TickReport = {
  replanned: 0,
  sent: 0,
  retried: 0,
  failed: 0,
  expired: 0,
  errors: 0,
};

describe("the schedule", () => {
  it("sweeps at once when it starts, and its stop waits for the sweep under way", async () => {
    const events: string[] = [];
    let finish: (report: TickReport) => void = () => undefined;
    const sweep = new Promise<TickReport>((resolve) => {
      finish = resolve;
    });
    const schedule = startSchedule(() => {
      events.push("sweep begins");
      return sweep.finally(() => events.push("sweep ends"));
    }, silentLog);
    const stopped = schedule.stop().then(() => events.push("stopped"));
    expect(events).toEqual(["sweep begins"]);
    finish(nothing);
    await stopped;
    expect(events).toEqual(["sweep begins", "sweep ends", "stopped"]);
  });

  it("writes a line of log for a sweep that did something, none for one that did not", async () => {
    const lines: object[] = [];
    const log: Log = { ...silentLog, info: (fields) => lines.push(fields) };
    await startSchedule(async () => nothing, log).stop();
    await startSchedule(async () => ({ ...nothing, sent: 2 }), log).stop();
    expect(lines).toEqual([{ ...nothing, sent: 2 }]);
  });
});
