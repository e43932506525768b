/** First millisecond of the platform's ids (its developer documentation, "Snowflakes"). */
const EPOCH_MS = 1_420_070_400_000n;

/** Makes ids that carry the time, so that the age of an interaction can be read from its id. */
export function snowflakes(nowMs: () => number): (ageMs?: number) => string {
  let count = 0n;
  return (ageMs = 0) => {
    count = (count + 1n) % 4_194_304n;
    return (((BigInt(Math.floor(nowMs() - ageMs)) - EPOCH_MS) << 22n) | count).toString();
  };
}
