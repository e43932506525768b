import { afterEach, beforeEach, describe } from "vitest";
import type { Store } from "../../../src/store/open.ts";
import { backlogContract } from "./contract/backlog.ts";
import { claimContract } from "./contract/claims.ts";
import { draftContract } from "./contract/drafts.ts";
import { groupContract } from "./contract/groups.ts";
import { keepingWordContract } from "./contract/keeping-words.ts";
import { momentContract } from "./contract/moments.ts";
import { newClaimContract } from "./contract/new-claims.ts";
import { newsContract } from "./contract/news.ts";
import { opsContract } from "./contract/ops.ts";
import { ownershipContract } from "./contract/ownership.ts";
import { peopleContract } from "./contract/people.ts";
import { recipeContract } from "./contract/recipes.ts";
import { reminderContract } from "./contract/reminders.ts";
import { stockContract } from "./contract/stock.ts";
import { textContract } from "./contract/text.ts";
import { timingContract } from "./contract/timing.ts";
import type { MakePlace, Place } from "./kit.ts";

/** What a part of the contract sees: a fresh store for each test, and a way to restart it. */
export interface Given {
  readonly store: () => Store;
  /** Closes the store and opens it again, as after a restart of the bot. */
  readonly restart: () => Promise<Store>;
  /** Whether several processes may have it open at a time. */
  readonly isShared: boolean;
}

/** What every store must do, whatever database is behind it. */
export function storeContract(name: string, makePlace: MakePlace, isShared = false): void {
  describe(name, () => {
    let place: Place | null = null;
    let open: Store | null = null;
    const store = (): Store => {
      if (open === null) throw new Error("the store is open only within a test");
      return open;
    };
    const restart = async (): Promise<Store> => {
      await open?.close();
      open = (await place?.open()) ?? null;
      return store();
    };
    beforeEach(async () => {
      place = await makePlace();
      open = await place.open();
    });
    afterEach(async () => {
      await open?.close();
      await place?.remove();
    });
    const given: Given = { store, restart, isShared };
    groupContract(given);
    peopleContract(given);
    recipeContract(given);
    newsContract(given);
    keepingWordContract(given);
    draftContract(given);
    stockContract(given);
    ownershipContract(given);
    reminderContract(given);
    timingContract(given);
    claimContract(given);
    newClaimContract(given);
    momentContract(given);
    backlogContract(given);
    opsContract(given);
    textContract(given);
  });
}
