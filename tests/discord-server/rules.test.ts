import { describe, expect, it } from "vitest";
import type { Json, JsonObject } from "./json.ts";
import { checkCommands } from "./rules/command-rules.ts";
import { checkMessage } from "./rules/message-rules.ts";

// The loopback platform is only worth something if it refuses what the platform refuses. Limits: the
// platform's developer documentation (interactions/application-commands, resources/message,
// components/reference), as of August 2026.

const fine = { name: "stock", description: "What is where" };
const command = (more: JsonObject): Json => [{ ...fine, ...more }];
const withOption = (more: JsonObject): Json =>
  command({ options: [{ type: 3, name: "lot", description: "Which", ...more }] });
const many = (n: number, make: (n: number) => Json): Json[] =>
  Array.from({ length: n }, (_, i) => make(i));
const choice = (n: number): Json => ({ name: `c${n}`, value: `c${n}` });

describe("a list of commands is refused", () => {
  it.each<[string, Json, string]>([
    ["a name of 33 characters", command({ name: "x".repeat(33) }), "0.name"],
    ["a name in upper case", command({ name: "Stock" }), "0.name"],
    ["a name with a space", command({ name: "my stock" }), "0.name"],
    ["a description of 101 characters", command({ description: "d".repeat(101) }), "0.description"],
    [
      "an empty description of an option",
      withOption({ description: "" }),
      "0.options.0.description",
    ],
    ["an option type there is not", withOption({ type: 99 }), "0.options.0.type"],
    ["26 choices", withOption({ choices: many(26, choice) }), "0.options.0.choices"],
    [
      "choices beside completion",
      withOption({ choices: [choice(1)], autocomplete: true }),
      "0.options.0",
    ],
    ["completion of a role", withOption({ type: 8, autocomplete: true }), "0.options.0"],
    [
      "an optional option before a required one",
      command({
        options: [
          { type: 3, name: "a", description: "a" },
          { type: 3, name: "b", description: "b", required: true },
        ],
      }),
      "0.options.1",
    ],
    ["two commands of one name", [fine, fine], ""],
    [
      "subcommands beside options",
      command({
        options: [
          { type: 1, name: "a", description: "a" },
          { type: 3, name: "b", description: "b" },
        ],
      }),
      "0.options",
    ],
    [
      "8,001 characters in one command",
      command({
        options: many(25, (n) => ({
          type: 1,
          name: `s${n}`,
          description: "d".repeat(100),
          options: many(3, (m) => ({ type: 3, name: `o${m}`, description: "d".repeat(80) })),
        })),
      }),
      "0",
    ],
  ])("for %s", (_what, body, at) => {
    expect(checkCommands(body, "global").map((fault) => fault.at)).toContain(at);
  });

  it("for saying in a server's own list where it works", () => {
    expect(checkCommands(command({ contexts: [0] }), "guild")).toHaveLength(1);
    expect(checkCommands(command({ contexts: [0] }), "global")).toEqual([]);
  });
});

const V2 = 1 << 15;
const line = (content: string): JsonObject => ({ type: 10, content });
const button = (n: number, more: JsonObject = {}): JsonObject => ({
  type: 2,
  style: 2,
  label: "Ate 1",
  custom_id: `stock.ate~${n}`,
  ...more,
});
const row = (...components: Json[]): JsonObject => ({ type: 1, components });
const select = (options: Json[], more: JsonObject = {}): JsonObject =>
  row({ type: 3, custom_id: "pick", options, ...more });
const picture = (more: JsonObject = {}): Json => ({
  media: { url: "https://a.example/b.png" },
  ...more,
});
const gallery = (items: Json[]): JsonObject => ({ type: 12, items });
const option = (n: number): Json => ({ label: `o${n}`, value: `o${n}` });

function places(body: JsonObject, fileNames: readonly string[] = []): readonly string[] {
  const whole = { flags: V2, allowed_mentions: { parse: [] }, ...body };
  const check = { body: whole, fileNames, isAlreadyV2: false, mustNameMentions: true };
  return checkMessage(check).map((fault) => fault.at);
}

describe("a message is refused", () => {
  it.each<[string, JsonObject, string]>([
    ["41 components", { components: many(41, (n) => line(String(n))) }, "components"],
    [
      "nested components above 40",
      { components: many(7, (n) => row(...many(5, (m) => button(n * 5 + m)))) },
      "components",
    ],
    [
      "4,001 characters in two texts",
      { components: [line("x".repeat(2_001)), line("y".repeat(2_000))] },
      "components",
    ],
    ["a blank text", { components: [line("  ")] }, "components.0.content"],
    ["no components", { components: [] }, "components"],
    ["content beside V2", { content: "x", components: [line("x")] }, "content"],
    ["one custom id twice", { components: [row(button(1), button(1))] }, "components"],
    [
      "a custom id of 101",
      { components: [row(button(1, { custom_id: "x".repeat(101) }))] },
      "components.0.components.0.custom_id",
    ],
    [
      "a label of 81",
      { components: [row(button(1, { label: "x".repeat(81) }))] },
      "components.0.components.0.label",
    ],
    [
      "six buttons in a row",
      { components: [row(...many(6, (n) => button(n)))] },
      "components.0.components",
    ],
    ["26 options", { components: [select(many(26, option))] }, "components.0.components.0.options"],
    ["no option", { components: [select([])] }, "components.0.components.0.options"],
    [
      "a placeholder of 151",
      { components: [select([option(1)], { placeholder: "p".repeat(151) })] },
      "components.0.components.0.placeholder",
    ],
    ["a button outside a row", { components: [button(1)] }, "components.0.type"],
    ["a nonce of 26", { components: [line("x")], nonce: "n".repeat(26) }, "nonce"],
    [
      "an enforced nonce that is missing",
      { components: [line("x")], enforce_nonce: true },
      "nonce",
    ],
    [
      "a file shown that is not attached",
      { components: [{ type: 13, file: { url: "attachment://a" } }] },
      "components.0.file.url",
    ],
    ["an empty gallery", { components: [gallery([])] }, "components.0.items"],
    [
      "11 pictures in a gallery",
      { components: [gallery(many(11, () => picture()))] },
      "components.0.items",
    ],
    [
      "a picture shown that is not attached",
      { components: [gallery([picture({ media: { url: "attachment://a.png" } })])] },
      "components.0.items.0.media.url",
    ],
    [
      "a picture's text of 1,025",
      { components: [gallery([picture({ description: "d".repeat(1_025) })])] },
      "components.0.items.0.description",
    ],
    [
      "a picture's text that is blank",
      { components: [gallery([picture({ description: " " })])] },
      "components.0.items.0.description",
    ],
    [
      "mentions not stated",
      { components: [line("x")], allowed_mentions: undefined },
      "allowed_mentions",
    ],
    [
      "mentions by kind and by name at once",
      { components: [line("x")], allowed_mentions: { parse: ["users"], users: ["1"] } },
      "allowed_mentions",
    ],
    ["2,001 characters without V2", { flags: 0, content: "x".repeat(2_001) }, "content"],
    ["nothing in it", { flags: 0, content: " " }, "content"],
  ])("for %s", (_what, body, at) => {
    expect(places(body)).toContain(at);
  });

  it("for a file that no component shows", () => {
    expect(places({ components: [line("x")] }, ["a.txt"])).toEqual(["components"]);
  });

  it("never for a picture that is attached and shown", () => {
    const item = picture({ media: { url: "attachment://a.png" }, description: "d".repeat(1_024) });
    expect(places({ components: [line("x"), gallery([item])] }, ["a.png"])).toEqual([]);
  });

  it("never for one at the limits", () => {
    const components = [
      line("x".repeat(4_000)),
      gallery(many(10, () => picture())),
      row(...many(5, (n) => button(n))),
      select(many(25, option)),
    ];
    expect(places({ components, nonce: "n".repeat(25), enforce_nonce: true })).toEqual([]);
  });
});
