import { type LotCodeProblem, lotByCode } from "../../shared/container-label/lot-code.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";
import type { Batch, Lot, Stock } from "../../shared/stock/types.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import type { Context } from "./context.ts";

/** What the code on a box leads to. */
export interface CodedPortions {
  readonly batch: Batch;
  /** The lot of this very code; null when all its portions have another place by now. */
  readonly lot: Lot | null;
  /** Everything that is left of its batch: portions of the box may have been moved without a new label. */
  readonly lots: readonly Lot[];
}

type CodeProblem =
  | LotCodeProblem
  /** Its batch is eaten, given or thrown away, by the records. */
  | { readonly code: "nothing left"; readonly typed: string; readonly batch: Batch };

/**
 * Where the portions of a typed or scanned code are now, among the asker's own alone: the code of anybody
 * else is as unknown as one that was never given out. A lot that is there goes before one that is empty.
 */
export async function portionsByCode(
  { stores, member }: Pick<Context, "stores" | "member">,
  own: Stock,
  typed: string,
): Promise<Outcome<CodedPortions, CodeProblem>> {
  const there = lotByCode(typed, own.lots);
  if (there.ok) return ok(leadingTo(own, there.value.batchId, there.value));
  if (there.problem.code !== "no lot of that code") return fail(there.problem);
  const everyLot = await stores.stocks.everyLot(member.id);
  const ofBatches = new Set(own.batches.map(({ id }) => id));
  const left = lotByCode(
    typed,
    everyLot.filter(({ batchId }) => ofBatches.has(batchId)),
  );
  if (left.ok) return ok(leadingTo(own, left.value.batchId, null));
  if (left.problem.code !== "no lot of that code") return fail(left.problem);
  const gone = lotByCode(typed, everyLot);
  if (!gone.ok) return fail(gone.problem);
  const found = await stores.stocks.findLot(gone.value.id);
  return found === null
    ? fail(there.problem)
    : fail({ code: "nothing left", typed: there.problem.typed, batch: found.batch });
}

function leadingTo(own: Stock, id: Batch["id"], lot: Lot | null): CodedPortions {
  const batch = own.batches.find((one) => one.id === id);
  if (batch === undefined) throw new Error("a lot without its batch");
  return { batch, lot, lots: own.lots.filter(({ batchId }) => batchId === id) };
}

/** What was wrong with a code, and what to do. */
export function sayCodeProblem(problem: CodeProblem): string {
  switch (problem.code) {
    case "not a lot code":
      return "That is not a lot code: type the five characters below the square on the label, such as 7K3QA.";
    case "lot code mistyped":
      return `${problem.typed} is no lot code: a character is wrong, or two have changed places. Look at the label again.`;
    case "no lot of that code":
      return `No portions of yours have the code ${problem.typed}. Type /stock to see what you have.`;
    case "several lots of that code":
      return `${problem.typed} fits several of your lots: type /stock, pick by the name on the label, and print new labels.`;
    case "nothing left":
      return `${problem.typed} is ${problem.batch.title}, cooked ${writeDate(problem.batch.cookedOn)}: by your records nothing is left of it. If a box of it turned up, type /batch count recipe:${problem.typed} portions:1 and its dates count on; throw it away when in doubt.`;
  }
}
