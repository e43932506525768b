import { z } from "zod";
import type { AsMade } from "../../shared/stock/types.ts";

/** How a batch was made, as its column holds it. */
export const asMadeDocument = z
  .object({
    without: z.array(z.string()).readonly(),
    swaps: z.record(z.string(), z.number()).readonly(),
  })
  .readonly() satisfies z.ZodType<AsMade>;
