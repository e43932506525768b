import { readPress } from "../../commands/kit/press.ts";
import type { Bot, Opening } from "../bot/face.ts";
import type { Metrics, Part } from "./metrics.ts";

/** The same bot, its answers timed. */
export function watchBot(bot: Bot, metrics: Pick<Metrics, "answered">): Bot {
  const timed = async <T>(command: string, part: Part, work: Promise<T>): Promise<T> => {
    const startMs = performance.now();
    const answer = await work;
    metrics.answered(command, part, (performance.now() - startMs) / 1_000);
    return answer;
  };
  return {
    opensForm: (opening) => bot.opensForm(opening),
    form: (asked, opening) => timed(commandOf(opening), "form", bot.form(asked, opening)),
    submit: (asked, id, filled) => timed(pressed(id), "form", bot.submit(asked, id, filled)),
    command: (asked, path, raw) => timed(path.join(" "), "command", bot.command(asked, path, raw)),
    press: (asked, id, picked) => timed(pressed(id), "button", bot.press(asked, id, picked)),
    complete: (asked, path, option, typed, others) =>
      timed(path.join(" "), "completion", bot.complete(asked, path, option, typed, others)),
  };
}

function commandOf(opening: Opening): string {
  return "pressId" in opening ? pressed(opening.pressId) : opening.path.join(" ");
}

function pressed(id: string): string {
  return readPress(id)?.command ?? "";
}
