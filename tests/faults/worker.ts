import { setAhead } from "./clock-shim.ts";
import { type Answer, type Order, order } from "./messages.ts";

// A process of its own with the bot's own parts: its store, its sweep, its messenger and REST manager.
// Loads them first and is then told which database and which platform; so it is quickly replaced.

const { systemClock } = await import("../../src/clock.ts");
const { compose } = await import("../../src/compose.ts");
const { createMailbox } = await import("../../src/discord/mailbox.ts");
const { createMessenger } = await import("../../src/discord/messenger.ts");
const { createLog } = await import("../../src/log.ts");

const log = createLog(process.env["FAULTS_LOG"] === "1" ? "warn" : "silent", process.stderr, []);

async function open(told: Extract<Order, { do: "open" }>) {
  setAhead(told.aheadMs);
  const { databaseUrl, apiBase, token, applicationId } = told;
  const app = await compose({ face: "discord", databaseUrl, clock: systemClock, log });
  if (!app.ok) throw new Error(app.problem.sentence);
  const mailbox = createMailbox({ token, applicationId, apiBase });
  const messenger = createMessenger({ mailbox, log, onTokenRefused: () => undefined });
  const tick = app.value.tickFor(messenger);
  const close = async (): Promise<void> => {
    mailbox.stop();
    await app.value.close();
  };
  return { tick, close, deliveries: app.value.deliveries };
}

let opened: Awaited<ReturnType<typeof open>> | null = null;

async function obey(told: Order): Promise<Answer | null> {
  if (told.do === "open") {
    opened = await open(told);
    return { said: "open" };
  }
  if (told.do === "clock") {
    setAhead(told.aheadMs);
    return null;
  }
  if (opened === null) throw new Error("nothing is open");
  switch (told.do) {
    case "sweep":
      return { said: "swept", errors: (await opened.tick()).errors };
    case "next":
      return { said: "next", atMs: (await opened.deliveries.nextDue())?.epochMilliseconds ?? null };
    case "close":
      await opened.close();
      opened = null;
      return { said: "closed" };
  }
}

const say = (what: Answer): void => {
  process.send?.(what);
};

process.on("message", (raw) => {
  obey(order.parse(raw)).then(
    (said) => said !== null && say(said),
    (error: unknown) => say({ said: "broken", why: String(error) }),
  );
});
process.on("disconnect", () => process.exit());
say({ said: "warm" });
