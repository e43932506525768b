import type { Member, Stores } from "../../commands/kit/ports.ts";
import type { MemberId } from "../../shared/ids.ts";
import { type Delivery, messagesOf } from "../../shared/reminder/group.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import { type DeliverParts, deliver, type Fate } from "./deliver.ts";
import { type Taken, takeAgain, takeNext } from "./take.ts";

export interface TickParts extends DeliverParts {
  readonly stores: { readonly members: Pick<Stores["members"], "find"> };
  /** Derives a member's reminders again (`commands/kit/plan.ts`). */
  readonly replan: (member: Member, now: Instant) => Promise<unknown>;
  /** Messages under way at a time. 1 makes their order repeatable. */
  readonly lanes?: number;
  /** Once aborted, no further message is begun; those under way are finished. */
  readonly stopping?: AbortSignal;
}

export interface TickReport {
  /** Members whose reminders were derived again. */
  readonly replanned: number;
  /** Messages. */
  readonly sent: number;
  readonly retried: number;
  readonly failed: number;
  /** Rows that came too late and were told as such. */
  readonly expired: number;
  /** Things that threw; the log has them, the next tick tries again. */
  readonly errors: number;
}

export type Tick = () => Promise<TickReport>;

const PAGE = 200;
const LANES = 8;
/** All requests for a message may take a minute (`src/discord/messenger.ts`), and its lease is two. */
const START_WITHIN = { seconds: 55 };

type Count = { -readonly [Key in keyof TickReport]: TickReport[Key] };

/**
 * One sweep: everything due, page by page until nothing is left; then members whose reminders must be
 * derived again, and what that made due. Never throws, and never runs twice at once: a call during a
 * sweep gets that sweep.
 */
export function createTick(parts: TickParts): Tick {
  let running: Promise<TickReport> | null = null;
  return () => {
    running ??= timed(parts).finally(() => {
      running = null;
    });
    return running;
  };
}

async function timed(parts: TickParts): Promise<TickReport> {
  const startMs = performance.now();
  const report = await sweep(parts);
  parts.meter?.swept((performance.now() - startMs) / 1_000, report.errors);
  return report;
}

async function sweep(parts: TickParts): Promise<TickReport> {
  const count: Count = { replanned: 0, sent: 0, retried: 0, failed: 0, expired: 0, errors: 0 };
  // Delivering comes first: what is due is told before anything takes long. It still follows from the
  // stock, for every change of that rewrites it at once.
  await deliverAll(parts, count);
  await noted(parts, count, "replanning", () => replanAll(parts, count));
  if (count.replanned > 0) await deliverAll(parts, count);
  return count;
}

async function replanAll(parts: TickParts, count: Count): Promise<void> {
  const seen = new Set<MemberId>();
  for (;;) {
    const page = await parts.deliveries.toReplan(parts.clock.now(), PAGE);
    // Whoever comes back failed a moment ago; without this check the sweep would never end.
    const fresh = page.filter((id) => !seen.has(id));
    if (fresh.length === 0) return;
    for (const id of fresh) {
      if (parts.stopping?.aborted === true) return;
      seen.add(id);
      await noted(parts, count, "replanning", async () => {
        const member = await parts.stores.members.find(id);
        if (member === null) return;
        await parts.replan(member, parts.clock.now());
        count.replanned += 1;
      });
    }
  }
}

/** Messages that one walk through what is due has seen. */
type Seen = Set<string>;

async function deliverAll(parts: TickParts, count: Count): Promise<void> {
  await inLanes(parts.lanes ?? LANES, takings(parts, count, new Set()), async (taken) => {
    await noted(parts, count, "delivering", async () => tally(count, await deliver(parts, taken)));
  });
}

/**
 * Messages that are ours. Those of an earlier try come first, then a page of new ones, and so on until
 * nothing is due or the process is asked to stop.
 */
async function* takings(
  parts: TickParts,
  count: Count,
  seen: Seen,
): AsyncGenerator<Taken, void, undefined> {
  for (let found = 1; found > 0; ) {
    const again = await abandoned(parts, count, seen);
    found = again.length;
    for await (const batch of batches(parts, count, seen, again)) {
      found += batch.length;
      yield* inTime(parts, batch);
    }
  }
}

/** Those of a batch that a lane takes up soon enough. The others come back when their lease has run out. */
function* inTime(parts: TickParts, batch: readonly Taken[]): Generator<Taken, void, undefined> {
  const startBy = parts.clock.now().add(START_WITHIN);
  for (const taken of batch) {
    if (isStopping(parts)) return;
    if (isBefore(parts.clock.now(), startBy)) yield taken;
  }
}

function isStopping({ stopping }: TickParts): boolean {
  return stopping?.aborted === true;
}

/** Claimed as many at a time as there are lanes: each statement serves several, and few lie waiting. */
async function* batches(
  parts: TickParts,
  count: Count,
  seen: Seen,
  again: readonly Delivery[],
): AsyncGenerator<readonly Taken[], void, undefined> {
  const atATime = parts.lanes ?? LANES;
  for (let from = 0; from < again.length && !isStopping(parts); from += atATime) {
    const some = again.slice(from, from + atATime);
    yield await claimWith(parts, count, () => takeAgain(parts, some));
  }
  for (let fresh = 0; fresh < PAGE && !isStopping(parts); ) {
    const taken = await claimWith(parts, count, () => takeNext(parts, atATime));
    if (taken.length === 0) return;
    fresh += taken.length;
    // Should the clock jump over its lease, a message that is under way in a lane is not taken into another.
    for (const { nonce } of taken) seen.add(nonce);
    yield taken;
  }
}

/** Messages of an earlier try that this walk has not seen yet. */
async function abandoned(parts: TickParts, count: Count, seen: Seen): Promise<readonly Delivery[]> {
  let found: readonly Delivery[] = [];
  await noted(parts, count, "looking for earlier tries", async () => {
    found = messagesOf(await parts.deliveries.abandoned(parts.clock.now(), PAGE));
  });
  const unseen = found.filter(({ nonce }) => !seen.has(nonce));
  for (const { nonce } of unseen) seen.add(nonce);
  return unseen;
}

/** None when it could not be asked. */
async function claimWith(
  parts: TickParts,
  count: Count,
  work: () => Promise<readonly Taken[]>,
): Promise<readonly Taken[]> {
  let taken: readonly Taken[] = [];
  await noted(parts, count, "claiming", async () => {
    taken = await work();
    if (taken.length === 0) return;
    // Asked after the claim, which the others see: of two that begin at once, each knows of the other.
    const { deliveries, worker, clock, messenger } = parts;
    messenger.share?.(1 + (await deliveries.others(worker, clock.now())));
  });
  return taken;
}

function tally(count: Count, fate: Fate): void {
  if (fate.kind === "lost" || fate.kind === "waits") return;
  if (fate.kind === "sent") count.sent += 1;
  if (fate.kind === "retry") count.retried += 1;
  if (fate.kind === "failed") count.failed += 1;
  count.expired += fate.late;
}

async function noted(
  parts: TickParts,
  count: Count,
  doing: string,
  work: () => Promise<void>,
): Promise<void> {
  try {
    await work();
  } catch (error) {
    count.errors += 1;
    parts.log.error({ err: error, doing }, "the reminder sweep met an error");
  }
}

async function inLanes<T>(
  lanes: number,
  items: AsyncGenerator<T, void, undefined>,
  work: (item: T) => Promise<void>,
): Promise<void> {
  // One source for all lanes: each takes the next item when it is free.
  const lane = async (): Promise<void> => {
    for (let item = await items.next(); item.done !== true; item = await items.next()) {
      await work(item.value);
    }
  };
  await Promise.all(Array.from({ length: lanes }, lane));
}
