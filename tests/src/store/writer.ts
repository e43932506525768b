import { cooked, eating, world } from "./kit.ts";
import { openFile } from "./sqlite-place.ts";

// A process of its own that keeps changing a member's stock in a file: a cooking of six, eaten one by
// one, and another cooking. Says the number of each change that was recorded, one a line.

const store = await openFile(process.argv[2] ?? "");
for (let n = 0; ; n += 1) {
  const w = await world(store, `w${n}`);
  const lot = await cooked(w);
  for (let version = 2; version <= 7; version += 1) {
    const left = { ...lot, portions: 8 - version };
    const result = await store.stores.stocks.record(
      eating(w, left, version, `eat ${n}.${version}`),
    );
    if (result !== "recorded") throw new Error(result);
    process.stdout.write(`${n * 6 + version - 1}\n`);
  }
}
