import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { type Command, command, type Option } from "../../../commands/kit/command.ts";
import { reply } from "../../../commands/kit/reply.ts";
import { parseLine } from "../../../src/terminal/parse-line.ts";
import { parseMove, resolveMove } from "../../../src/terminal/parse-move.ts";

function declared(path: Command["path"], names: readonly string[]): Command {
  const options = names.map(
    (name): Option => ({
      name,
      description: name,
      required: false,
      kind: name === "file" ? "file" : "text",
    }),
  );
  const input = z.object({}).loose();
  const handle = async () => reply("");
  return command({ path, description: "", who: "everyone", options, input, handle });
}

const commands = [
  declared(["recipe", "card"], ["recipe", "portions", "have"]),
  declared(["recipe", "publish"], ["file"]),
  declared(["stock"], []),
];

/** The line as "path {options}", or what else it is. */
function read(line: string): unknown {
  const parsed = parseLine(line, commands);
  if (parsed.kind !== "command") return parsed;
  return [parsed.command.path.join(" "), { ...parsed.texts, ...parsed.files }];
}

function sentence(line: string): string {
  const parsed = parseLine(line, commands);
  return parsed.kind === "unclear" ? parsed.sentence : `understood as ${parsed.kind}`;
}

describe("a command line", () => {
  it.each([
    ["/stock", "stock", {}],
    ["  /STOCK  ", "stock", {}],
    ["/recipe card recipe:Smoky bake", "recipe card", { recipe: "Smoky bake" }],
    [
      "/recipe card recipe:Smoky bake portions:8",
      "recipe card",
      { recipe: "Smoky bake", portions: "8" },
    ],
    [
      "/recipe   card  portions: 8   recipe:  Smoky bake ",
      "recipe card",
      { portions: "8", recipe: "Smoky bake" },
    ],
    [
      "/recipe card Recipe:bake HAVE:850 g thigh",
      "recipe card",
      { recipe: "bake", have: "850 g thigh" },
    ],
    [
      '/recipe card recipe:"Bake portions:two" portions:2',
      "recipe card",
      { recipe: "Bake portions:two", portions: "2" },
    ],
    ['/recipe card recipe: "Bake portions:two"', "recipe card", { recipe: "Bake portions:two" }],
    ["/recipe card recipe:Sunday prep: bake", "recipe card", { recipe: "Sunday prep: bake" }],
    ["/recipe card have:yesterday 18:30", "recipe card", { have: "yesterday 18:30" }],
    ['/recipe card recipe:the 10" pie', "recipe card", { recipe: 'the 10" pie' }],
    [
      "/recipe publish file:./my recipes/bake.txt",
      "recipe publish",
      { file: "./my recipes/bake.txt" },
    ],
  ])("%s", (line, path, options) => {
    expect(read(line)).toEqual([path, options]);
  });

  it.each([
    ["/recipe", "/recipe card, /recipe publish"],
    ["/recipe cart", "/recipe card, /recipe publish"],
    ["/recpie card", "There is no command /recpie. There are /recipe, /stock;"],
    ["/recipe card Smoky bake", "such as recipe:Smoky bake"],
    [
      "/recipe card receipe:Smoky bake",
      'no option "receipe"; this command knows recipe, portions, have.',
    ],
    ["/recipe card recipe:Smoky bake portion:8", 'no option "portion"'],
    ["/recipe card recipe:a recipe:b", "recipe is given twice"],
    ["/recipe card recipe:", "recipe is empty"],
    ['/recipe card recipe:"" portions:2', "recipe is empty"],
    ['/recipe card recipe:"Smoky bake portions:2', "not closed"],
    ["/stock everything", "takes no options"],
    ["/stock place:fridge", 'no option "place"; this command takes none.'],
    [`/recipe card recipe:${"x".repeat(6_001)}`, "too long"],
    ["stock", "begin with a slash"],
  ])("that cannot be understood says what to type: %s", (line, part) => {
    expect(sentence(line)).toContain(part);
  });

  it("of hostile length is read in no time", () => {
    const long = `/recipe card ${'recipe:" : a:'.repeat(450)}`;
    const started = performance.now();
    parseLine(long, commands);
    parseLine(`/recipe card ${" ".repeat(5_900)}x`, commands);
    parseLine(`/recipe card recipe:${"a".repeat(5_900)}`, commands);
    expect(performance.now() - started).toBeLessThan(200);
  });
});

describe("a switch", () => {
  it.each([
    ["", { kind: "nothing" }],
    ["# a note in a script", { kind: "nothing" }],
    ["3", { kind: "pick", number: 3 }],
    ["press 12", { kind: "pick", number: 12 }],
    ["as Anna", { kind: "as", name: "Anna", isCoach: false }],
    ["as Anna Maria coach", { kind: "as", name: "Anna Maria", isCoach: true }],
    ["now", { kind: "now", move: null }],
    ["help", { kind: "help" }],
    ["QUIT", { kind: "quit" }],
  ])("%j", (line, parsed) => {
    expect(parseLine(line, commands)).toEqual(parsed);
  });

  it.each([
    ["press it", "press 1"],
    ["as", "as Anna"],
    [`as ${"x".repeat(33)}`, "32 letters"],
    ["now whenever", "now +2h"],
  ])("that cannot be understood says what to type: %s", (line, part) => {
    expect(sentence(line)).toContain(part);
  });
});

describe("moving the clock", () => {
  // A Saturday, 12:00 in Berlin; the clocks go back the following night.
  const now = Temporal.Instant.from("2026-10-24T10:00:00Z");

  it.each([
    ["+2h", "2026-10-24T14:00"],
    ["+90m", "2026-10-24T13:30"],
    ["+1h30min", "2026-10-24T13:30"],
    ["+1d", "2026-10-25T12:00"],
    ["+1d2h", "2026-10-25T14:00"],
    ["2026-10-26 18:30", "2026-10-26T18:30"],
    ["2026-10-26T18:30", "2026-10-26T18:30"],
    ["today 18:30", "2026-10-24T18:30"],
    ["tomorrow 8:00", "2026-10-25T08:00"],
    ["tomorrow at 08:00", "2026-10-25T08:00"],
    ["18:30", "2026-10-24T18:30"],
    ["09:00", "2026-10-25T09:00"],
    ["Sunday 18:30", "2026-10-25T18:30"],
    ["sat 18:30", "2026-10-24T18:30"],
    ["sat 09:00", "2026-10-31T09:00"],
    ["wednesday 09:00", "2026-10-28T09:00"],
  ])("now %s reads as the wall clock of the zone, across a clock change too", (typed, expected) => {
    const move = parseMove(typed);
    const there = move === null ? null : resolveMove(move, now, "Europe/Berlin");
    const shown = there?.toZonedDateTimeISO("Europe/Berlin").toPlainDateTime();
    expect(shown?.toString({ smallestUnit: "minute" })).toBe(expected);
  });

  it("counts hours as hours that pass, also through the hour that occurs twice", () => {
    const move = parseMove("+24h");
    expect(move === null ? "" : resolveMove(move, now, "Europe/Berlin").toString()).toBe(
      "2026-10-25T10:00:00Z",
    );
  });

  it.each([
    "",
    "+",
    "+2",
    "2h",
    "-2h",
    "25:00",
    "12:60",
    "2026-02-30 10:00",
    "2026-10-26",
    "soon 08:00",
  ])("now %s is none", (typed) => {
    expect(parseMove(typed)).toBeNull();
  });
});
