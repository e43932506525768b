import type { MealRule, MealWishes } from "../../shared/allocation/types.ts";
import type { Food } from "../../shared/food/types.ts";
import type {
  BatchId,
  CauseId,
  DraftId,
  FoodId,
  GroupId,
  LotId,
  MemberId,
  RecipeId,
  RevisionId,
} from "../../shared/ids.ts";
import type { Profile } from "../../shared/people/types.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import type { DerivedReminder, ReminderChoice } from "../../shared/reminder/types.ts";
import type { Batch, Lot, Stock, StockChange } from "../../shared/stock/types.ts";
import type { TargetRule } from "../../shared/target/types.ts";
import type { Instant } from "../../shared/time.ts";
import type { KeepingWords, StandingWord } from "./keeping-words.ts";
import type { Publication, PublicationResult, RecipeTelling } from "./publication.ts";
import type { Reminders } from "./reminders.ts";
import type { Undelivered } from "./undelivered.ts";

/** One chat server's client group. */
export interface Group {
  readonly id: GroupId;
  readonly name: string;
  readonly coachRoleId: string | null;
  /** Where reminders go when a member's direct messages are closed. */
  readonly reminderChannelId: string | null;
  /** Zone of members who have not set their own. */
  readonly zone: string;
  /** How figures are labelled: 21 CFR 101.9 or Regulation (EU) 1169/2011. */
  readonly labelStyle: "us" | "eu";
  /** Goes up with every change of the group's own foods: a book of them holds as long as this does. */
  readonly foodsVersion: number;
  /** Goes up with every publication and withdrawal: an index of the recipes holds as long as this does. */
  readonly recipesVersion: number;
}

export interface Member {
  readonly id: MemberId;
  readonly groupId: GroupId;
  readonly userId: string;
  readonly name: string;
  /** True once the member has chosen a zone of their own. */
  readonly zoneIsOwn: boolean;
  readonly choice: ReminderChoice;
  readonly deliverTo: "direct message" | "channel";
  /** Since when direct messages are known to be closed; null when they work. */
  readonly directClosedAt: Instant | null;
  readonly profile: Profile;
  /** Is told when a recipe that they have changes or is withdrawn. */
  readonly wantsRecipeNews: boolean;
  /** Goes up with every change of times or meals and every rewrite of the reminders; for `Replan.planVersion`. */
  readonly planVersion: number;
}

export interface Groups {
  /** The group, made with defaults when first seen. */
  open(id: GroupId, name: string): Promise<Group>;
  set(
    id: GroupId,
    patch: Partial<Pick<Group, "coachRoleId" | "reminderChannelId" | "zone" | "labelStyle">>,
  ): Promise<Group>;
}

export interface Members {
  /** A member of this group and the group, as both are kept; null where one was never seen. */
  known(groupId: GroupId, userId: string): Promise<{ group: Group; member: Member } | null>;
  /** The member of this group, made with the group's zone and the default times when first seen. */
  open(groupId: GroupId, userId: string, name: string): Promise<Member>;
  find(id: MemberId): Promise<Member | null>;
  /** The member of this group with this user id or, in any case, this very name; null when there is none, or several of the name. */
  inGroup(groupId: GroupId, userIdOrName: string): Promise<Member | null>;
  setProfile(id: MemberId, patch: Partial<Profile>): Promise<Member>;
  setRecipeNews(id: MemberId, isWanted: boolean): Promise<void>;
}

/** Foods that a group's coach typed from packs. Another group never sees them. */
export interface GroupFoods {
  /** In the order in which they were first added. */
  list(groupId: GroupId): Promise<readonly Food[]>;
  /**
   * Adds a food to the group, or replaces the group's food of the same name (folded); the replaced one's
   * id stays, so recipes that name it go by the new label. Twice with one cause is once.
   */
  put(input: {
    readonly groupId: GroupId;
    readonly by: MemberId;
    readonly causeId: CauseId;
    readonly now: Instant;
    readonly food: Food;
  }): Promise<{ readonly food: Food; readonly isNew: boolean }>;
}

export interface Targets {
  /** Every decision of a member, in the order taken. */
  list(memberId: MemberId): Promise<readonly TargetRule[]>;
  /** Adds a decision. Twice with one cause is once. */
  add(rule: TargetRule, causeId: CauseId): Promise<void>;
}

export interface PublishedRecipe {
  readonly id: RecipeId;
  readonly groupId: GroupId;
  readonly revisionId: RevisionId;
  readonly revisionNumber: number;
  readonly recipe: Recipe;
  /** The coach's standing word that it keeps longer than the chart says; null when there is none. */
  readonly longerWord: StandingWord | null;
}

export interface RecipeSummary {
  readonly id: RecipeId;
  readonly title: string;
  readonly portions: number;
  readonly tags: readonly string[];
}

/** Names of foods as the coach wrote them (folded) -> the food they said they mean. */
export type TakenFor = Readonly<Record<string, FoodId>>;

/** A recipe being written: the coach's own until it is published or dropped. */
export interface RecipeDraft {
  readonly id: DraftId;
  readonly groupId: GroupId;
  readonly by: MemberId;
  /** The first line of the text, or what it is called until there is one. */
  readonly title: string;
  readonly text: string;
  readonly takenFor: TakenFor;
  readonly changedAt: Instant;
}

export interface Drafts {
  /** A member's drafts, the one changed last first. */
  list(by: MemberId): Promise<readonly RecipeDraft[]>;
  find(id: DraftId): Promise<RecipeDraft | null>;
  /** Keeps a draft, new or changed. */
  save(draft: RecipeDraft): Promise<void>;
  drop(id: DraftId): Promise<void>;
}

export interface Recipes {
  /**
   * Newest revision by exact id or by title (case and accents folded); null when there is none in this
   * group. What was found before under the same `recipesVersion` is not looked for again.
   */
  find(
    groupId: GroupId,
    idOrTitle: string,
    recipesVersion?: number,
  ): Promise<PublishedRecipe | null>;
  /** Titles and tags that hold all words typed, by title, at most `limit`. Empty text lists all. */
  search(groupId: GroupId, typed: string, limit: number): Promise<readonly RecipeSummary[]>;
  /** The newest revision of every recipe that is not withdrawn, by title. To be kept for `recipesVersion`. */
  all(groupId: GroupId): Promise<readonly PublishedRecipe[]>;
  /** A revision of this group, whatever has been published since, also of a withdrawn recipe. */
  revision(groupId: GroupId, id: RevisionId): Promise<PublishedRecipe | null>;
  /** What the coach wrote for the newest revision; null when there is no such recipe in this group. */
  source(
    groupId: GroupId,
    id: RecipeId,
  ): Promise<{ readonly text: string; readonly takenFor: TakenFor } | null>;
  /** Hides a recipe; its revisions, batches and history stay. False when there is none to hide. `tell` goes out with it. */
  withdraw(groupId: GroupId, id: RecipeId, now: Instant, tell?: RecipeTelling): Promise<boolean>;
  /** Members who have portions of it in stock or cooked it since then, whichever revision. */
  whoHas(groupId: GroupId, id: RecipeId, since: Instant): Promise<readonly Member[]>;
  /**
   * Stores a new immutable revision: of the recipe of this title, or of a new recipe. `tell` is written with
   * it. Doing it twice with one cause gives the first result again.
   */
  publish(input: Publication): Promise<PublicationResult>;
  /**
   * The same for a revision of that very recipe, whose title becomes that of the revision. "title taken" when
   * another recipe of the group has the title, be it withdrawn.
   */
  publishOf(id: RecipeId, input: Publication): Promise<PublicationResult | "title taken">;
}

/** Everything one command changes about a member's stock: written whole, or not at all. */
export interface StockPlan {
  readonly change: StockChange;
  /** A batch that the change brings in. */
  readonly newBatch: Batch | null;
  /** Every lot the change touches, as it is afterwards (0 portions allowed). */
  readonly lots: readonly Lot[];
  /** The whole set of reminders that follow from the stock afterwards. */
  readonly reminders: readonly DerivedReminder[];
  /** As for `Replan` in `reminders.ts`. */
  readonly planVersion?: number;
  /** When the reminders must be derived again if nothing else happens; null when the stock is empty. */
  readonly replanAt: Instant | null;
}

export type RecordResult =
  /** Written. */
  | "recorded"
  /** This cause was recorded before; nothing written. */
  | "already"
  /** The stock, the times or the meals have another version by now; read and decide again. */
  | "moved on";

export interface Stocks {
  /** Lots with portions, their batches, and the version. */
  load(memberId: MemberId): Promise<Stock>;
  /** A lot of whoever, with its owner, also when it is empty by now. */
  findLot(lotId: LotId): Promise<{ readonly lot: Lot; readonly batch: Batch } | null>;
  /** Every lot a member ever had, empty ones too, the newest first: what a code on a box may stand for. */
  everyLot(
    memberId: MemberId,
  ): Promise<readonly { readonly id: LotId; readonly batchId: BatchId }[]>;
  /** The newest change that is neither undone nor an undo, with the lots it touched as they are now and their batches; null when there is none. */
  lastChange(memberId: MemberId): Promise<{
    readonly change: StockChange;
    readonly lots: readonly Lot[];
    readonly batches: readonly Batch[];
  } | null>;
  /** Whether a cause has been recorded, and as which change. */
  findByCause(causeId: CauseId): Promise<StockChange | null>;
  record(plan: StockPlan): Promise<RecordResult>;
  /** The whole ledger of a member, oldest first. For the balance and for export. */
  ledger(
    memberId: MemberId,
  ): Promise<{ readonly batches: readonly Batch[]; readonly changes: readonly StockChange[] }>;
}

export interface Meals {
  list(memberId: MemberId): Promise<readonly MealRule[]>;
  /** The rules, and what the member said of single meals. */
  wishes(memberId: MemberId): Promise<MealWishes>;
}

export interface Stores {
  readonly groups: Groups;
  readonly members: Members;
  readonly recipes: Recipes;
  readonly stocks: Stocks;
  readonly keepingWords: KeepingWords;
  readonly drafts: Drafts;
  readonly foods: GroupFoods;
  readonly targets: Targets;
  readonly meals: Meals;
  readonly reminders: Reminders;
  readonly undelivered: Undelivered;
}
