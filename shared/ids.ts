/** Branded ids: text that cannot be mistaken for another kind of id. Made only by the functions below. */
type Branded<Name extends string> = string & { readonly __id: Name };

export type GroupId = Branded<"group">;
export type MemberId = Branded<"member">;
export type RecipeId = Branded<"recipe">;
export type RevisionId = Branded<"revision">;
export type BatchId = Branded<"batch">;
export type LotId = Branded<"lot">;
export type ChangeId = Branded<"change">;
export type SlotRuleId = Branded<"slotRule">;
export type ReminderId = Branded<"reminder">;
export type TargetId = Branded<"target">;
export type DraftId = Branded<"draft">;
export type FoodId = Branded<"food">;
/** What caused a write: an interaction, a button of a delivered message, an import row. Unique for ever. */
export type CauseId = Branded<"cause">;

export const groupId = (text: string): GroupId => text as GroupId;
export const memberId = (text: string): MemberId => text as MemberId;
export const recipeId = (text: string): RecipeId => text as RecipeId;
export const revisionId = (text: string): RevisionId => text as RevisionId;
export const batchId = (text: string): BatchId => text as BatchId;
export const lotId = (text: string): LotId => text as LotId;
export const changeId = (text: string): ChangeId => text as ChangeId;
export const slotRuleId = (text: string): SlotRuleId => text as SlotRuleId;
export const reminderId = (text: string): ReminderId => text as ReminderId;
export const targetId = (text: string): TargetId => text as TargetId;
export const draftId = (text: string): DraftId => text as DraftId;
export const foodId = (text: string): FoodId => text as FoodId;
export const causeId = (text: string): CauseId => text as CauseId;
