/** Milliseconds of each of `runs` calls after `warmup` unmeasured ones. */
export async function timed(
  work: () => unknown,
  runs: number,
  warmup = 5,
): Promise<readonly number[]> {
  for (let i = 0; i < warmup; i += 1) await work();
  const took: number[] = [];
  for (let i = 0; i < runs; i += 1) {
    const start = performance.now();
    await work();
    took.push(performance.now() - start);
  }
  return took;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** The value that this share of all values does not exceed; 1 gives the greatest. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(sorted.length * share) - 1)] ?? Number.NaN;
}

export interface Figure {
  readonly what: string;
  readonly ms: number;
  readonly budgetMs: number;
  readonly reference?: Reference;
}

/** A named piece of work of the same kind, timed in the same run. */
interface Reference {
  readonly name: string;
  readonly ms: number;
  /**
   * The figure may be over its budget while it takes no more than this many times as long as the
   * reference: then the machine is slow, and not the work. Without it the budget alone decides.
   */
  readonly times?: number;
}

/** One line a figure; true when it is inside its budget, or over it as a slow machine's reference is. */
export function report(
  { what, ms, budgetMs, reference }: Figure,
  write: (line: string) => void,
): boolean {
  const ratio = reference === undefined ? Number.NaN : ms / reference.ms;
  const isIn = ms <= budgetMs;
  const isSlowMachine = ratio <= (reference?.times ?? 0);
  const compared =
    reference === undefined
      ? ""
      : `; ${ratio.toFixed(1)} x ${reference.name} (${reference.ms.toFixed(3)} ms${reference.times === undefined ? "" : `, at most ${reference.times} x`})`;
  const verdict = isIn ? "ok" : isSlowMachine ? "ok for this slow machine" : "over budget";
  write(`${what}: ${ms.toFixed(3)} ms median, budget ${budgetMs} ms${compared}: ${verdict}`);
  return isIn || isSlowMachine;
}
