import type { Member, Stores } from "../../commands/kit/ports.ts";
import { balanceOf, balances, foldLots } from "../../shared/stock/ledger.ts";
import type { Lot, Movement } from "../../shared/stock/types.ts";
import { writeWhen } from "../../shared/words/write-when.ts";

/**
 * Writes a member's ledger, batch by batch, with its balance. False when a balance does not hold, or
 * when the kept lots are not what the ledger adds up to.
 */
export async function writeLedger(
  stores: Stores,
  member: Member,
  write: (text: string) => void,
): Promise<boolean> {
  const { batches, changes } = await stores.stocks.ledger(member.id);
  const { lots } = await stores.stocks.load(member.id);
  let holds = sameLots(foldLots(batches, changes), lots);
  if (!holds) write(`!! the lots of ${member.name} are not the sum of the ledger\n`);
  for (const batch of batches) {
    write(`\n${member.name}, ${batch.title} (${batch.id})\n`);
    for (const movement of changes.flatMap((change) => change.movements)) {
      if (movement.batchId === batch.id) write(`  ${line(movement, member.choice.zone)}\n`);
    }
    const sum = balanceOf(batch, changes, lots);
    const good = balances(sum);
    holds = holds && good;
    write(
      `  cooked ${sum.cooked} = fridge ${sum.fridge} + freezer ${sum.freezer} + thawing ${sum.thawing} + ` +
        `eaten ${sum.ate} + given ${sum.gave} + thrown away ${sum.threwAway}: ${good ? "holds" : "DOES NOT HOLD"}\n`,
    );
  }
  return holds;
}

function line(movement: Movement, zone: string): string {
  const what = movement.undoes === null ? movement.kind : `undone: ${movement.undoes}`;
  return `${writeWhen(movement.at, zone).padEnd(18)} ${what.padEnd(12)} ${movement.portions}`;
}

function sameLots(folded: readonly Lot[], kept: readonly Lot[]): boolean {
  const brief = (lots: readonly Lot[]): string =>
    lots
      .map(
        (lot) => `${lot.id} ${lot.place} ${lot.portions} ${lot.since.toString()} ${lot.usedDays}`,
      )
      .sort()
      .join("\n");
  return brief(folded) === brief(kept);
}
