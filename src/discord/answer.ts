import { type Reply, reply, text } from "../../commands/kit/reply.ts";
import { makePrints } from "../pictures/print-file.ts";
import { type ApiFault, CODE, faultOf, logFields } from "./api-fault.ts";
import type { AdapterLog } from "./ports.ts";

/** Past this age of an interaction its token may be dead before an answer arrives (limit: 3 s). */
const STALE_MS = 1_500;
/** A bot that has not answered by then makes the asker wait: say so. */
export const DIRECT_MS = 400;

export const APOLOGY: Reply = reply("Something went wrong on our side, and it was noted.", {
  parts: [text("Before you repeat a change, look at /stock to see whether it arrived.")],
});

/** The ways in which one interaction can be answered. */
export interface Surface {
  /** Age of the interaction now, milliseconds. */
  readonly ageMs: () => number;
  /** Answers at once with the reply. */
  readonly first: (reply: Reply) => Promise<void>;
  /** Answers at once that the reply comes later. */
  readonly defer: () => Promise<void>;
  /** Brings the reply after `defer`; repeats by itself what may be repeated. */
  readonly later: (reply: Reply) => Promise<void>;
  /** Puts the reply in the place of a first answer of which nobody knows whether it arrived. */
  readonly repair: (reply: Reply) => Promise<void>;
}

/**
 * Runs `work` and answers in time: directly when it is quick, else "thinking" first and the reply when
 * it is there. Never throws; what fails is logged and answered with an apology once.
 *
 * An interaction that arrives late (a replay after a lost connection) is acknowledged before the work
 * starts, and is dropped when its token is dead: its asker was told that it failed and will repeat it,
 * so it must not be done behind their back.
 */
export async function answerInTime(
  surface: Surface,
  work: () => Promise<Reply>,
  log: AdapterLog,
  directMs: number = DIRECT_MS,
): Promise<void> {
  if (surface.ageMs() > STALE_MS) {
    const fault = await acknowledge(surface);
    if (fault !== null) {
      log.warn({ fault }, "an old interaction could not be answered any more: not carried out");
      return;
    }
    await bring(surface, await finished(work, log), log);
    return;
  }
  const result = finished(work, log);
  const quick = await within(result, directMs);
  if (quick !== null) {
    await sayFirst(surface, quick, log);
    return;
  }
  const fault = await acknowledge(surface);
  if (fault !== null) log.warn({ fault }, "an interaction could not be acknowledged");
  await bring(surface, await result, log);
}

/** The reply, or an apology when the work throws. */
async function finished(work: () => Promise<Reply>, log: AdapterLog): Promise<Reply> {
  try {
    const done = await work();
    // Before the answer, so that a long one is announced in time.
    await makePrints(done.prints);
    return done;
  } catch (error) {
    log.error(logFields(error), "an error escaped from the bot");
    return APOLOGY;
  }
}

/** The value if it is there within `ms`, else null. */
async function within<T>(promise: Promise<T>, ms: number): Promise<T | null> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), ms);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** Defers; null when the platform knows now, be it since an earlier try. */
async function acknowledge(surface: Surface): Promise<ApiFault | null> {
  let fault = await attempt(surface.defer);
  if (fault?.kind === "unknown") fault = await attempt(surface.defer);
  return isCode(fault, CODE.alreadyAnswered) ? null : fault;
}

async function sayFirst(surface: Surface, answer: Reply, log: AdapterLog): Promise<void> {
  let fault = await attempt(() => surface.first(answer));
  // A broken connection may have brought the answer or not: the repeat tells, by its code.
  if (fault?.kind === "unknown") fault = await attempt(() => surface.first(answer));
  if (isCode(fault, CODE.alreadyAnswered)) fault = await attempt(() => surface.repair(answer));
  else if (isFormFault(fault)) {
    log.error({ fault }, "the platform refused a reply");
    fault = await attempt(() => surface.first(APOLOGY));
  }
  if (fault !== null) log.warn({ fault }, "a reply could not be delivered");
}

async function bring(surface: Surface, answer: Reply, log: AdapterLog): Promise<void> {
  const fault = await attempt(() => surface.later(answer));
  if (fault === null) return;
  log.warn({ fault }, "a later reply could not be delivered");
  if (isFormFault(fault)) await attempt(() => surface.later(APOLOGY));
}

/** Null when it went well. */
async function attempt(call: () => Promise<void>): Promise<ApiFault | null> {
  try {
    await call();
    return null;
  } catch (error) {
    return faultOf(error);
  }
}

function isCode(fault: ApiFault | null, code: number): boolean {
  return fault?.kind === "refused" && fault.code === code;
}

/** A message that breaks a limit: our own fault, and another message may go through. */
function isFormFault(fault: ApiFault | null): boolean {
  return fault?.kind === "refused" && fault.status === 400 && fault.code !== CODE.alreadyAnswered;
}
