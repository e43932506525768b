import { describe, expect, it } from "vitest";
import { drawnOnce } from "../../../src/pictures/kept.ts";

/** A hand that draws so many bytes and counts how often it did. */
function hand(size = 100) {
  const drawn: string[] = [];
  const draw = (what: string) => async (): Promise<Buffer | null> => {
    drawn.push(what);
    return Buffer.alloc(size);
  };
  return { drawn, draw };
}

describe("pictures that were drawn before", () => {
  it("are drawn once, also when they are asked for twice at once", async () => {
    const { drawn, draw } = hand();
    const once = drawnOnce();
    const [a, b] = await Promise.all([once("pot", draw("pot")), once("pot", draw("pot"))]);
    expect(await once("pot", draw("pot"))).toBe(a);
    expect(b).toBe(a);
    expect(drawn).toEqual(["pot"]);
  });

  it("make room for others, the one asked for longest ago first", async () => {
    const { drawn, draw } = hand(100);
    // Three letters take six bytes, so two pictures fit and three do not.
    const once = drawnOnce(250);
    await once("one", draw("one"));
    await once("two", draw("two"));
    await once("one", draw("one"));
    await once("six", draw("six"));
    await once("one", draw("one"));
    await once("two", draw("two"));
    expect(drawn).toEqual(["one", "two", "six", "two"]);
  });

  it("larger than all the room are drawn and not kept", async () => {
    const { drawn, draw } = hand(1_000);
    const once = drawnOnce(250);
    expect(await once("pot", draw("pot"))).toHaveLength(1_000);
    await once("pot", draw("pot"));
    expect(drawn).toEqual(["pot", "pot"]);
  });

  it("that could not be drawn are tried again by the next to ask", async () => {
    const { drawn, draw } = hand();
    const once = drawnOnce();
    const fails = () => Promise.reject(new Error("no pen"));
    await expect(once("pot", fails)).rejects.toThrow("no pen");
    expect(await once("pot", async () => null)).toBeNull();
    expect(await once("pot", draw("pot"))).toHaveLength(100);
    expect(drawn).toEqual(["pot"]);
  });
});
