import type { Clock } from "../clock.ts";
import type { Messenger, OutgoingMessage } from "../jobs/ports.ts";
import type { Screen } from "./screen.ts";
import { wallClock } from "./wall-clock.ts";

const REMEMBERED = 1_000;

/** Prints reminders as they would arrive; a nonce printed before is not printed again. */
export function createTerminalMessenger(screen: Screen, clock: Clock): Messenger {
  const printed = new Set<string>();
  return {
    async send(message) {
      const { nonce, reply } = message;
      const isDirect = message.to.deliverTo === "direct message";
      if (!printed.has(nonce)) {
        screen.show(reply, { header: headerOf(message, isDirect, clock), isDirect });
        remember(printed, nonce);
      }
      return {
        kind: "sent",
        messageId: `terminal-${nonce}`,
        where: isDirect ? "direct message" : "channel",
        directClosed: false,
      };
    },
  };
}

function headerOf({ to, group }: OutgoingMessage, isDirect: boolean, clock: Clock): string {
  const { zone } = to.choice;
  const place = isDirect ? `to ${to.name}` : `in ${group.name}, for ${to.name}`;
  return `-- ${wallClock(clock.now(), zone)} (${zone}), ${place} --`;
}

function remember(printed: Set<string>, nonce: string): void {
  printed.add(nonce);
  const [oldest] = printed;
  if (printed.size > REMEMBERED && oldest !== undefined) printed.delete(oldest);
}
