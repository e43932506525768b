import { Temporal } from "temporal-polyfill";
import type { Group, Member, PublishedRecipe, RecipeSummary } from "../../commands/kit/ports.ts";
import {
  batchId,
  causeId,
  changeId,
  groupId,
  lotId,
  memberId,
  recipeId,
  reminderId,
  revisionId,
  targetId,
} from "../../shared/ids.ts";
import { byChart } from "../../shared/keeping/coach-word.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
import type { Batch, Lot, Movement, StockChange } from "../../shared/stock/types.ts";
import type { TargetRule } from "../../shared/target/types.ts";
import { aboutDocument } from "./about-document.ts";
import { asMadeDocument } from "./as-made.ts";
import {
  allergensDocument,
  deliverToWord,
  figuresDocument,
  fromText,
  keepingDocument,
  labelStyleWord,
  movementWord,
  placeWord,
  recipeDocument,
  reminderKindWord,
  reminderStateWord,
  sumsDocument,
  tagsDocument,
  toInstant,
  toInstantOrNull,
  undoneWord,
  vulnerableDocument,
  wasteReasonWord,
  weekdaysDocument,
} from "./documents.ts";
import type { Prisma } from "./generated/client.ts";

// Rows as the database gives them, turned into the values of `shared/` and the ports.

export function toGroup(row: Prisma.GroupGetPayload<object>): Group {
  return {
    id: groupId(row.id),
    name: row.name,
    coachRoleId: row.coachRoleId,
    reminderChannelId: row.reminderChannelId,
    zone: row.zone,
    labelStyle: labelStyleWord.parse(row.labelStyle),
    foodsVersion: row.foodsVersion,
    recipesVersion: row.recipesVersion,
  };
}

export function toMember(row: Prisma.MemberGetPayload<{ include: { group: true } }>): Member {
  return {
    id: memberId(row.id),
    groupId: groupId(row.groupId),
    userId: row.userId,
    name: row.name,
    zoneIsOwn: row.zoneIsOwn,
    choice: {
      zone: row.zoneIsOwn ? row.zone : row.group.zone,
      morning: Temporal.PlainTime.from(row.morning),
      evening: Temporal.PlainTime.from(row.evening),
      quietFrom: Temporal.PlainTime.from(row.quietFrom),
      quietUntil: Temporal.PlainTime.from(row.quietUntil),
      pausedUntil: toInstantOrNull(row.pausedUntil),
      pausesSafety: row.pausesSafety,
    },
    deliverTo: deliverToWord.parse(row.deliverTo),
    directClosedAt: toInstantOrNull(row.directClosedAt),
    profile: {
      allergens: fromText(allergensDocument, row.allergens),
      vulnerable: fromText(vulnerableDocument, row.vulnerable),
      coachMaySetTargets: row.coachMaySetTargets,
    },
    wantsRecipeNews: row.wantsRecipeNews,
    planVersion: row.planVersion,
  };
}

/** What a revision is read with: its recipe, and the last word on how long it keeps. */
export const WITH_WORD = {
  keepingWords: { orderBy: { position: "desc" }, take: 1, include: { by: true } },
} as const satisfies Prisma.RevisionInclude;

/** A revision as it is read to be published. */
export type RevisionRow = Prisma.RevisionGetPayload<{
  include: { recipe: true } & typeof WITH_WORD;
}>;

/** `recipe` is its document where that has been read before. */
export function toPublished(
  row: RevisionRow,
  recipe: Recipe = fromText(recipeDocument, row.document),
): PublishedRecipe {
  const [word] = row.keepingWords;
  return {
    id: recipeId(row.recipeId),
    groupId: groupId(row.recipe.groupId),
    revisionId: revisionId(row.id),
    revisionNumber: row.number,
    recipe,
    longerWord:
      word?.kind === "given" ? { by: word.by?.name ?? null, at: toInstant(word.at) } : null,
  };
}

export function toSummary(
  row: Prisma.RecipeGetPayload<{ select: { id: true; title: true; portions: true; tags: true } }>,
): RecipeSummary {
  return {
    id: recipeId(row.id),
    title: row.title,
    portions: row.portions,
    tags: fromText(tagsDocument, row.tags),
  };
}

export function toBatch(row: Prisma.BatchGetPayload<object>): Batch {
  return {
    id: batchId(row.id),
    memberId: memberId(row.memberId),
    revisionId: revisionId(row.revisionId),
    title: row.title,
    portionWord: row.portionWord,
    portionsCooked: row.portionsCooked,
    cookedAt: toInstant(row.cookedAt),
    cookedOn: Temporal.PlainDate.from(row.cookedOn),
    cookedWeightG: row.cookedWeightG,
    portionG: row.portionG,
    // By the chart until it is known who eats: whoever forgets to ask shows the shorter time.
    keeping: byChart(fromText(keepingDocument, row.keeping)),
    perPortion: fromText(sumsDocument, row.perPortion),
    ...(row.asMade === null ? {} : { asMade: fromText(asMadeDocument, row.asMade) }),
  };
}

export function toLot(row: Prisma.LotGetPayload<object>): Lot {
  return {
    id: lotId(row.id),
    batchId: batchId(row.batchId),
    place: placeWord.parse(row.place),
    portions: row.halves / 2,
    since: Temporal.PlainDate.from(row.since),
    sinceAt: toInstant(row.sinceAt),
    usedDays: row.usedDays,
  };
}

function toMovement(row: Prisma.MovementGetPayload<object>): Movement {
  return {
    kind: movementWord.parse(row.kind),
    batchId: batchId(row.batchId),
    portions: row.halves / 2,
    from: row.fromLotId === null ? null : lotId(row.fromLotId),
    to: row.toLotId === null ? null : lotId(row.toLotId),
    at: toInstant(row.at),
    on: Temporal.PlainDate.from(row.on),
    undoes: undoneWord.nullable().parse(row.undoes),
    reason: wasteReasonWord.nullable().parse(row.reason),
  };
}

/** What a change is read with: its movements in the order they were written. */
export const WITH_MOVEMENTS = {
  movements: { orderBy: { position: "asc" } },
} as const satisfies Prisma.StockChangeInclude;

export function toChange(
  row: Prisma.StockChangeGetPayload<{ include: typeof WITH_MOVEMENTS }>,
): StockChange {
  return {
    id: changeId(row.id),
    memberId: memberId(row.memberId),
    version: row.version,
    causeId: causeId(row.causeId),
    recordedAt: toInstant(row.recordedAt),
    movements: row.movements.map(toMovement),
    undoes: row.undoesId === null ? null : changeId(row.undoesId),
  };
}

/** Columns of a reminder that make its value; the others are of the delivery. */
export type ReminderColumns = Pick<
  Prisma.ReminderGetPayload<object>,
  | "id"
  | "memberId"
  | "kind"
  | "key"
  | "dueAt"
  | "helpsUntil"
  | "about"
  | "state"
  | "attempts"
  | "nonce"
  | "reason"
>;

export function toReminder(row: ReminderColumns): ReminderRow {
  return {
    id: reminderId(row.id),
    memberId: memberId(row.memberId),
    kind: reminderKindWord.parse(row.kind),
    key: row.key,
    dueAt: toInstant(row.dueAt),
    helpsUntil: toInstant(row.helpsUntil),
    about: fromText(aboutDocument, row.about),
    state: reminderStateWord.parse(row.state),
    attempts: row.attempts,
    nonce: row.nonce,
    reason: row.reason,
  };
}

export function toTarget(row: Prisma.TargetGetPayload<object>): TargetRule {
  return {
    id: targetId(row.id),
    memberId: memberId(row.memberId),
    from: Temporal.PlainDate.from(row.from),
    weekdays: fromText(weekdaysDocument, row.weekdays),
    figures: fromText(figuresDocument, row.figures),
    setBy: row.setById === null ? null : memberId(row.setById),
    setAt: toInstant(row.setAt),
  };
}
