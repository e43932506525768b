import { describe, expect, it } from "vitest";
import { memberNamed, rowOf, T0 } from "./fake-deliveries.ts";
import { rig } from "./tick-kit.ts";

describe("a message under way", () => {
  it("is not taken into another lane of the same sweep when the clock jumps over its lease", async () => {
    const members = [memberNamed("ana"), memberNamed("ben")];
    const rows = members.map(({ name, id }) => rowOf(name, { memberId: id }));
    const { process, deliveries, platform, clock } = rig(rows, members);
    let letGo = (): void => undefined;
    const looked = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    const look = deliveries.abandoned.bind(deliveries);
    deliveries.abandoned = async (now, limit) => {
      const found = await look(now, limit);
      if (found.length > 0) letGo();
      return found;
    };
    const send: typeof platform.send = async (message) => {
      if (message.to.name === "ben") clock.advanceTo(T0.add({ minutes: 5 }));
      else await looked;
      return platform.send(message);
    };
    const tick = process({ lanes: 2, messenger: { send } });
    expect(await tick()).toMatchObject({ sent: 2, errors: 0 });
    expect(platform.attempts.map(({ to, attempt }) => `${to.name} ${attempt}`)).toEqual([
      "ben 1",
      "ana 1",
    ]);
  });
});

describe("a message that waited too long for a lane", () => {
  it("is not begun on the rest of its lease, and comes back when that has run out", async () => {
    const members = [memberNamed("ana"), memberNamed("ben")];
    const rows = members.map(({ name, id }) => rowOf(name, { memberId: id }));
    const { process, deliveries, platform, clock } = rig(rows, members);
    const claimNext = deliveries.claimNext.bind(deliveries);
    deliveries.claimNext = (input) => claimNext({ ...input, limit: 2 });
    const send: typeof platform.send = async (message) => {
      clock.advanceTo(clock.now().add({ seconds: 58 }));
      return platform.send(message);
    };
    const tick = process({ messenger: { send } });
    expect(await tick()).toMatchObject({ sent: 1, errors: 0 });
    expect(deliveries.state("ben")).toBe("claimed");
    clock.advanceTo(T0.add({ minutes: 2 }));
    expect(await tick()).toMatchObject({ sent: 1 });
    expect(platform.attempts.map(({ to, attempt }) => `${to.name} ${attempt}`)).toEqual([
      "ana 1",
      "ben 2",
    ]);
  });
});

describe("what waits for its member", () => {
  it("uses up no tries: a night of looking again, and the first error waits half a minute at most", async () => {
    // Half past midnight, and quiet until seven; too late for an hour.
    const night = T0.add({ hours: 8 });
    const { tick, clock, platform, deliveries, arrived } = rig([
      rowOf("a", { dueAt: T0.add({ hours: 1 }), helpsUntil: T0.add({ hours: 7 }) }),
    ]);
    platform.script.push("lost request");
    for (let quarter = 0; quarter < 4 * 9; quarter += 1) {
      clock.advanceTo(night.add({ minutes: 15 * quarter }));
      await tick();
      if (platform.attempts.length > 0) break;
    }
    expect(platform.attempts.map(({ attempt }) => attempt)).toEqual([1]);
    expect(deliveries.state("a")).toBe("claimed");
    clock.advanceTo(clock.now().add({ seconds: 30 }));
    await tick();
    expect(arrived()).toEqual([" | a"]);
    expect(deliveries.state("a")).toBe("expired");
  });
});

describe("what cannot be read", () => {
  it("is told as it was derived where nobody can say whether it is still true", async () => {
    const { process, clock, arrived } = rig([rowOf("a"), rowOf("b")]);
    clock.advanceTo(T0.add({ minutes: 20 }));
    const current = async () => Promise.reject(new Error("a batch that cannot be read"));
    expect(await process({ current })()).toMatchObject({ sent: 1, errors: 0 });
    expect(arrived()).toEqual(["a,b | "]);
  });

  it("of a member holds up nobody else, and is tried again in case it is mended", async () => {
    const members = [memberNamed("ana"), memberNamed("ben")];
    const rows = members.map(({ name, id }) => rowOf(name, { memberId: id }));
    const { process, deliveries, clock, arrived } = rig(rows, members);
    const recipients = deliveries.recipients.bind(deliveries);
    let isSpoilt = true;
    deliveries.recipients = async (ids) => {
      const found = await recipients(ids);
      return new Map(
        [...found].map(([id, one]) => [id, isSpoilt && id === "ana" ? "unreadable" : one]),
      );
    };
    const tick = process({ lanes: 8 });
    expect(await tick()).toMatchObject({ sent: 1, retried: 1, errors: 0 });
    expect(arrived()).toEqual(["ben | "]);
    isSpoilt = false;
    clock.advanceTo(T0.add({ seconds: 30 }));
    expect(await tick()).toMatchObject({ sent: 1 });
    expect(arrived()).toEqual(["ben | ", "ana | "]);
  });
});
