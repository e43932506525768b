import { once } from "node:events";
import { openUrl } from "../postgres-place.ts";
import { claimAll, claimOnce } from "./claiming.ts";

// A process of its own that claims what is due: all of it, or (told to hold) one member's, after which
// it neither settles nor ends. Says what it holds as JSON, one delivery a line. With a number it waits
// after so many deliveries until it is told to go on.

const [url = "", worker = "", what] = process.argv.slice(2);
const say = (value: unknown): void => {
  process.stdout.write(`${JSON.stringify(value)}\n`);
};
const store = await openUrl(url);
say("ready");
process.stdin.once("data", async () => {
  if (what === "hold") {
    say(await claimOnce(store.deliveries, worker));
    return;
  }
  let claims = 0;
  await claimAll(store.deliveries, worker, async (held) => {
    claims += 1;
    const goesOn = claims === Number(what) ? once(process.stdin, "data") : null;
    say(held);
    await goesOn;
  });
  await store.close();
  process.exit();
});
