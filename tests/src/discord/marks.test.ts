import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { isOfNonce, marksOf, wordedAtOf } from "../../../src/discord/marks.ts";

const instant = (from: string, to: string) =>
  fc
    .integer({ min: Date.parse(from), max: Date.parse(to) })
    .map((ms) => Temporal.Instant.fromEpochMilliseconds(ms));

function messageOf(nonce: string, wordedAt: Temporal.Instant) {
  const marks = marksOf(nonce, wordedAt);
  return { components: [{ id: marks.nonce }, { id: 2 }, { id: marks.wordedAt }] };
}

describe("the marks of a reminder", () => {
  it("say its nonce and, to the second, when it was worded", () => {
    fc.assert(
      fc.property(
        fc.string({ minLength: 1, maxLength: 25 }),
        instant("2020-01-02T00:00:00Z", "2053-12-31T00:00:00Z"),
        (nonce, at) => {
          const message = messageOf(nonce, at);
          expect(isOfNonce(message, nonce)).toBe(true);
          expect(isOfNonce(message, `${nonce}.`)).toBe(false);
          const told = wordedAtOf(message);
          expect(told?.until(at).total("seconds")).toBeGreaterThanOrEqual(0);
          expect(told?.until(at).total("seconds")).toBeLessThan(1);
        },
      ),
    );
  });

  it("are two ids that a message may have: 31 bits, never the same, never one the platform gives", () => {
    // Discord Developer Documentation, Components, "Anatomy of a Component": ids are 32 bits, counted
    // from 1 where none is given, and unique in the message; from memory: they are signed.
    fc.assert(
      fc.property(
        fc.string(),
        instant("1970-01-01T00:00:00Z", "2300-01-01T00:00:00Z"),
        (nonce, at) => {
          const marks = marksOf(nonce, at);
          const ids = [marks.nonce, ...(marks.wordedAt === null ? [] : [marks.wordedAt])];
          expect(new Set(ids).size).toBe(ids.length);
          for (const id of ids) {
            expect(id).toBeGreaterThan(40);
            expect(id).toBeLessThan(2 ** 31);
          }
        },
      ),
    );
  });

  it("say no time where there is none: at ids of the platform's own, and without components", () => {
    expect(wordedAtOf({ components: [{ id: 1 }, { id: 2 }] })).toBeNull();
    expect(wordedAtOf({ components: [{ id: marksOf("r1", Temporal.Now.instant()).nonce }] })).toBe(
      null,
    );
    expect(wordedAtOf({ components: [] })).toBeNull();
    expect(wordedAtOf({})).toBeNull();
    expect(isOfNonce({ components: null }, "r1")).toBe(false);
  });
});
