import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { draftForm, textOfForm } from "../../../commands/recipe/draft-form.ts";
import { draftId } from "../../../shared/ids.ts";

const formOf = (text: string) => draftForm({ id: draftId("d1"), text }, "Pot");
const filledOf = (text: string) => {
  const form = formOf(text);
  return form === null
    ? null
    : Object.fromEntries(form.fields.map(({ name, value }) => [name, value]));
};

describe("the form of a draft", () => {
  it("has room for three pages when there is no text, and one more than the text fills", () => {
    expect(formOf("")?.fields.map(({ required }) => required)).toEqual([true, false, false]);
    expect(formOf("Pot")?.fields).toHaveLength(2);
    expect(formOf("- 5 g salt\n".repeat(1_500))?.fields).toHaveLength(5);
  });

  it("gives the text back as it was, unless it does not fit", () => {
    const line = fc.string({ maxLength: 600 }).map((text) => `x${text.replace(/\s/gu, " ")}`);
    const text = fc
      .array(fc.oneof(line, fc.constant("")), { maxLength: 120 })
      .map((lines) => lines.join("\n").slice(0, 20_000));
    fc.assert(
      fc.property(text, (written) => {
        const filled = filledOf(written);
        if (filled === null) expect(written.length).toBeGreaterThan(15_000);
        else {
          expect(textOfForm(filled).trimEnd()).toBe(written.trimEnd());
          for (const value of Object.values(filled))
            expect(value.length).toBeLessThanOrEqual(4_000);
        }
      }),
    );
  });

  it("cuts where no blank line stands at the edge of a field", () => {
    const filled = filledOf("Sauce:\n- 100 g plain yoghurt\n\n".repeat(400)) ?? {};
    const edges = Object.values(filled).filter((value) => value !== "");
    expect(edges.length).toBeGreaterThan(2);
    for (const value of edges.slice(0, -1)) expect(value).toBe(value.trim());
  });

  it("does not take a line longer than a field apart", () => {
    expect(formOf("x".repeat(4_001))).toBeNull();
    expect(formOf("x".repeat(4_000))?.fields[0]?.value).toHaveLength(4_000);
  });

  it("joins what comes back by line breaks, and takes no field that it never had", () => {
    const filled = { text: "Pot\r\nMakes 2", more1: " \n", more2: "Steps", other: "x" };
    expect(textOfForm(filled)).toBe("Pot\nMakes 2\nSteps");
  });
});
