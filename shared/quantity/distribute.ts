/**
 * Shares a whole number out by weight so that the parts sum to it exactly: each gets its share rounded
 * down, what is left goes one by one to the largest remainders (ties to the earlier). Weights below
 * zero count as zero; without any weight the shares are even.
 */
export function distribute(total: number, weights: readonly number[]): readonly number[] {
  if (!Number.isInteger(total) || total < 0) throw new Error(`cannot share out ${total}`);
  if (weights.length === 0) return [];
  const usable = weights.map((weight) => (weight > 0 && Number.isFinite(weight) ? weight : 0));
  const sum = usable.reduce((a, b) => a + b, 0);
  const exact = usable.map((weight) => (sum > 0 ? total * (weight / sum) : total / weights.length));
  const parts = exact.map((share) => Math.floor(share + 1e-9));
  const left = total - parts.reduce((a, b) => a + b, 0);
  const byRemainder = exact
    .map((share, index) => ({ index, remainder: share - (parts[index] ?? 0) }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  const favoured = new Set(byRemainder.slice(0, left).map(({ index }) => index));
  return parts.map((part, index) => part + (favoured.has(index) ? 1 : 0));
}
