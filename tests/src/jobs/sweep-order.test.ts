import { describe, expect, it } from "vitest";
import { memberId } from "../../../shared/ids.ts";
import type { OutgoingMessage, SendResult } from "../../../src/jobs/ports.ts";
import { memberNamed, rowOf, T0 } from "./fake-deliveries.ts";
import { rig } from "./tick-kit.ts";

describe("deriving reminders again", () => {
  it("comes after what is due was told, and one member's failure does not stop the next", async () => {
    const ben = memberNamed("ben");
    const { process, deliveries, platform } = rig(
      [rowOf("old", { helpsUntil: T0 })],
      [memberNamed("ana"), ben],
    );
    deliveries.replanIds = [memberId("ana"), ben.id];
    const seen: string[] = [];
    const report = await process({
      replan: async ({ name }) => {
        seen.push(`${name} after ${platform.attempts.length} message`);
        if (name === "ana") throw new Error("a bug in deriving");
        deliveries.replanIds = [memberId("ana")];
      },
    })();
    expect(seen).toEqual(["ana after 1 message", "ben after 1 message"]);
    expect(report).toMatchObject({ replanned: 1, errors: 1, sent: 1, expired: 1 });
  });

  it("sends in the same sweep what it made due", async () => {
    const { process, deliveries, arrived } = rig([]);
    deliveries.replanIds = [memberId("ana")];
    await process({
      replan: async () => {
        deliveries.replanIds = [];
        deliveries.add(rowOf("new"));
      },
    })();
    expect(arrived()).toEqual(["new | "]);
  });
});

describe("the claim on a message that is slow to go out", () => {
  it.each([
    ["again after a failed try", "unknown"],
    ["at the first try", null],
  ] as const)("forbids a request long before another process may send it: %s", async (_, first) => {
    const { process, deliveries, platform, clock } = rig([rowOf("a")]);
    if (first !== null) {
      platform.script.push({ kind: first, reason: "down", retryAfterMs: 0 });
      await process()();
    }
    const begunMs = clock.now().epochMilliseconds;
    // One process begins requests until it may not; the clocks of two machines differ by up to 30 s.
    const ahead = { seconds: 30 };
    const longestRequest = { seconds: 15 };
    let tooLong = 0;
    const send = async ({ isOurs }: OutgoingMessage): Promise<SendResult> => {
      while (isOurs()) {
        const theirs = clock.now().add(ahead).add(longestRequest);
        tooLong += (await deliveries.abandoned(theirs, 10)).length;
        clock.advanceTo(clock.now().add({ seconds: 1 }));
      }
      return { kind: "unknown", reason: "the claim was over", retryAfterMs: null };
    };
    expect(await process({ messenger: { send } })()).toMatchObject({ retried: 1, errors: 0 });
    expect(tooLong).toBe(0);
    // A message that waited in the sweep for most of a minute still has time for its requests.
    expect(clock.now().epochMilliseconds - begunMs).toBeGreaterThanOrEqual(70_000);
  });
});

describe("a claim that brings more rows than the page held", () => {
  it("words them all, for they are settled together", async () => {
    const { process, deliveries, arrived, clock } = rig([rowOf("a"), rowOf("b")]);
    await process({ messenger: { send: () => Promise.reject(new Error("down")) } })();
    clock.advanceTo(T0.add({ seconds: 30 }));
    const cut: typeof deliveries.abandoned = async (...args) =>
      (await deliveries.abandoned(...args)).slice(0, 1);
    await process({
      deliveries: {
        claimNext: (input) => deliveries.claimNext(input),
        abandoned: cut,
        claimAgain: (input) => deliveries.claimAgain(input),
        others: (...args) => deliveries.others(...args),
        recipients: (ids) => deliveries.recipients(ids),
        settle: (input) => deliveries.settle(input),
        withdraw: (input) => deliveries.withdraw(input),
        nextDue: () => deliveries.nextDue(),
        toReplan: (...args) => deliveries.toReplan(...args),
        setDirectClosed: (...args) => deliveries.setDirectClosed(...args),
        group: () => deliveries.group(),
      },
    })();
    expect(arrived()).toEqual(["a,b | "]);
    expect(["a", "b"].map((id) => deliveries.state(id))).toEqual(["sent", "sent"]);
  });
});
