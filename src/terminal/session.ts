import { Temporal } from "temporal-polyfill";
import type { AttachedFile, Command } from "../../commands/kit/command.ts";
import type { Outcome } from "../../shared/outcome.ts";
import type { Instant } from "../../shared/time.ts";
import type { Asked, Bot, Opening } from "../bot/face.ts";
import { type Filling, startFilling } from "./fill-form.ts";
import { type Line, parseLine } from "./parse-line.ts";
import { resolveMove } from "./parse-move.ts";
import { createPeople, type Person } from "./people.ts";
import { type PlayParts, playOn } from "./play-on.ts";
import { readLocalFile } from "./read-file.ts";
import { withSavedPrints } from "./save-prints.ts";
import type { Screen } from "./screen.ts";
import { wallClock } from "./wall-clock.ts";

/** `tick` must send through a messenger that prints on the same screen. */
export interface SessionParts extends PlayParts {
  readonly bot: Bot;
  readonly commands: readonly Command[];
  readonly screen: Screen;
  /** Whose wall clock the prompt and `now` speak of. */
  readonly zone: string;
  readonly newId: () => string;
  readonly group?: { readonly id: string; readonly name: string };
  readonly readFile?: (path: string) => Promise<Outcome<AttachedFile, string>>;
  /** Where what is to be printed is written; "data/prints" by default. */
  readonly printsFolder?: string;
}

export interface TerminalSession {
  /** Does what a typed line asks for, and prints the answer. */
  say(line: string): Promise<"go on" | "quit">;
  /** Moves the clock on, stopping wherever something falls due on the way; never back. */
  moveTo(instant: Instant): Promise<void>;
  /** "Sat 24 Oct 18:30 you> " */
  prompt(): string;
  people(): readonly Person[];
  /** The request as the present speaker makes it; in a direct message the platform tells no group and no roles. */
  asked(isDirect?: boolean): Asked;
}

export const TERMINAL_GROUP = { id: "terminal", name: "Terminal" };

const MOVE_MAX = { hours: 366 * 24 };

const SWITCHES = [
  "In the terminal:",
  "  3              presses button 3 of the last messages",
  "  as Anna        you are Anna now; as Kim coach makes Kim the coach",
  "  now +2h        moves the clock on and delivers what falls due; also +1d,",
  "                 tomorrow 08:00, sun 18:30, 2026-10-24 18:30",
  "  file:menu.txt  reads that file, where a command takes one",
  "  quit           ends",
  "",
];

/** The state of a terminal chat: who speaks, what time it is, what can be picked. The first person is "you", the coach. */
export function createTerminalSession(parts: SessionParts): TerminalSession {
  const { clock, screen, zone } = parts;
  const group = parts.group ?? TERMINAL_GROUP;
  const people = createPeople();
  let speaker = people.meet("you", true);
  let filling: Filling | null = null;

  const asked = (isDirect = false): Asked => ({
    groupId: isDirect ? "" : group.id,
    groupName: isDirect ? "" : group.name,
    actor: {
      userId: speaker.userId,
      name: speaker.name,
      roleIds: [],
      isManager: speaker.isCoach && !isDirect,
    },
    requestId: parts.newId(),
  });

  async function run(line: Line): Promise<void> {
    switch (line.kind) {
      case "command":
        filling = await runCommand(parts, asked(), line);
        return;
      case "help":
        return runHelp(parts, asked());
      case "pick":
        filling = await runPick(parts, asked, line.number);
        return;
      case "now":
        return runNow(parts, line);
      case "as":
        speaker = people.meet(line.name, line.isCoach);
        return screen.line(`Speaking now: ${speaker.name}${speaker.isCoach ? ", the coach" : ""}.`);
      case "unclear":
        return screen.line(line.sentence);
      case "nothing":
      case "quit":
        return;
    }
  }

  async function fill(open: Filling, text: string): Promise<void> {
    const result = open.take(text);
    if (result === "more") return;
    filling = null;
    if (result === "left") return screen.line("The form is left; nothing was sent.");
    screen.beginTurn();
    const answer = await parts.bot.submit(asked(), open.form.id, result);
    screen.show(await withSavedPrints(answer, parts.printsFolder), { isDirect: false });
  }

  return {
    async say(text) {
      if (filling !== null) {
        await fill(filling, text);
        return "go on";
      }
      const line = parseLine(text, parts.commands);
      if (line.kind === "nothing") return "go on";
      if (line.kind === "quit") return "quit";
      screen.beginTurn();
      await run(line);
      // What the command made due at once, and what fell due while nobody typed.
      await parts.tick();
      return "go on";
    },
    moveTo: (instant) => playOn(parts, instant),
    prompt: () =>
      filling === null ? `${wallClock(clock.now(), zone)} ${speaker.name}> ` : "text> ",
    people: people.list,
    asked,
  };
}

async function runCommand(
  parts: SessionParts,
  asked: Asked,
  line: Extract<Line, { kind: "command" }>,
): Promise<Filling | null> {
  const { screen, bot } = parts;
  const given = [...Object.keys(line.texts), ...Object.keys(line.files)];
  const opening = { path: line.command.path, given, texts: line.texts };
  if (bot.opensForm(opening)) return openForm(parts, asked, opening, false);
  const raw: Record<string, string | AttachedFile> = { ...line.texts };
  for (const [name, path] of Object.entries(line.files)) {
    const file = await (parts.readFile ?? readLocalFile)(path);
    if (!file.ok) {
      screen.line(file.problem);
      return null;
    }
    raw[name] = file.value;
  }
  const { path } = line.command;
  if (path.join(" ") === "help" && Object.keys(raw).length === 0) await runHelp(parts, asked);
  else {
    const answer = await bot.command(asked, path, raw);
    screen.show(await withSavedPrints(answer, parts.printsFolder), { isDirect: false });
  }
  return null;
}

async function openForm(
  { screen, bot }: SessionParts,
  asked: Asked,
  opening: Opening,
  isDirect: boolean,
): Promise<Filling | null> {
  const made = await bot.form(asked, opening);
  if ("fields" in made) return startFilling(made, screen);
  screen.show(made, { isDirect });
  return null;
}

async function runHelp({ screen, bot }: SessionParts, asked: Asked): Promise<void> {
  screen.show(await bot.command(asked, ["help"], {}), { isDirect: false });
  for (const line of SWITCHES) screen.exact(line);
}

async function runPick(
  parts: SessionParts,
  asked: (isDirect: boolean) => Asked,
  number: number,
): Promise<Filling | null> {
  const { screen, bot } = parts;
  const found = screen.find(number);
  if (found === null) {
    screen.line(`There is no [${number}] to press. Type /stock for fresh buttons.`);
    return null;
  }
  const { isDirect, pressId, picked } = found;
  if (bot.opensForm({ pressId })) return openForm(parts, asked(isDirect), { pressId }, isDirect);
  const answer = await bot.press(asked(isDirect), pressId, picked);
  screen.show(await withSavedPrints(answer, parts.printsFolder), { isDirect });
  return null;
}

async function runNow(
  parts: SessionParts,
  { move }: Extract<Line, { kind: "now" }>,
): Promise<void> {
  const { clock, screen, zone } = parts;
  const now = clock.now();
  const target = move === null ? now : resolveMove(move, now, zone);
  if (Temporal.Instant.compare(target, now) < 0) {
    return screen.line(
      `The clock only moves on, and it is ${wallClock(now, zone)} already. Type a later time, such as now +2h.`,
    );
  }
  if (Temporal.Instant.compare(target, now.add(MOVE_MAX)) > 0) {
    return screen.line("That is more than a year ahead; move the clock a year at a time at most.");
  }
  await playOn(parts, target);
  screen.line(`It is ${wallClock(clock.now(), zone)} (${zone}).`);
}
