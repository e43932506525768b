import { z } from "zod";

// What the bench and the process that plays Discord say to each other.

const person = z.object({ id: z.string(), name: z.string() });

/** Where the played platform is, and who is on it. */
export const worldTold = z.object({
  kind: z.literal("world"),
  apiBase: z.string(),
  token: z.string(),
  applicationId: z.string(),
  guilds: z.array(z.object({ id: z.string(), name: z.string(), people: z.array(person) })),
});
export type WorldTold = z.infer<typeof worldTold>;

/** What came of a load. */
export const loadTold = z.object({
  kind: z.literal("done"),
  /** Interactions sent, by what they were. */
  sent: z.record(z.string(), z.number()),
  /** To the first answer of each, milliseconds, by what they were. */
  firstMs: z.record(z.string(), z.array(z.number())),
  /** Answered "thinking" first. */
  deferred: z.number(),
  /** Without an answer within 3 s. */
  lost: z.number(),
  /** Answers the platform would have refused. */
  refused: z.array(z.string()),
  /** Processor time of the playing process, share of one core. */
  serverCpu: z.number(),
});
export type LoadTold = z.infer<typeof loadTold>;

export const toPlatform = z.object({
  kind: z.literal("load"),
  perSecond: z.number(),
  seconds: z.number(),
  recipes: z.array(z.string()),
});
export type LoadAsked = z.infer<typeof toPlatform>;
