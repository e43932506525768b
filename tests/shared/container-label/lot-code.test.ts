import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lotByCode, lotCodes } from "../../../shared/container-label/lot-code.ts";
import { lotId } from "../../../shared/ids.ts";

const lots = (count: number, prefix = "lot") =>
  Array.from({ length: count }, (_, index) => ({ id: lotId(`${prefix}${index}`) }));
const codeOf = (id: string) => lotCodes([{ id: lotId(id) }]).get(lotId(id)) ?? "";

describe("the code of a lot", () => {
  it("has five characters without look-alikes and is the same every time", () => {
    for (const { id } of lots(500)) {
      expect(codeOf(id)).toMatch(/^[0-9ACDEFGHJKMNPQRTVWXY]{5}$/u);
      expect(codeOf(id)).toBe(codeOf(id));
    }
  });

  it("is unlike that of any other lot of the member, and finds its own lot again", () => {
    const many = lots(5_000);
    const codes = lotCodes(many);
    expect(new Set(codes.values()).size).toBe(5_000);
    // Among so many some four characters collide, and both codes are longer.
    expect([...codes.values()].filter((code) => code.length > 5).length).toBeGreaterThan(0);
    for (const lot of many.slice(0, 300)) {
      expect(lotByCode(codes.get(lot.id) ?? "", many)).toEqual({ ok: true, value: lot });
    }
  });

  it("asks which one is meant where a short code was printed before its twin came", () => {
    const many = lots(5_000);
    const twins = [...lotCodes(many)].find(([, code]) => code.length > 5)?.[0] ?? lotId("none");
    const found = lotByCode(codeOf(twins), many);
    expect(found.ok).toBe(false);
    expect(found.ok ? [] : "lotIds" in found.problem ? found.problem.lotIds : []).toContain(twins);
    // Once the twin is gone, the longer code still names its lot.
    const longer = lotCodes(many).get(twins) ?? "";
    expect(lotByCode(longer, [{ id: twins }])).toEqual({ ok: true, value: { id: twins } });
  });

  it("is read in any case, with look-alikes, spaces and dashes", () => {
    const many = lots(400);
    const like: Readonly<Record<string, string>> = {
      "0": "o",
      "1": "l",
      "2": "z",
      "5": "s",
      "8": "b",
      V: "u",
    };
    for (const lot of many) {
      const code = lotCodes(many).get(lot.id) ?? "";
      const sloppy = [...code].map((one) => like[one] ?? one.toLowerCase()).join("");
      const typed = ` ${sloppy.slice(0, 2)}-${sloppy.slice(2)} `;
      expect(lotByCode(typed, many)).toEqual({ ok: true, value: lot });
    }
  });

  it("tells a name from a code, and a code of nobody's lot from a mistyped one", () => {
    expect(lotByCode("barley & lamb pot", lots(3))).toEqual({
      ok: false,
      problem: { code: "not a lot code" },
    });
    expect(lotByCode(codeOf("gone"), lots(3))).toMatchObject({
      problem: { code: "no lot of that code" },
    });
  });

  it("repeats a mistyped code as it was typed, to be held beside the label", () => {
    const [first = "", second = "", ...rest] = codeOf("lot1");
    const other = [..."ACDEFGHJ"].find((one) => one !== second) ?? "";
    const typed = [first, other, ...rest].join("");
    expect(lotByCode(` ${typed.toLowerCase()} `, lots(3))).toEqual({
      ok: false,
      problem: { code: "lot code mistyped", typed },
    });
    // "O" is read as a zero, and still repeated as an "O".
    const read = lotByCode("AOOOO", lots(3));
    expect(read).toMatchObject({ problem: { code: "lot code mistyped", typed: "AOOOO" } });
  });

  it("never finds a lot by anything a person may type at random, nor fails", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 100 }), (typed) => {
        const read = lotByCode(typed, lots(50));
        expect(read.ok || read.problem.code !== undefined).toBe(true);
      }),
    );
  });
});
