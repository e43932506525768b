import type { Outcome } from "../../shared/outcome.ts";
import {
  portionsInSplit,
  readSplit,
  type SplitPart,
  type SplitProblem,
} from "../../shared/stock/split.ts";
import { writeHalves } from "../../shared/words/halves.ts";
import { Refusal } from "../kit/command.ts";

const EXAMPLE =
  "Type such as 3 fridge, 5 freezer, or 2 x 2 fridge, rest freezer, or 1 eaten, rest fridge.";

function saySplitProblem(problem: SplitProblem): string {
  switch (problem.code) {
    case "split unclear":
      return `“${problem.text}” does not say where the portions went. ${EXAMPLE}`;
    case "split has two rests":
      return "Only one part can be the rest. Type how many portions the others are.";
    case "split is another number":
      return `The parts are ${writeHalves(problem.split)} portions together, and the batch made ${problem.cooked}. Change one of them, or type rest for the last part.`;
  }
}

/** The value, or a refusal in a sentence. */
export function splitOrRefuse<T>(outcome: Outcome<T, SplitProblem>): T {
  if (outcome.ok) return outcome.value;
  throw new Refusal(saySplitProblem(outcome.problem));
}

interface Typed {
  readonly portions?: number | undefined;
  readonly have?: string | undefined;
  readonly fill?: string | undefined;
  readonly split?: string | undefined;
}

/** The split as typed; where nothing else says how many portions it made, it does. */
export function readTypedSplit(input: Typed): {
  readonly split: readonly SplitPart[] | null;
  readonly portions: number | undefined;
} {
  if (input.split === undefined) return { split: null, portions: input.portions };
  const split = splitOrRefuse(readSplit(input.split));
  const isSized =
    input.portions !== undefined || input.have !== undefined || input.fill !== undefined;
  const sum = isSized ? null : portionsInSplit(split);
  if (sum !== null && (!Number.isInteger(sum) || sum > 200)) {
    throw new Refusal(
      `The parts are ${writeHalves(sum)} portions together: a batch is 1 to 200 whole portions.`,
    );
  }
  return { split, portions: sum ?? input.portions };
}
