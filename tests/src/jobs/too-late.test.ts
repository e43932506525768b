import { describe, expect, it } from "vitest";
import { isBefore } from "../../../shared/time.ts";
import { rowOf, T0 } from "./fake-deliveries.ts";
import { type Rig, rig } from "./tick-kit.ts";

describe("what came too late", () => {
  const tooLate = { helpsUntil: T0 };

  it("is mentioned in the member's next message, once, and recorded as expired", async () => {
    const { tick, arrived, deliveries } = rig([rowOf("a"), rowOf("old", tooLate)]);
    expect(await tick()).toMatchObject({ sent: 1, expired: 1 });
    await tick();
    expect(arrived()).toEqual(["a | old"]);
    expect([deliveries.state("a"), deliveries.state("old")]).toEqual(["sent", "expired"]);
    expect(deliveries.reason("old")).toContain("too late");
  });

  it("is told in a message of its own when nothing else is due", async () => {
    const { tick, arrived, deliveries } = rig([rowOf("old", tooLate), rowOf("older", tooLate)]);
    await tick();
    await tick();
    expect(arrived()).toEqual([" | old,older"]);
    expect(deliveries.state("older")).toBe("expired");
  });

  it("is not told twice when the answer of the first try was lost", async () => {
    const { tick, arrived, clock, platform, deliveries } = rig([rowOf("a"), rowOf("old", tooLate)]);
    platform.script.push("lost answer");
    await tick();
    expect(deliveries.state("old")).toBe("claimed");
    clock.advanceTo(T0.add({ seconds: 30 }));
    await tick();
    expect(arrived()).toEqual(["a | old"]);
    expect([deliveries.state("a"), deliveries.state("old")]).toEqual(["sent", "expired"]);
  });

  it("is not taken for told when an earlier message, which did not tell it, is found to have arrived", async () => {
    const { tick, arrived, clock, platform, deliveries } = rig([
      rowOf("a"),
      rowOf("old", { dueAt: T0.add({ minutes: 40 }), helpsUntil: T0.add({ minutes: 41 }) }),
    ]);
    platform.script.push("lost answer");
    await tick();
    clock.advanceTo(T0.add({ hours: 1 }));
    await tick();
    expect(arrived()).toEqual(["a | ", " | old"]);
    expect([deliveries.state("a"), deliveries.state("old")]).toEqual(["sent", "expired"]);
  });

  it("does not become so by being found late: what an earlier try told in time is recorded as sent", async () => {
    const { tick, clock, platform, deliveries, arrived } = rig([
      rowOf("a", { helpsUntil: T0.add({ minutes: 5 }) }),
      rowOf("old", tooLate),
    ]);
    platform.script.push("lost answer", {
      kind: "sent",
      messageId: "m",
      where: "direct message",
      directClosed: false,
      wordedAt: T0,
    });
    await tick();
    clock.advanceTo(T0.add({ hours: 3 }));
    await tick();
    expect(arrived()).toEqual(["a | old"]);
    expect([deliveries.state("a"), deliveries.state("old")]).toEqual(["sent", "expired"]);
  });

  it("stays with its message when only part of a repeated message came too late", async () => {
    const { tick, arrived, clock, platform, deliveries } = rig([
      rowOf("a"),
      rowOf("b", { helpsUntil: T0.add({ seconds: 20 }) }),
    ]);
    platform.script.push("lost request");
    await tick();
    clock.advanceTo(T0.add({ seconds: 30 }));
    await tick();
    expect(arrived()).toEqual(["a | b"]);
    expect([deliveries.state("a"), deliveries.state("b")]).toEqual(["sent", "expired"]);
  });
});

/** Sweeps whenever something falls due, until nothing does. */
async function untilSettled({ tick, clock, deliveries }: Rig): Promise<void> {
  for (let next = await deliveries.nextDue(); next !== null; next = await deliveries.nextDue()) {
    clock.advanceTo(next);
    await tick();
  }
}

describe("what came too late and was sent often enough", () => {
  const lost = (times: number) => Array.from({ length: times }, () => "lost request" as const);
  const old = () => rig([rowOf("old", { helpsUntil: T0 })]);

  it("is told when the last try turns out to have arrived", async () => {
    const late = old();
    late.platform.script.push(...lost(7), "lost answer", ...lost(3));
    await untilSettled(late);
    expect(late.arrived()).toEqual([" | old"]);
    expect(late.platform.attempts.map(({ onlyLooks }) => onlyLooks)).toEqual([
      ...Array.from({ length: 8 }, () => false),
      ...Array.from({ length: 4 }, () => true),
    ]);
    expect(late.deliveries.reason("old")).toBe("came too late to help; the member was told");
  });

  it("is not sent again when no try arrived, and shows as untold", async () => {
    const late = old();
    late.platform.script.push(...lost(8));
    await untilSettled(late);
    expect(late.arrived()).toEqual([]);
    expect(late.platform.attempts).toHaveLength(9);
    expect(late.deliveries.state("old")).toBe("expired");
    expect(late.deliveries.reason("old")).toBe("came too late; no try arrived");
  });

  it("is looked for for two days, then shows as untold, and says that it may have arrived", async () => {
    const late = old();
    late.platform.script.push(...lost(7), "lost answer", ...lost(999));
    await untilSettled(late);
    expect(T0.until(late.clock.now()).total("hours")).toBeGreaterThanOrEqual(48);
    expect(T0.until(late.clock.now()).total("hours")).toBeLessThan(49);
    expect(late.deliveries.reason("old")).toMatch(/^came too late; it may have arrived; /u);
  });

  it("is sent as such, however often it was tried while it helped", async () => {
    const helpsUntil = T0.add({ hours: 3 });
    const late = rig([rowOf("old", { helpsUntil })]);
    for (
      let next = T0;
      isBefore(next, helpsUntil);
      next = (await late.deliveries.nextDue()) ?? helpsUntil
    ) {
      late.platform.script.push("lost request");
      late.clock.advanceTo(next);
      await late.tick();
    }
    expect(late.platform.attempts.length).toBeGreaterThan(8);
    await untilSettled(late);
    expect(late.arrived()).toEqual([" | old"]);
    expect(late.deliveries.state("old")).toBe("expired");
  });
});
