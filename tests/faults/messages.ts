import { z } from "zod";

/** What the run says to a worker process. */
export const order = z.discriminatedUnion("do", [
  z.object({
    do: z.literal("open"),
    databaseUrl: z.string(),
    apiBase: z.string(),
    token: z.string(),
    applicationId: z.string(),
    aheadMs: z.number(),
  }),
  z.object({ do: z.literal("clock"), aheadMs: z.number() }),
  z.object({ do: z.literal("sweep") }),
  z.object({ do: z.literal("next") }),
  z.object({ do: z.literal("close") }),
]);
export type Order = z.infer<typeof order>;

/** What it answers. */
export const answer = z.discriminatedUnion("said", [
  z.object({ said: z.literal("warm") }),
  z.object({ said: z.literal("open") }),
  z.object({ said: z.literal("swept"), errors: z.number() }),
  z.object({ said: z.literal("next"), atMs: z.number().nullable() }),
  z.object({ said: z.literal("closed") }),
  z.object({ said: z.literal("broken"), why: z.string() }),
]);
export type Answer = z.infer<typeof answer>;
