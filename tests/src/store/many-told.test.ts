import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { cooked, publication, recipe, telling, world } from "./kit.ts";
import { openFile, sqlitePlace } from "./sqlite-place.ts";

const MEMBERS = 1_000;

/** Copies of a member and of the batch and lot that they have, straight into the file. */
function multiply(path: string, memberId: string): void {
  const file = new Database(path);
  const copy = (table: string, changed: Readonly<Record<string, string>>, where: string) => {
    const columns = file.pragma(`table_info("${table}")`) as readonly { readonly name: string }[];
    const values = columns.map(({ name }) => changed[name] ?? `"${name}"`).join(", ");
    return `INSERT INTO "${table}" SELECT ${values} FROM "${table}" WHERE ${where} = '${memberId}'`;
  };
  file.transaction(() => {
    for (let n = 1; n < MEMBERS; n += 1) {
      const own = (name: string) => `"${name}" || '-${n}'`;
      const [id, member] = [own("id"), own("memberId")];
      file.exec(copy("Member", { id, userId: own("userId") }, "id"));
      file.exec(copy("Batch", { id, memberId: member }, "memberId"));
      file.exec(copy("Lot", { id, memberId: member, batchId: own("batchId") }, "memberId"));
    }
  })();
  file.close();
}

test("a change that concerns a thousand members is published with a row for each, soon even where the machine is busy", async () => {
  const place = await sqlitePlace();
  const first = await openFile(place.path);
  const w = await world(first);
  await cooked(w);
  await first.close();
  multiply(place.path, w.member.id);
  const store = await openFile(place.path);
  try {
    const input = { ...publication(w, recipe({ portions: 8 }), "c2"), tell: telling(w) };
    const start = performance.now();
    await store.stores.recipes.publishOf(w.published.id, input);
    const tookMs = performance.now() - start;
    expect((await store.upkeep.backlog(input.now)).due).toBe(MEMBERS);
    expect(tookMs).toBeLessThan(10_000);
  } finally {
    await store.close();
    await place.remove();
  }
});
