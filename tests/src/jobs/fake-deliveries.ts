import { Temporal } from "temporal-polyfill";
import type { Group, Member } from "../../../commands/kit/ports.ts";
import { groupId, lotId, type MemberId, memberId, reminderId } from "../../../shared/ids.ts";
import type { ReminderRow } from "../../../shared/reminder/types.ts";
import type { Instant } from "../../../shared/time.ts";
import type {
  Deliveries,
  Messenger,
  OutgoingMessage,
  Recipient,
  SendResult,
} from "../../../src/jobs/ports.ts";

/** Friday evening; nothing in these tests depends on the date but the differences to it. */
export const T0 = Temporal.Instant.from("2026-10-23T16:30:00Z");

export const group: Group = {
  id: groupId("group-1"),
  name: "Test kitchen",
  coachRoleId: null,
  reminderChannelId: null,
  zone: "UTC",
  labelStyle: "eu",
  foodsVersion: 0,
  recipesVersion: 0,
};

export function memberNamed(name: string, rest: Partial<Member> = {}): Member {
  const time = (text: string) => Temporal.PlainTime.from(text);
  return {
    id: memberId(name),
    groupId: group.id,
    userId: `user-${name}`,
    name,
    zoneIsOwn: false,
    choice: {
      zone: "UTC",
      morning: time("08:00"),
      evening: time("18:30"),
      quietFrom: time("22:00"),
      quietUntil: time("07:00"),
      pausedUntil: null,
      pausesSafety: false,
    },
    deliverTo: "direct message",
    directClosedAt: null,
    profile: { allergens: [], vulnerable: [], coachMaySetTargets: false },
    wantsRecipeNews: true,
    planVersion: 0,
    ...rest,
  };
}

export function rowOf(id: string, rest: Partial<ReminderRow> = {}): ReminderRow {
  return {
    id: reminderId(id),
    memberId: memberId("ana"),
    kind: "discard today",
    key: id,
    dueAt: T0,
    helpsUntil: T0.add({ hours: 12 }),
    about: {
      lotId: lotId(`lot-${id}`),
      title: "Bean pot",
      portions: 1,
      date: null,
      meal: null,
      mealAt: null,
    },
    state: "scheduled",
    attempts: 0,
    nonce: null,
    reason: null,
    ...rest,
  };
}

export interface Kept {
  row: ReminderRow;
  leaseUntil: Instant | null;
  worker: string | null;
  reason: string;
}

interface Lease {
  readonly nonce: string;
  readonly worker: string;
  readonly leaseUntil: Instant;
}

const isBy = (a: Instant | null, b: Instant): boolean =>
  a !== null && Temporal.Instant.compare(a, b) <= 0;

/** The rows in memory, by the words of the port's contract; keeps what the tests look at. */
export class FakeDeliveries implements Deliveries {
  readonly kept = new Map<string, Kept>();
  readonly directClosed = new Map<string, Instant | null>();
  replanIds: MemberId[] = [];
  /** Whose reminders they are. */
  people: readonly Member[] = [memberNamed("ana")];
  readonly others: Deliveries["others"] = async () => 0;

  constructor(rows: readonly ReminderRow[]) {
    for (const row of rows) this.add(row);
  }

  add(row: ReminderRow): void {
    this.kept.set(row.id, { row, leaseUntil: null, worker: null, reason: "" });
  }

  readonly state = (id: string): string => this.kept.get(id)?.row.state ?? "none";
  readonly reason = (id: string): string => this.kept.get(id)?.reason ?? "";

  /** As the store does it: all that a member has due by `until` is one message. */
  async claimNext({ now, until, limit, ...lease }: Parameters<Deliveries["claimNext"]>[0]) {
    const scheduled = [...this.kept.values()]
      .filter(({ row }) => row.state === "scheduled")
      .sort((a, b) => Temporal.Instant.compare(a.row.dueAt, b.row.dueAt));
    const due = scheduled.filter(({ row }) => isBy(row.dueAt, now));
    const members = [...new Set(due.map(({ row }) => row.memberId))].slice(0, limit);
    const rows = members.flatMap((member) => {
      const own = scheduled.filter(({ row }) => row.memberId === member && isBy(row.dueAt, until));
      const nonce = `r${own.map(({ row }) => row.id).join("+")}`.slice(0, 25);
      return own.map((kept) => this.#claim(kept, { nonce, ...lease }));
    });
    return { rows, planVersions: new Map<MemberId, number>() };
  }

  async abandoned(now: Instant, limit: number): Promise<readonly ReminderRow[]> {
    return [...this.kept.values()]
      .filter(({ row, leaseUntil }) => row.state === "claimed" && isBy(leaseUntil, now))
      .map(({ row }) => row)
      .slice(0, limit);
  }

  async claimAgain({ nonce, now, ...lease }: Parameters<Deliveries["claimAgain"]>[0]) {
    return [...this.kept.values()]
      .filter(({ row, leaseUntil }) => row.state === "claimed" && isBy(leaseUntil, now))
      .filter(({ row }) => row.nonce === nonce)
      .map((kept) => this.#claim(kept, { nonce, ...lease }));
  }

  #claim(kept: Kept, { nonce, worker, leaseUntil }: Lease): ReminderRow {
    kept.row = { ...kept.row, state: "claimed", nonce, attempts: kept.row.attempts + 1 };
    kept.leaseUntil = leaseUntil;
    kept.worker = worker;
    return kept.row;
  }

  async recipients(
    ids: readonly MemberId[],
  ): Promise<ReadonlyMap<MemberId, Recipient | "unreadable">> {
    const known = this.people.filter(({ id }) => ids.includes(id));
    return new Map(known.map((member) => [member.id, { member, group, replanAt: null }]));
  }

  async settle(input: Parameters<Deliveries["settle"]>[0]): Promise<boolean> {
    const held = [...this.kept.values()].filter(
      ({ row, worker }) =>
        row.state === "claimed" &&
        row.nonce === input.nonce &&
        worker === input.worker &&
        input.ids.includes(row.id),
    );
    for (const kept of held) {
      const { result } = input;
      kept.reason = "reason" in result ? result.reason : "";
      kept.row = { ...kept.row, reason: "reason" in result ? result.reason : null };
      if (result.state === "retry") kept.leaseUntil = result.retryAt;
      else if (result.state === "waits") {
        kept.leaseUntil = result.until;
        kept.row = { ...kept.row, attempts: kept.row.attempts - 1 };
      } else kept.row = { ...kept.row, state: result.state };
    }
    return held.length > 0;
  }

  async withdraw(input: Parameters<Deliveries["withdraw"]>[0]): Promise<number> {
    const ids = input.rows.map(({ id }) => id);
    const held = [...this.kept.values()].filter(
      ({ row, worker }) =>
        row.state === "claimed" &&
        row.nonce === input.nonce &&
        worker === input.worker &&
        ids.includes(row.id),
    );
    for (const kept of held) {
      kept.reason = input.reason;
      kept.row = { ...kept.row, state: "expired", key: `${kept.row.key} gone` };
    }
    return held.length;
  }

  async nextDue(): Promise<Instant | null> {
    const waiting = [...this.kept.values()].flatMap(({ row, leaseUntil }) => {
      if (row.state === "scheduled") return [row.dueAt];
      return row.state === "claimed" && leaseUntil !== null ? [leaseUntil] : [];
    });
    return waiting.sort(Temporal.Instant.compare)[0] ?? null;
  }

  async toReplan(_now: Instant, limit: number): Promise<readonly MemberId[]> {
    return this.replanIds.slice(0, limit);
  }
  async setDirectClosed(id: MemberId, at: Instant | null): Promise<void> {
    this.directClosed.set(id, at);
  }
  async group(): Promise<Group | null> {
    return group;
  }
}

/** A platform that stores messages and gives a repeated nonce its first message back. */
export class FakePlatform implements Messenger {
  readonly stored: OutgoingMessage[] = [];
  readonly attempts: OutgoingMessage[] = [];
  /** What the coming sends answer instead; "lost answer" stores the message and then throws. */
  readonly script: (SendResult | "lost answer" | "lost request")[] = [];

  async send(message: OutgoingMessage): Promise<SendResult> {
    this.attempts.push(message);
    const next = this.script.shift();
    if (next === "lost request") throw new Error("socket closed before the request");
    if (next !== undefined && next !== "lost answer") return next;
    const isThere = this.stored.some(({ nonce }) => nonce === message.nonce);
    if (!isThere && message.onlyLooks) {
      return { kind: "impossible", reason: "no try arrived", directClosed: false };
    }
    if (!isThere) this.stored.push(message);
    if (next === "lost answer") throw new Error("socket closed after the request");
    return {
      kind: "sent",
      messageId: `m-${message.nonce}`,
      where: "direct message",
      directClosed: false,
    };
  }
}
