import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Button, reply, rows, text } from "../../../commands/kit/reply.ts";
import { widthOf } from "../../../src/terminal/plain.ts";
import { renderReply } from "../../../src/terminal/render.ts";

const button = (id: string, label: string): Button => ({ id, label, weight: "plain" });

describe("a reply as text", () => {
  it("has the answer first, aligned rows, cautions last, then what can be picked", () => {
    const answer = reply("Smoky bake for 8", {
      parts: [
        rows("Base", [
          { label: "chicken thigh", figure: "850 g" },
          { label: "egg", figure: "2", note: "100 g" },
        ]),
        text("1. Heat the oven."),
      ],
      cautions: ["Taste the salt."],
      buttons: [button("a.b", "Log it"), button("a.c", "Show")],
      choices: [
        {
          id: "a.d",
          placeholder: "Pick a lot",
          options: [{ value: "x", label: "Lot x", hint: "3 left" }],
        },
      ],
      files: [{ name: "card.txt", text: "one\n  two\n" }],
    });
    expect(renderReply(answer, 4)).toEqual({
      text: [
        "Smoky bake for 8",
        "",
        "Base",
        "  chicken thigh  850 g",
        "  egg            2      100 g",
        "",
        "1. Heat the oven.",
        "",
        "Caution: Taste the salt.",
        "",
        "File card.txt:",
        "  | one",
        "  |   two",
        "",
        "[4] Log it   [5] Show",
        "",
        "Pick a lot:",
        "  [6] Lot x (3 left)",
        "",
      ].join("\n"),
      picks: [
        { number: 4, pressId: "a.b", picked: [] },
        { number: 5, pressId: "a.c", picked: [] },
        { number: 6, pressId: "a.d", picked: ["x"] },
      ],
    });
  });

  it("tells a picture in words, wrapped, where it is shown on a screen", () => {
    const alt = "Chilli. Target for the day: protein 150 g. One portion: 512 kcal, protein 38 g.";
    const picture = { name: "macros", svg: "<svg/>", widthPx: 1, heightPx: 1, alt };
    const { text: shown } = renderReply(
      reply("Card", { pictures: [picture], cautions: ["Hot."] }),
      1,
    );
    expect(shown).toBe(
      [
        "Card",
        "",
        "[picture: Chilli. Target for the day: protein 150 g. One portion: 512 kcal,",
        "  protein 38 g.]",
        "",
        "Caution: Hot.",
        "",
      ].join("\n"),
    );
  });

  it("gives the path of a file to keep, and prints what is to be read", () => {
    const answer = reply("Here", {
      files: [
        { name: "steps.txt", text: "1. Stir.\n" },
        { name: "a.pdf", bytes: Uint8Array.from([37, 80]), mediaType: "application/pdf" },
      ],
    });
    const { text: shown } = renderReply(answer, 1, ({ name }) => `data/files/${name}`);
    expect(shown).toBe("Here\n\nFile steps.txt:\n  | 1. Stir.\n\nFile: data/files/a.pdf\n");
  });

  it("prints a text to keep where it cannot be written, and says so of bytes", () => {
    const answer = reply("Here", {
      files: [
        { name: "pot.txt", text: "Pot\n", mediaType: "text/plain" },
        { name: "a.pdf", bytes: Uint8Array.from([37, 80]), mediaType: "application/pdf" },
      ],
    });
    expect(renderReply(answer, 1, () => null).text).toBe(
      "Here\n\nFile pot.txt:\n  | Pot\n\nFile a.pdf: it could not be written to disk here.\n",
    );
  });

  it("keeps every line of prose and figures within 76 columns and loses no word", () => {
    const word = fc.stringMatching(/^[a-zé]{1,20}$/u);
    const phrase = fc.array(word, { minLength: 1, maxLength: 30 }).map((words) => words.join(" "));
    fc.assert(
      fc.property(phrase, phrase, phrase, phrase, (heading, label, figure, note) => {
        const answer = reply(heading, {
          parts: [
            rows(null, [
              { label, figure, note },
              { label: "x", figure: "1 g" },
            ]),
          ],
          cautions: [note],
        });
        const shown = renderReply(answer, 1).text;
        for (const line of shown.split("\n")) expect(widthOf(line)).toBeLessThanOrEqual(76);
        const words = shown.split(/\s+/u).filter((w) => w !== "" && w !== "Caution:");
        expect(words).toEqual(
          [heading, label, figure, note, "x", "1 g", note].flatMap((part) => part.split(" ")),
        );
      }),
    );
  });

  it("lets no control character or direction mark of a member through to the screen", () => {
    const nasty = "a\u001b[2Jb\u0007c\r\u202ed\u009b31me";
    const answer = reply(nasty, {
      parts: [text(nasty), rows(nasty, [{ label: nasty, figure: nasty, note: nasty }])],
      cautions: [nasty],
      buttons: [button("a.b", nasty)],
      files: [{ name: nasty, text: nasty }],
    });
    expect(renderReply(answer, 1).text).not.toMatch(/[^\P{Cc}\n]|[\u202A-\u202E\u2066-\u2069]/u);
  });
});
