// Its "raw" by name is a symbology of that name; the default export has the function.
import barcodes from "bwip-js/node";
import type { Modules } from "../../shared/picture/print.ts";

const known = new Map<string, Modules>();
/** Codes are few and short; this is only a bound. */
const KNOWN_MAX = 500;

/**
 * The modules of a QR code (ISO/IEC 18004) at its highest level of error correction, H: some 30 % of a
 * wet or torn label may be gone.
 */
export function qrModules(text: string): Modules {
  const before = known.get(text);
  if (before !== undefined) return before;
  const [symbol] = barcodes.raw("qrcode", text, "eclevel=H");
  if (symbol === undefined || !("pixs" in symbol)) throw new Error("no such code");
  const { pixs, pixx, pixy } = symbol;
  const modules = Array.from({ length: pixy }, (_, y) =>
    Array.from({ length: pixx }, (__, x) => pixs[y * pixx + x] === 1),
  );
  if (known.size >= KNOWN_MAX) known.clear();
  known.set(text, modules);
  return modules;
}
