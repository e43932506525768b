import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { backoffMs } from "../../../src/jobs/backoff.ts";

const HALF_HOUR_MS = 1_800_000;

describe("the wait before a message is tried again", () => {
  it("grows to half an hour and no further, and is never less than 15 s", () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 1, max: 2_000 }), (nonce, attempt) => {
        const waitMs = backoffMs(nonce, attempt);
        expect(Number.isInteger(waitMs)).toBe(true);
        expect(waitMs).toBeGreaterThanOrEqual(15_000);
        expect(waitMs).toBeLessThanOrEqual(HALF_HOUR_MS);
        // Longer each time, until the longest wait is near.
        if (attempt < 6) expect(backoffMs(nonce, attempt + 1)).toBeGreaterThanOrEqual(waitMs);
        else expect(waitMs).toBeGreaterThanOrEqual(480_000);
      }),
    );
  });

  it("spreads what failed together: a thousand messages come back over the whole second half", () => {
    const waitsMs = Array.from({ length: 1_000 }, (_, n) => backoffMs(`r${n}`, 1));
    const tenths = waitsMs.map((ms) => Math.floor((ms - 15_000) / 1_500));
    for (let tenth = 0; tenth < 10; tenth += 1) {
      const many = tenths.filter((one) => one === tenth).length;
      // A hundred in each is to be expected; 60 or 140 by chance less than once in ten thousand.
      expect(many).toBeGreaterThan(60);
      expect(many).toBeLessThan(140);
    }
  });
});
