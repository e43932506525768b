import type { BookIndex } from "../../shared/book/book-index.ts";
import type { FoodBook } from "../../shared/food/book.ts";
import type { CauseId } from "../../shared/ids.ts";
import type { Instant } from "../../shared/time.ts";
import type { Group, Member, Stores } from "./ports.ts";

/** Who asks, as the platform vouches for it. */
export interface Actor {
  readonly userId: string;
  readonly name: string;
  readonly roleIds: readonly string[];
  /** Holds the server's manage permission. */
  readonly isManager: boolean;
}

/** The group's recipes in memory, as they are found. Never older than the request. */
export interface RecipeBook {
  readonly whole: () => Promise<BookIndex>;
  /** Null when it cannot be had in the time that a completion has: it is then being read for the next. */
  readonly soon: () => Promise<BookIndex | null>;
}

/** Everything a handler may know. Clock, randomness and stores are passed in. */
export interface Context {
  readonly now: Instant;
  readonly actor: Actor;
  readonly group: Group;
  /** The asker's own row; made when they first ask. */
  readonly member: Member;
  /** The asker is the group's coach: by its coach role, or by the server's manage permission. */
  readonly isCoach: boolean;
  /** Unique to this request; the same when the platform delivers it twice. */
  readonly causeId: CauseId;
  readonly stores: Stores;
  readonly foods: FoodBook;
  readonly recipeBook: RecipeBook;
  /** A fresh id: 12 characters of [0-9a-z], unguessable in service, repeatable in the demo. */
  readonly newId: () => string;
}
