import type { MemberId } from "../../shared/ids.ts";
import { groupDue } from "../../shared/reminder/group.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";

/** Rows that are claimed and settled together, under one nonce of their own. */
export interface Holding {
  readonly nonce: string;
  readonly rows: readonly ReminderRow[];
}

/** One message to one member. It travels under the nonce of its first holding. */
export interface Parcel {
  readonly memberId: MemberId;
  readonly holdings: readonly Holding[];
}

const NONCE_MAX = 25;

/**
 * Sorts due rows into messages. What no longer helps is told in the member's next message, or in one
 * of its own: a missed discard date must not pass in silence. It is claimed like any other row, so a
 * crash neither loses the telling nor doubles it.
 */
export function parcelsOf(due: readonly ReminderRow[], now: Instant): readonly Parcel[] {
  const { deliveries, tooLate } = groupDue(due, now);
  const parcels = new Map<string, Parcel>();
  for (const { memberId, nonce, rows } of deliveries) {
    // Rows of an earlier try under this nonce stay with it: a nonce is settled as a whole.
    const late = tooLate.filter((row) => row.nonce === nonce);
    parcels.set(nonce, { memberId, holdings: [{ nonce, rows: [...rows, ...late] }] });
  }
  for (const holding of lateHoldings(tooLate.filter(({ nonce }) => !parcels.has(nonce ?? "")))) {
    addLate(parcels, holding);
  }
  return [...parcels.values()];
}

interface LateHolding extends Holding {
  readonly memberId: MemberId;
}

function lateHoldings(rows: readonly ReminderRow[]): readonly LateHolding[] {
  const holdings = new Map<string, LateHolding>();
  for (const row of rows) {
    const key = row.nonce ?? `member ${row.memberId}`;
    const found = holdings.get(key);
    holdings.set(key, {
      memberId: row.memberId,
      nonce: found?.nonce ?? row.nonce ?? `late${row.id}`.slice(0, NONCE_MAX),
      rows: [...(found?.rows ?? []), row],
    });
  }
  return [...holdings.values()];
}

/** Into the member's first message, behind what that is about; or into a new one. */
function addLate(parcels: Map<string, Parcel>, { memberId, nonce, rows }: LateHolding): void {
  for (const [key, parcel] of parcels) {
    if (parcel.memberId !== memberId) continue;
    parcels.set(key, { memberId, holdings: [...parcel.holdings, { nonce, rows }] });
    return;
  }
  parcels.set(nonce, { memberId, holdings: [{ nonce, rows }] });
}
