import type { Bot } from "../bot/face.ts";

/**
 * What is worked on at once: enough to keep a server's ten connections busy. More would only wait for the same
 * database, and hold up what is quick.
 */
const AT_ONCE = 16;

/** Does work when its turn comes, so many pieces at once, in the order of asking. */
function inTurns(atOnce: number = AT_ONCE): <T>(work: () => Promise<T>) => Promise<T> {
  const waiting: (() => void)[] = [];
  let free = atOnce;
  return async (work) => {
    if (free > 0) free -= 1;
    else await new Promise<void>((resolve) => waiting.push(resolve));
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next === undefined) free += 1;
      else next();
    }
  };
}

/**
 * The same bot, which a rush does not stall: commands and presses wait their turn, told "thinking" if that
 * takes long. What cannot be put off so, a completion or the opening of a form, goes straight ahead.
 */
export function unhurried(bot: Bot, atOnce: number = AT_ONCE): Bot {
  const turn = inTurns(atOnce);
  return {
    opensForm: (opening) => bot.opensForm(opening),
    form: (asked, opening) => bot.form(asked, opening),
    complete: (...at) => bot.complete(...at),
    command: (asked, path, raw) => turn(() => bot.command(asked, path, raw)),
    press: (asked, id, picked) => turn(() => bot.press(asked, id, picked)),
    submit: (asked, id, filled) => turn(() => bot.submit(asked, id, filled)),
  };
}
