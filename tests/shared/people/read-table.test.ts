import { describe, expect, it } from "vitest";
import { readTable } from "../../../shared/people/read-table.ts";

function read(text: string): readonly string[] | string {
  const table = readTable(text);
  return table.ok ? table.value : `? ${table.problem.texts.join(" | ")}`;
}

describe("reading who eats along", () => {
  it.each([
    ["pregnant", ["pregnant"]],
    ["my pregnant wife and a toddler", ["pregnant", "under five"]],
    ["under five", ["under five"]],
    ["under 5", ["under five"]],
    ["a baby of 9 months", ["under five"]],
    ["18 months", ["under five"]],
    ["daughter aged 3", ["under five"]],
    ["son, 4 years old", ["under five"]],
    ["over 65", ["over 65"]],
    ["65+", ["over 65"]],
    ["grandma, 82", ["over 65"]],
    ["my elderly mother", ["over 65"]],
    ["weak immune system", ["weak immune system"]],
    ["father on chemotherapy", ["weak immune system"]],
    ["immunocompromized", ["weak immune system"]],
    [
      "pregnant, under five, over 65, weak immune system",
      ["pregnant", "under five", "over 65", "weak immune system"],
    ],
    ["nobody", []],
    ["just me", []],
    ["none", []],
  ])("takes “%s” for %j", (text, people) => {
    expect(read(text)).toEqual(people);
  });

  it.each([
    ["my 8 year old", "? 8"],
    ["a cat", "? cat"],
    ["nobody pregnant", "? nobody"],
    ["not pregnant", "? not"],
    ["wife", "? wife"],
    ["under 12", "? under 12"],
    ["toddler 🤰", "? 🤰"],
    ["-", "? -"],
  ])("asks again about “%s”", (text, said) => {
    expect(read(text)).toBe(said);
  });
});
