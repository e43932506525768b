import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Button, type Reply, reply, rows, text } from "../../../commands/kit/reply.ts";
import type { Picture } from "../../../shared/picture/types.ts";
import { type RenderExtras, render } from "../../../src/discord/render.ts";
import { list, obj, parseJson, str } from "../../discord-server/json.ts";
import { flatten } from "../../discord-server/rules/component-rules.ts";
import { checkMessage } from "../../discord-server/rules/message-rules.ts";
import { anyPrint, anyText } from "../../kit/any-text.ts";

/** What goes over the wire, as the platform's rules and a reader see it. */
function sent(answer: Reply, extras: RenderExtras = {}) {
  const { message, files } = render(answer, extras);
  const body = obj(parseJson(JSON.stringify(message)));
  const all = flatten(list(body["components"]));
  return {
    body,
    files,
    texts: all.filter((c) => c["type"] === 10).map((c) => str(c["content"])),
    rowsOfLabels: list(body["components"])
      .map(obj)
      .filter((c) => c["type"] === 1)
      .map((row) => list(row["components"]).map((c) => str(obj(c)["label"]))),
    violations: checkMessage({
      body,
      fileNames: files.map((file) => file.name),
      isAlreadyV2: false,
      mustNameMentions: true,
    }),
  };
}

const button = (n: number): Button => ({ id: `stock.ate~${n}`, label: `B${n}`, weight: "plain" });

describe("the typography", () => {
  it("puts the answer first in bold, titles in bold, figures after a dash, cautions last and small", () => {
    const answer = reply("Chilli for 8 portions", {
      parts: [
        rows("Base", [
          { label: "Kidney beans", figure: "480 g", note: "drained" },
          { label: "Onion", figure: "2" },
        ]),
        text("Simmer 40 min at 95 °C."),
      ],
      cautions: ["Cool within 2 h."],
    });
    expect(sent(answer).texts).toEqual([
      "**Chilli for 8 portions**",
      "**Base**\nKidney beans — 480 g · drained\nOnion — 2\n\nSimmer 40 min at 95 °C.",
      "-# Cool within 2 h.",
    ]);
  });

  it("puts three buttons in the first row, then up to five a row, ten in all", () => {
    const buttons = Array.from({ length: 14 }, (_, n) => button(n));
    const { rowsOfLabels } = sent(reply("Stock", { buttons }));
    expect(rowsOfLabels.map((row) => row.length)).toEqual([3, 5, 2]);
    expect(rowsOfLabels.flat().slice(0, 4)).toEqual(["B0", "B1", "B2", "B3"]);
  });

  it("names the one member it may ping, and nobody else", () => {
    const { body, texts } = sent(reply("Thaw <@999> tonight"), { mention: "123" });
    expect(texts[0]).toMatch(/^<@123> \*\*Thaw \\</u);
    expect(body["allowed_mentions"]).toEqual({ parse: [], users: ["123"] });
  });

  it("never takes a mention that is not an id", () => {
    expect(sent(reply("Hello"), { mention: "everyone> <@1" }).texts).toEqual(["**Hello**"]);
  });
});

describe("what does not fit", () => {
  const long = Array.from({ length: 500 }, (_, n) => `${n}. grams, *grams*, grams`);

  it("goes to a file with the whole answer; the message says so and keeps every caution", () => {
    const cautions = ["Reheat to 74 °C.", "Throw away after Sunday."];
    const { texts, files, violations } = sent(reply("Card", { parts: [text(...long)], cautions }));
    expect(violations).toEqual([]);
    expect(texts.join("").length).toBeLessThanOrEqual(3_800);
    expect(texts[1]).toMatch(/\nThe whole answer is in the attached file\.$/u);
    expect(texts.at(-1)).toBe("-# Reheat to 74 °C.\n-# Throw away after Sunday.");
    const file = String(files[0]?.data);
    expect(file).toContain("499. grams, *grams*, grams");
    expect(file).toContain("Throw away after Sunday.");
  });

  it("is cut in the message when it is one single line", () => {
    const { texts, files, violations } = sent(reply("Card", { parts: [text("*".repeat(9_000))] }));
    expect(violations).toEqual([]);
    expect(texts[1]?.length).toBeGreaterThan(1_000);
    expect(String(files[0]?.data)).toContain("*".repeat(9_000));
  });

  it("two files of one name are both kept", () => {
    const two = ["a", "b"].map((content) => ({ name: "../etc/my list.txt", text: content }));
    const { files, violations } = sent(reply("Files", { files: two }));
    expect(violations).toEqual([]);
    expect(files.map((file) => String(file.data))).toEqual(["a", "b"]);
    expect(files.map((file) => file.name)).toEqual(["etc_my_list.txt", "2-etc_my_list.txt"]);
  });
});

describe("a file of bytes", () => {
  it("is attached whole under its media type", () => {
    const bytes = Uint8Array.from([37, 80, 68, 70, 0, 255]);
    const { files, violations } = sent(
      reply("Labels", { files: [{ name: "labels.pdf", bytes, mediaType: "application/pdf" }] }),
    );
    expect(violations).toEqual([]);
    expect(files).toEqual([
      { name: "labels.pdf", data: Buffer.from(bytes), contentType: "application/pdf" },
    ]);
  });

  it("that is too large for the platform is left out, and the message says so", () => {
    const bytes = new Uint8Array(8_000_001);
    const { files, texts } = sent(
      reply("Labels", { files: [{ name: "labels.pdf", bytes, mediaType: "application/pdf" }] }),
    );
    expect(files).toEqual([]);
    expect(texts.join("\n")).toContain("labels.pdf is too large to be sent.");
  });
});

/** A picture as small as can be. */
function dot(rest: Partial<Picture> = {}): Picture {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="8" height="8"><rect width="8" height="8"/></svg>';
  return { name: "dot", svg, widthPx: 8, heightPx: 8, alt: "A dot.", ...rest };
}

const PNG_START = [0x89, 0x50, 0x4e, 0x47];

describe("pictures", () => {
  const gallery = (answer: Reply) =>
    list(sent(answer).body["components"])
      .map(obj)
      .filter((c) => c["type"] === 12)
      .flatMap((c) => list(c["items"]).map(obj));

  it("are attached as PNG and shown in one gallery, before the cautions, each with its text", () => {
    const answer = reply("Card", {
      pictures: [dot(), dot({ alt: "Another dot." })],
      cautions: ["An estimate."],
    });
    const { files, body, violations } = sent(answer);
    expect(violations).toEqual([]);
    expect(files.map(({ name, contentType }) => [name, contentType])).toEqual([
      ["dot.png", "image/png"],
      ["2-dot.png", "image/png"],
    ]);
    for (const { data } of files)
      expect([...Buffer.from(data as Buffer).subarray(0, 4)]).toEqual(PNG_START);
    expect(gallery(answer)).toEqual([
      { media: { url: "attachment://dot.png" }, description: "A dot." },
      { media: { url: "attachment://2-dot.png" }, description: "Another dot." },
    ]);
    expect(list(body["components"]).map((c) => obj(c)["type"])).toEqual([10, 12, 14, 10]);
  });

  it("are told in words where they cannot be drawn", () => {
    const broken = dot({ svg: "<svg", alt: "Protein 38 g of 150 g." });
    const { files, texts } = sent(reply("Card", { pictures: [broken] }));
    expect(files).toEqual([]);
    expect(texts).toEqual(["**Card**", "Protein 38 g of 150 g."]);
  });

  it("beyond the fourth are left out, and files still have their place", () => {
    const pictures = Array.from({ length: 6 }, () => dot());
    const { files, violations } = sent(
      reply("Card", { pictures, files: [{ name: "list.txt", text: "rice" }] }),
    );
    expect(violations).toEqual([]);
    expect(files.map(({ name }) => name)).toEqual([
      "dot.png",
      "2-dot.png",
      "3-dot.png",
      "4-dot.png",
      "list.txt",
    ]);
  });
});

const anyId = fc.oneof(
  anyText,
  fc.integer({ min: 0, max: 3 }).map((n) => `a.b~${n}`),
);
const anyReply: fc.Arbitrary<Reply> = fc.record({
  heading: anyText,
  alerts: fc.array(anyText, { maxLength: 4 }),
  pictures: fc.array(
    fc
      .record({ name: anyText, alt: anyText, drawable: fc.boolean() })
      .map(({ name, alt, drawable }) => dot({ name, alt, ...(drawable ? {} : { svg: alt }) })),
    { maxLength: 6 },
  ),
  prints: fc.array(anyPrint, { maxLength: 7 }),
  parts: fc.array(
    fc.oneof(
      fc.array(anyText, { maxLength: 30 }).map((lines) => text(...lines)),
      fc
        .tuple(
          fc.option(anyText),
          fc.array(fc.record({ label: anyText, figure: anyText, note: anyText }), {
            maxLength: 30,
          }),
        )
        .map(([title, some]) => rows(title, some)),
    ),
    { maxLength: 12 },
  ),
  cautions: fc.array(anyText, { maxLength: 12 }),
  buttons: fc.array(
    fc.record({
      id: anyId,
      label: anyText,
      weight: fc.constantFrom("main" as const, "plain" as const, "grave" as const),
    }),
    { maxLength: 30 },
  ),
  choices: fc.array(
    fc.record({
      id: anyId,
      placeholder: anyText,
      options: fc.array(fc.record({ value: anyId, label: anyText, hint: anyText }), {
        maxLength: 40,
      }),
    }),
    { maxLength: 8 },
  ),
  files: fc.array(fc.record({ name: anyText, text: anyText }), { maxLength: 14 }),
  audience: fc.constantFrom("private" as const, "shown" as const),
});

describe("any reply whatever", () => {
  it("is rendered within the platform's limits, without throwing", () => {
    fc.assert(
      fc.property(anyReply, (answer) => {
        expect(
          sent(answer, { mention: "42", marks: { nonce: 2 ** 30, wordedAt: 30_000_000 } })
            .violations,
        ).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});
