import { describe, expect, it } from "vitest";
import type { Command } from "../../../commands/kit/command.ts";
import type { Actor } from "../../../commands/kit/context.ts";
import { foodBook } from "../../../shared/food/book.ts";
import { createBot } from "../../../src/bot/dispatch.ts";
import type { Asked, Bot } from "../../../src/bot/face.ts";
import { manualClock } from "../../../src/clock.ts";
import { type Log, silentLog } from "../../../src/log.ts";
import { T0 } from "../jobs/fake-deliveries.ts";
import { COACH_ROLE, fakeStores, groups } from "./fake-stores.ts";
import { echo, setup, suggest } from "./sample-commands.ts";

interface Entry {
  readonly fields: object;
  readonly message: string;
}

function botWith(extra: readonly Command[] = []): { bot: Bot; errors: Entry[] } {
  const errors: Entry[] = [];
  const log: Log = { ...silentLog, error: (fields, message) => errors.push({ fields, message }) };
  const bot = createBot({
    face: "terminal",
    commands: [echo, setup, ...extra],
    stores: fakeStores(),
    groupOf: async () => groups["g1"] ?? null,
    bookOf: async () => foodBook([]),
    clock: manualClock(T0),
    newId: () => "abcdefgh1234",
    log,
  });
  return { bot, errors };
}

function asked(name: string, groupId = "g1", rest: Partial<Actor> = {}): Asked {
  const actor: Actor = {
    userId: `user-${name}`,
    name,
    roleIds: [],
    isManager: false,
    ...rest,
  };
  return { groupId, groupName: "Group", actor, requestId: "r1" };
}

describe("a command", () => {
  it("runs for the member of the group it came from, with a cause that names face and request", async () => {
    const { bot } = botWith();
    const answer = await bot.command(asked("ana"), ["echo"], { what: "hi" });
    expect(answer.heading).toBe("g1 ana member hi terminal:r1");
  });

  it.each([
    [{ isManager: true }, "coach"],
    [{ roleIds: [COACH_ROLE] }, "coach"],
    [{ roleIds: ["another role"] }, "member"],
  ])("takes for the coach whoever manages the server or bears the role: %j", async (rest, word) => {
    const { bot } = botWith();
    const answer = await bot.command(asked("ana", "g1", rest), ["echo"], { what: "hi" });
    expect(answer.heading).toContain(` ${word} `);
  });

  it("of the coach refuses everyone else, also through its buttons and completions", async () => {
    const { bot } = botWith();
    const path = ["group", "setup"];
    expect((await bot.command(asked("ana"), path, {})).heading).toContain("for the group's coach");
    expect((await bot.press(asked("ana"), "group setup.go", [])).heading).toContain("coach");
    expect(await bot.complete(asked("ana"), path, "role", "")).toEqual([]);
    const coach = asked("ana", "g1", { isManager: true });
    expect((await bot.command(coach, path, {})).heading).toBe("g1 ana coach");
    expect(await bot.complete(coach, path, "role", "")).toHaveLength(1);
  });

  it("that refuses becomes a private reply: first sentence as heading, the others below", async () => {
    const { bot, errors } = botWith();
    const answer = await bot.command(asked("ana"), ["echo"], { what: "refuse" });
    expect(answer).toMatchObject({
      heading: "First fault.",
      parts: [{ kind: "text", lines: ["Second fault."] }],
      audience: "private",
    });
    expect(errors).toEqual([]);
  });

  it("answers what its own schema rejects with the schema's sentences", async () => {
    const { bot } = botWith();
    const answer = await bot.command(asked("ana"), ["echo"], { what: "far too long a text" });
    expect(answer.heading).toBe("what must be short.");
  });

  it("with a bug apologises with an id that the log has too, and shows nothing of the error", async () => {
    const { bot, errors } = botWith();
    const answer = await bot.command(asked("ana"), ["echo"], { what: "break" });
    expect(answer.audience).toBe("private");
    expect(JSON.stringify(answer)).toContain("abcdefgh");
    expect(JSON.stringify(answer)).not.toContain("hunter2");
    expect(errors).toHaveLength(1);
    const { err, ...fields } = { err: null, ...errors[0]?.fields };
    expect(err).toBeInstanceOf(Error);
    // Nothing that leads to the member: they tell their coach the error's id.
    expect(fields).toEqual({ errorId: "abcdefgh", what: "echo", groupId: "g1" });
  });

  it.each([
    [{}, "/echo needs what: anything at all."],
    [{ what: "x", other: "y" }, '/echo has no option "other"; it has what, size, loud, file.'],
    [{ what: "x", size: "m" }, "size must be one of: s, l."],
    [{ what: "x", loud: "perhaps" }, "loud must be one of: yes, no."],
    [{ what: "x", file: "text" }, "file must be an attached file."],
    [{ what: { name: "a", bytes: new Uint8Array() } }, "what is text, not a file."],
    [{ what: "x".repeat(6_001) }, "what is too long; keep it under 6,000 characters."],
    [JSON.parse('{"what":"x","__proto__":"y"}'), '/echo has no option "__proto__"'],
  ])("is held to its declaration: %#", async (raw, sentence) => {
    const { bot } = botWith();
    expect((await bot.command(asked("ana"), ["echo"], raw)).heading).toContain(sentence);
  });

  it("nobody knows gets a pointer to the list", async () => {
    const { bot } = botWith();
    const answer = await bot.command(asked("ana"), ["ecco"], {});
    expect(answer.heading).toBe("There is no command /ecco. Type /help for the list.");
  });

  it("typed in a direct message points to the server", async () => {
    const { bot } = botWith();
    const answer = await bot.command(asked("ana", ""), ["echo"], { what: "hi" });
    expect(answer.heading).toContain("works in your group's server");
  });

  it("under a request id too long to keep whole is an error, not a shortened cause", async () => {
    const { bot, errors } = botWith();
    const long = { ...asked("ana"), requestId: "r".repeat(100) };
    await bot.command(long, ["echo"], { what: "hi" });
    expect(errors).toHaveLength(1);
  });
});

describe("a press", () => {
  it("hands over its arguments, what was picked last", async () => {
    const { bot } = botWith();
    const answer = await bot.press(asked("ana"), "echo.again~lot-ana~2", ["picked"]);
    expect(answer.heading).toBe("g1 ana member lot-ana+2+picked");
  });

  it.each([
    "echo.gone",
    "nothing.again",
    "no id of ours",
    "echo.constructor",
    `echo.again~${"x".repeat(100)}`,
  ])("that leads nowhere says so: %s", async (id) => {
    const { bot, errors } = botWith();
    const answer = await bot.press(asked("ana"), id, []);
    expect(answer.heading).toContain("no longer leads anywhere");
    expect(errors).toEqual([]);
  });

  it("in a direct message stands for the group of the lot it names", async () => {
    const { bot } = botWith();
    const answer = await bot.press(asked("ana", ""), "echo.again~lot-ana", []);
    expect(answer.heading).toBe("g1 ana member lot-ana");
  });

  it("in a direct message on another's lot reads just like one on no lot at all", async () => {
    const { bot } = botWith();
    const another = await bot.press(asked("ana", ""), "echo.again~lot-ben", []);
    const none = await bot.press(asked("ana", ""), "echo.again~lot-nobody", []);
    const bare = await bot.press(asked("ana", ""), "echo.again", []);
    expect(another.heading).toContain("not yours to press");
    expect(another).toEqual(none);
    expect(another).toEqual(bare);
    expect(JSON.stringify(another)).not.toContain("ben");
  });
});

describe("the buttons of an answer in a direct message", () => {
  it("stay good for who got them and nobody else, though they name no lot", async () => {
    const { bot } = botWith();
    const answer = await bot.press(asked("ana", ""), "echo.board~lot-ana", []);
    const [button] = answer.buttons;
    const [choice] = answer.choices;
    const again = await bot.press(asked("ana", ""), button?.id ?? "", []);
    expect(again.heading).toBe("g1 ana member 7");
    const picked = await bot.press(asked("ana", ""), choice?.id ?? "", ["one"]);
    expect(picked.heading).toBe("g1 ana member one");
    const other = await bot.press(asked("ben", ""), button?.id ?? "", []);
    expect(other.heading).toContain("not yours to press");
  });
});

describe("completion", () => {
  it("gives at most 25, none with a value over 100 characters, labels cut to 100", async () => {
    const { bot } = botWith([
      suggest(60, (n) => ({ label: "l".repeat(200), value: "v".repeat(n % 2 === 0 ? 100 : 101) })),
    ]);
    const list = await bot.complete(asked("ana"), ["suggest"], "what", "");
    expect(list).toHaveLength(25);
    for (const { label, value } of list) {
      expect(label).toHaveLength(100);
      expect(value).toHaveLength(100);
    }
  });

  it("never throws: an error gives no suggestions", async () => {
    const { bot } = botWith([suggest(1, () => ({ label: "a", value: "a" }))]);
    expect(await bot.complete(asked("ana"), ["suggest"], "what", "break")).toEqual([]);
    expect(await bot.complete(asked("ana", "g9"), ["suggest"], "what", "")).toEqual([]);
    expect(await bot.complete(asked("ana"), ["nothing"], "what", "")).toEqual([]);
    expect(await bot.complete(asked("ana"), ["suggest"], "other", "")).toEqual([]);
  });
});
