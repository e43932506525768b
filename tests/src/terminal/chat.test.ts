import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { completeLine } from "../../../src/terminal/complete-line.ts";
import { rowOf } from "../jobs/fake-deliveries.ts";
import { chatRig, NOON } from "./chat-kit.ts";

/** Due at 18:30 that evening in Berlin, which is 16:30 for Ana, who lives by UTC. */
const evening = rowOf("thaw", {
  dueAt: NOON.add({ minutes: 390 }),
  helpsUntil: NOON.add({ hours: 24 }),
});

describe("a chat from a pipe", () => {
  it("echoes each line behind its prompt, answers it, delivers on the way, and ends with the input", async () => {
    const { pipe } = chatRig([evening]);
    const shown = await pipe(
      "# a note",
      "/echo what:hello",
      "as Ana",
      "1",
      "now tomorrow 08:00",
      "1",
      "2",
    );
    expect(shown).toBe(`Sat 24 Oct 12:00 you> # a note
Sat 24 Oct 12:00 you> /echo what:hello
echo hello by you (coach) in terminal

[1] Do hello

Sat 24 Oct 12:00 you> as Ana
Speaking now: Ana.
Sat 24 Oct 12:00 Ana> 1
pressed echo.hello by Ana in terminal

Sat 24 Oct 12:00 Ana> now tomorrow 08:00
-- Sat 24 Oct 16:30 (UTC), to ana --
thaw

Mind it.

[1] Done

It is Sun 25 Oct 08:00 (Europe/Berlin).
Sun 25 Oct 08:00 Ana> 1
pressed echo.remind~rthaw by Ana in a direct message

Sun 25 Oct 08:00 Ana> 2
There is no [2] to press. Type /stock for fresh buttons.
`);
  });

  it("stops at quit and reads no further", async () => {
    const shown = await chatRig().pipe("quit", "/echo what:unheard");
    expect(shown).toBe("Sat 24 Oct 12:00 you> quit\n");
  });

  it("tells its own switches after the bot's help", async () => {
    const shown = await chatRig().pipe("help");
    expect(shown).toContain("help by you");
    expect(shown).toContain("now +2h");
    expect(await chatRig().pipe("/help")).toContain("now +2h");
  });

  it("never moves the clock back, nor more than a year on", async () => {
    const { pipe, deliveries } = chatRig([evening]);
    const shown = await pipe("now 2026-10-24 11:59", "now 2028-01-01 00:00", "now");
    expect(shown).toContain("only moves on, and it is Sat 24 Oct 12:00 already");
    expect(shown).toContain("more than a year ahead");
    expect(shown).toContain("It is Sat 24 Oct 12:00");
    expect(deliveries.state("thaw")).toBe("scheduled");
  });
});

describe("numbers to pick", () => {
  it("go on through the messages of one turn and begin again with the next", async () => {
    const later = rowOf("later", {
      dueAt: evening.dueAt.add({ hours: 1 }),
      helpsUntil: evening.helpsUntil,
    });
    const { pipe } = chatRig([evening, later]);
    const shown = await pipe("now +12h", "2", "/echo what:new", "2");
    expect(shown).toContain("pressed echo.remind~rlater by you in a direct message");
    expect(shown).toContain("[1] Do new");
    expect(
      shown.trimEnd().endsWith("There is no [2] to press. Type /stock for fresh buttons."),
    ).toBe(true);
  });
});

describe("people", () => {
  it("are one under one name, whatever its case, and stay coach once made so", async () => {
    const shown = await chatRig().pipe("as Kim coach", "as you", "as KIM", "/echo");
    expect(shown).toContain("echo by Kim (coach) in terminal");
  });
});

describe("a file option", () => {
  const folder = mkdtempSync(join(tmpdir(), "clerk-chat-"));
  const file = (name: string, size: number): string => {
    writeFileSync(join(folder, name), "x".repeat(size));
    return join(folder, name);
  };

  it("reads the file at that path, up to 64 KiB", async () => {
    const shown = await chatRig().pipe(`/read what:${file("full.txt", 65_536)}`);
    expect(shown).toContain("read full.txt 65536 B by you");
  });

  it.each([
    ["larger than 64 KiB", () => file("big.txt", 65_537)],
    ["there is no such file", () => join(folder, "none.txt")],
    ["it is a folder", () => folder],
  ])("that cannot be read says why: %s", async (why, path) => {
    const shown = await chatRig().pipe(`/read what:${path()}`);
    expect(shown.replace(/\s+/gu, " ")).toContain(why);
    expect(shown).not.toContain("by you");
  });
});

describe("Tab", () => {
  it.each([
    ["/e", ["/echo "], "/e"],
    ["/nothing", [], "/nothing"],
    ["/echo ", ["what:"], ""],
    ["/echo w", ["what:"], "w"],
    ["/echo what:bean", ["Bean pot", "Bean stew"], "bean"],
    ["/echo what:Bean s", ["Bean stew"], "Bean s"],
    ["/echo what:odd", ['"Odd: name:x"'], "odd"],
    ["/echo what:Bean stew ", [], ""],
    ["as y", ["you"], "y"],
    ["qu", ["quit"], "qu"],
  ])("after %j offers what can follow", async (line, offers, replaced) => {
    expect(await completeLine(chatRig().complete, line)).toEqual([offers, replaced]);
  });

  it("fills in a form line by line, keeping blank lines and what nothing was typed over", async () => {
    const { pipe } = chatRig();
    const shown = await pipe(
      "/echo what:form",
      "1",
      "first",
      "",
      "/stock is text here",
      ".",
      "short",
    );
    expect(shown).toContain("  | as it was");
    expect(shown).toContain(JSON.stringify("first\n\n/stock is text here").slice(1, -1));
    expect(shown.replace(/\s+/gu, " ")).toContain('"note":"short"} by you');
  });

  it("leaves a form at two dots, sending nothing", async () => {
    const { pipe } = chatRig();
    const shown = await pipe("/echo what:form", "1", "first", "..", "/echo what:after");
    expect(shown).toContain("nothing was sent");
    expect(shown).not.toContain("echo.filled");
    expect(shown).toContain("echo after by you");
  });

  it("keeps what stands in a form where nothing is typed", async () => {
    const { pipe } = chatRig();
    expect(await pipe("/echo what:form", "1", ".", "")).toContain('{"text":"as it was","note":""}');
  });
});
