import { describe, expect, it } from "vitest";
import { rowOf, T0 } from "./fake-deliveries.ts";
import { rig } from "./tick-kit.ts";

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
