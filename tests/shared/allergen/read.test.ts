import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readAllergens } from "../../../shared/allergen/read.ts";
import { ALLERGENS } from "../../../shared/food/types.ts";

function stated(text: string): readonly string[] {
  const read = readAllergens(text);
  if (!read.ok) throw new Error(`not understood: ${read.problem.texts.join(" | ")}`);
  return read.value.allergens;
}

function notesOn(text: string): readonly string[] {
  const read = readAllergens(text);
  return read.ok ? read.value.remarks.map(({ note, said }) => `${said}: ${note}`) : [];
}

function strange(text: string): readonly string[] {
  const read = readAllergens(text);
  return read.ok ? [] : read.problem.texts;
}

describe("reading what a member avoids", () => {
  it.each([
    ["nuts and milk", ["milk", "tree nuts", "peanut"]],
    ["dairy", ["milk"]],
    ["Dairy products, please", ["milk"]],
    ["cow's milk", ["milk"]],
    ["shellfish", ["crustaceans", "molluscs"]],
    ["seafood", ["fish", "crustaceans", "molluscs"]],
    ["prawns; mussels", ["crustaceans", "molluscs"]],
    ["coeliac", ["gluten"]],
    ["I am a coeliac", ["gluten"]],
    ["celiac disease", ["gluten"]],
    ["gluten-free", ["gluten"]],
    ["lactose intolerant", ["milk"]],
    ["peanuts", ["peanut"]],
    ["pea nuts", ["peanut"]],
    ["peanut butter", ["peanut"]],
    ["tree nuts", ["tree nuts"]],
    ["almonds & cashews", ["tree nuts"]],
    ["no eggs, no fish", ["egg", "fish"]],
    ["allergic to soya + sesame seeds", ["soy", "sesame"]],
    ["sulfites/mustard/lupin/celeriac", ["celery", "mustard", "sulphites", "lupin"]],
    ["spelt", ["wheat", "gluten"]],
    ["WHEAT", ["wheat"]],
    ["barley", ["gluten"]],
    ["crustaceans, molluscs", ["crustaceans", "molluscs"]],
    ["mollusks", ["molluscs"]],
    ["penuts", ["peanut"]],
    ["glutten and sesamee", ["gluten", "sesame"]],
    ["sulphur dioxide", ["sulphites"]],
    ["anchovies", ["fish"]],
    ["goat's cheese", ["milk"]],
    ...ALLERGENS.map((one): [string, string[]] => [one, [one]]),
  ])("takes “%s” for %j", (text, allergens) => {
    expect(stated(text)).toEqual(allergens);
  });

  it.each(["none", "None.", "no", "nothing", "no allergies", "none known"])(
    "takes “%s” for none",
    (text) => {
      expect(stated(text)).toEqual([]);
    },
  );

  it.each([
    ["nuts and kiwi", ["kiwi"]],
    ["strawberries, milk, red meat", ["strawberries", "red meat"]],
    ["milk but not cheese", ["but not"]],
    ["everything except milk", ["everything except"]],
    ["not allergic to milk", ["not"]],
    ["milk, none", ["none"]],
    ["coconut", ["coconut"]],
    ["bread", ["bread"]],
    ["mild", ["mild"]],
    // One slip from wheat and one from whelk.
    ["whelt", ["whelt"]],
    ["custard", ["custard"]],
    ["🥜", ["🥜"]],
    ["milk 🥜", ["🥜"]],
    ["none 🥜", ["none", "🥜"]],
    ["-", ["-"]],
    ["牛奶", ["牛奶"]],
    ["allergic to", ["allergic to"]],
  ])("does not half understand “%s”", (text, texts) => {
    expect(strange(text)).toEqual(texts);
  });

  it("says what was taken for more than it says", () => {
    expect(notesOn("nuts")).toEqual(["nuts: nuts with peanut"]);
    expect(notesOn("shellfish")).toEqual(["shellfish: shellfish are two"]);
    expect(notesOn("lactose")).toEqual(["lactose: lactose is milk"]);
    expect(notesOn("coeliac")).toEqual(["coeliac: gluten and oats"]);
    expect(notesOn("almonds")).toEqual(["almonds: whole group"]);
    expect(notesOn("penuts")).toEqual(["penuts: spelling"]);
    expect(notesOn("milk, egg, peanut")).toEqual([]);
  });

  it("warns who names wheat that gluten is more, unless they name both, and the same for peanut", () => {
    expect(notesOn("wheat")).toEqual(["wheat: wheat alone"]);
    expect(notesOn("wheat and barley")).not.toContain("wheat: wheat alone");
    expect(notesOn("tree nuts")).toEqual(["tree nuts: tree nuts alone"]);
    expect(notesOn("tree nuts, peanuts")).toEqual([]);
  });

  it("reads any mix of the words in any order, each allergen once", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...ALLERGENS], { minLength: 1 }), (some) => {
        expect(stated(some.join(" and "))).toEqual(ALLERGENS.filter((one) => some.includes(one)));
      }),
    );
  });

  it("never passes a word over that it does not know", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ALLERGENS),
        fc.stringMatching(/^q[a-z]{1,8}$/u),
        (one, odd) => {
          expect(strange(`${one}, ${odd}`)).toEqual([odd]);
        },
      ),
    );
  });

  it("answers within bounds on text of any length", () => {
    const read = readAllergens("milk ".repeat(50_000));
    expect(read.ok).toBe(false);
    expect(strange("é".repeat(100_000)).join("").length).toBeLessThan(400);
  });
});
