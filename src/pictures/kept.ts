/** What the pictures that were asked for last may take in memory, bytes. */
const KEPT_BYTES = 16_000_000;

/** Finds a picture that was drawn before, or draws it; asked for twice at once, it is drawn once. */
export type DrawOnce = (svg: string, draw: () => Promise<Buffer | null>) => Promise<Buffer | null>;

/**
 * Remembers pictures by what they show. A card's picture is of one portion, so every member who asks for
 * the recipe at whatever size is shown the same one. Where drawing fails, the next to ask tries again.
 */
export function drawnOnce(keptBytes: number = KEPT_BYTES): DrawOnce {
  const kept = new Map<string, { readonly png: Promise<Buffer | null>; bytes: number }>();
  let bytes = 0;

  const drop = (svg: string): void => {
    bytes -= kept.get(svg)?.bytes ?? 0;
    kept.delete(svg);
  };
  const makeRoom = (): void => {
    for (const oldest of kept.keys()) {
      if (bytes <= keptBytes) return;
      drop(oldest);
    }
  };

  const begin = (svg: string, draw: () => Promise<Buffer | null>) => {
    // Until it is drawn it counts as what its drawing takes; signs may take two bytes.
    const entry = { png: draw(), bytes: svg.length * 2 };
    bytes += entry.bytes;
    const settled = (size: number | null): void => {
      if (kept.get(svg) !== entry) return;
      if (size === null) {
        drop(svg);
        return;
      }
      entry.bytes += size;
      bytes += size;
      makeRoom();
    };
    entry.png.then(
      (png) => settled(png?.byteLength ?? null),
      () => settled(null),
    );
    return entry;
  };

  return (svg, draw) => {
    const known = kept.get(svg);
    // Taken out and put back, the map's order is the order of asking.
    kept.delete(svg);
    const entry = known ?? begin(svg, draw);
    kept.set(svg, entry);
    makeRoom();
    return entry.png;
  };
}
