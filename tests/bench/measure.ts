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
  /** A named piece of work of the same kind, timed in the same run. */
  readonly reference?: { readonly name: string; readonly ms: number };
}

/** One line a figure; true when it is inside its budget. */
export function report(figure: Figure, write: (line: string) => void): boolean {
  const ok = figure.ms <= figure.budgetMs;
  const ratio =
    figure.reference === undefined
      ? ""
      : `; ${(figure.ms / figure.reference.ms).toFixed(1)} x ${figure.reference.name} (${figure.reference.ms.toFixed(3)} ms)`;
  write(
    `${figure.what}: ${figure.ms.toFixed(3)} ms median, budget ${figure.budgetMs} ms${ratio}: ${ok ? "ok" : "over budget"}`,
  );
  return ok;
}
