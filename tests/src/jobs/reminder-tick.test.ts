import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { memberId } from "../../../shared/ids.ts";
import { memberNamed, rowOf, T0 } from "./fake-deliveries.ts";
import { rig } from "./tick-kit.ts";

const NEVER_QUIET = {
  quietFrom: Temporal.PlainTime.from("00:00"),
  quietUntil: Temporal.PlainTime.from("00:00"),
};

describe("what goes out together", () => {
  it("sends what falls due for one member within half an hour as one message", async () => {
    const { tick, arrived } = rig([
      rowOf("a"),
      rowOf("b", { dueAt: T0.add({ minutes: 30 }) }),
      rowOf("c", { dueAt: T0.add({ minutes: 31 }) }),
    ]);
    expect(await tick()).toMatchObject({ sent: 1, retried: 0, failed: 0, errors: 0 });
    expect(arrived()).toEqual(["a,b | "]);
  });

  it("never puts two members into one message", async () => {
    const ben = memberNamed("ben");
    const { tick, platform } = rig(
      [rowOf("a"), rowOf("b", { memberId: ben.id })],
      [memberNamed("ana"), ben],
    );
    await tick();
    expect(platform.stored.map(({ to, reply }) => [to.name, reply.heading])).toEqual([
      ["ana", "a"],
      ["ben", "b"],
    ]);
  });

  it("sends nothing before it is due", async () => {
    const { tick, arrived, clock } = rig([rowOf("a", { dueAt: T0.add({ seconds: 1 }) })]);
    await tick();
    expect(arrived()).toEqual([]);
    clock.advanceTo(T0.add({ seconds: 1 }));
    await tick();
    expect(arrived()).toEqual(["a | "]);
  });

  it("drains more rows than one page holds in one sweep, each exactly once", async () => {
    const members = Array.from({ length: 450 }, (_, n) => memberNamed(`m${n}`));
    const { tick, arrived } = rig(
      members.map((member) => rowOf(`row-${member.name}`, { memberId: member.id })),
      members,
    );
    expect((await tick()).sent).toBe(450);
    expect(new Set(arrived()).size).toBe(450);
  });

  it("joins a call made during a sweep to that sweep", async () => {
    const { tick, arrived } = rig([rowOf("a")]);
    const [first, second] = await Promise.all([tick(), tick()]);
    expect(second).toBe(first);
    expect(arrived()).toEqual(["a | "]);
  });

  it("lets two processes on one store send each message once between them", async () => {
    const members = Array.from({ length: 40 }, (_, n) => memberNamed(`m${n}`));
    const { process, platform } = rig(
      members.map((member) => rowOf(`row-${member.name}`, { memberId: member.id })),
      members,
    );
    const reports = await Promise.all([process({ lanes: 4 })(), process({ lanes: 4 })()]);
    expect(reports.reduce((sum, { sent }) => sum + sent, 0)).toBe(40);
    expect(platform.attempts).toHaveLength(40);
  });
});

describe("when sending fails", () => {
  it("repeats the same nonce after at most 30 s, 1 min, 2 min … 30 min, for as long as it helps", async () => {
    const { tick, clock, platform, deliveries } = rig(
      [rowOf("a", { helpsUntil: T0.add({ hours: 48 }) })],
      [memberNamed("ana", { choice: { ...memberNamed("ana").choice, ...NEVER_QUIET } })],
    );
    platform.script.push(...Array.from({ length: 20 }, () => "lost request" as const));
    const triedAtS: number[] = [];
    for (let next = await deliveries.nextDue(); next !== null; next = await deliveries.nextDue()) {
      clock.advanceTo(next);
      const before = platform.attempts.length;
      await tick();
      if (platform.attempts.length > before) triedAtS.push(T0.until(clock.now()).total("seconds"));
    }
    const waitsS = triedAtS.slice(1).map((at, n) => at - (triedAtS[n] ?? 0));
    expect(waitsS).toHaveLength(20);
    for (const [n, longest] of [30, 60, 120, 240, 480, 960, 1_800, 1_800, 1_800].entries()) {
      expect(waitsS[n]).toBeGreaterThanOrEqual(longest / 2);
      expect(waitsS[n]).toBeLessThanOrEqual(longest);
    }
    expect(new Set(platform.attempts.map(({ nonce }) => nonce)).size).toBe(1);
    expect(platform.attempts.map(({ attempt }) => attempt)).toEqual(
      Array.from({ length: 21 }, (_, index) => index + 1),
    );
    expect(deliveries.state("a")).toBe("sent");
  });

  it("gives up once it no longer helps", async () => {
    const { tick, clock, platform, deliveries } = rig([
      rowOf("a", { helpsUntil: T0.add({ hours: 2 }) }),
    ]);
    platform.script.push(...Array.from({ length: 99 }, () => "lost request" as const));
    for (let next = await deliveries.nextDue(); next !== null; next = await deliveries.nextDue()) {
      clock.advanceTo(next);
      await tick();
    }
    expect(deliveries.state("a")).toBe("expired");
  });

  it("waits as long as the platform asks", async () => {
    const { tick, clock, platform, arrived } = rig([rowOf("a")]);
    platform.script.push({ kind: "unknown", reason: "rate limited", retryAfterMs: 90_000 });
    expect(await tick()).toMatchObject({ sent: 0, retried: 1 });
    clock.advanceTo(T0.add({ seconds: 89 }));
    await tick();
    expect(arrived()).toEqual([]);
    clock.advanceTo(T0.add({ seconds: 90 }));
    await tick();
    expect(arrived()).toEqual(["a | "]);
  });

  it("does not repeat what cannot succeed, and notes that direct messages are closed", async () => {
    const { tick, clock, platform, deliveries } = rig([rowOf("a")]);
    platform.script.push({ kind: "impossible", reason: "closed", directClosed: true });
    expect(await tick()).toMatchObject({ failed: 1 });
    clock.advanceTo(T0.add({ hours: 1 }));
    await tick();
    expect(platform.attempts).toHaveLength(1);
    expect(deliveries.directClosed.get("ana")).toEqual(T0);
    expect(deliveries.state("a")).toBe("failed");
  });

  it("notes that direct messages work again once one arrives", async () => {
    const { tick, deliveries } = rig([rowOf("a")], [memberNamed("ana", { directClosedAt: T0 })]);
    await tick();
    expect(deliveries.directClosed.get("ana")).toBeNull();
  });

  it("notes closed direct messages when the group's channel carried the reminder instead", async () => {
    const { tick, platform, deliveries } = rig([rowOf("a")]);
    platform.script.push({ kind: "sent", messageId: "m", where: "channel", directClosed: true });
    expect(await tick()).toMatchObject({ sent: 1 });
    expect(deliveries.directClosed.get("ana")).toEqual(T0);
  });

  it("keeps one message that cannot be worded from holding up the others", async () => {
    const ben = memberNamed("ben");
    const { process, arrived } = rig(
      [rowOf("a"), rowOf("b", { memberId: ben.id })],
      [memberNamed("ana"), ben],
    );
    const report = await process({
      render: ({ member }) => {
        if (member.name === "ana") throw new Error("a bug in the wording");
        return { ...emptyReply, heading: "b" };
      },
    })();
    expect(report).toMatchObject({ sent: 1, retried: 1 });
    expect(arrived()).toEqual(["b | "]);
  });

  it("fails the reminders of a member who is gone", async () => {
    const { tick, deliveries, platform } = rig([rowOf("a", { memberId: memberId("nobody") })]);
    await tick();
    expect(platform.attempts).toEqual([]);
    expect(deliveries.state("a")).toBe("failed");
  });
});

const emptyReply = {
  heading: "",
  alerts: [],
  parts: [],
  pictures: [],
  prints: [],
  cautions: [],
  buttons: [],
  choices: [],
  files: [],
  audience: "private",
} as const;
