import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  CONTAINERS,
  coolingAdvice,
  coolingOf,
  FRIDGE,
  ICE_BATH,
} from "../../../shared/heat/cool.ts";
import { thawHours } from "../../../shared/heat/thaw-time.ts";

const filled = fc.record({
  container: fc.constantFrom(...CONTAINERS),
  depthCm: fc.double({ min: 1, max: 25, noNaN: true }),
  massG: fc.double({ min: 100, max: 8000, noNaN: true }),
});

describe("cooling a container", () => {
  it("takes longer the deeper it is filled over the same base", () => {
    fc.assert(
      fc.property(filled, fc.double({ min: 1.1, max: 3, noNaN: true }), (one, times) => {
        const deeper = { ...one, depthCm: one.depthCm * times, massG: one.massG * times };
        expect(coolingOf(deeper).toColdH).toBeGreaterThan(coolingOf(one).toColdH);
        expect(thawHours(deeper)).toBeGreaterThan(thawHours(one));
      }),
      { numRuns: 60 },
    );
  });

  it("comes to 21 degrees before it comes to 5, and faster in ice", () => {
    fc.assert(
      fc.property(filled, (one) => {
        const fridge = coolingOf(one, FRIDGE);
        expect(fridge.toMiddleH).toBeLessThan(fridge.toColdH);
        expect(coolingOf(one, ICE_BATH).toColdH).toBeLessThan(fridge.toColdH);
      }),
      { numRuns: 60 },
    );
  });

  it("passes by the rule's two limits and needs no advice then", () => {
    const bag = { container: "flat bag", depthCm: 2, massG: 400 } as const;
    expect(coolingOf(bag)).toMatchObject({ passes: true });
    expect(coolingAdvice(bag)).toBeNull();
  });

  it("asks for an ice bath where a fridge is too slow, and for more containers of a deep pot", () => {
    const box = coolingAdvice({ container: "shallow box", depthCm: 4, massG: 450 });
    expect(box).toMatchObject({ kind: "ice bath", depthCm: 4, containers: 1 });
    const pot = coolingAdvice({ container: "pot", depthCm: 20, massG: 6000 });
    expect(pot).toMatchObject({ kind: "ice bath", containers: 4, depthCm: 5 });
  });

  it("never gets colder than what surrounds it", () => {
    const warm = { temperatureC: 6, surfaceWM2K: 7 };
    const box = coolingOf({ container: "shallow box", depthCm: 4, massG: 450 }, warm);
    expect(box).toMatchObject({ toColdH: Number.POSITIVE_INFINITY, passes: false });
  });
});
