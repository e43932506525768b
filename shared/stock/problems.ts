/** What can stand against a movement; wording in `commands/kit/say-problem.ts`. */
export type StockProblem =
  | { readonly code: "lot is gone" }
  | { readonly code: "portions not whole"; readonly asked: number }
  | { readonly code: "not so many portions"; readonly asked: number; readonly have: number }
  | { readonly code: "already frozen" }
  | { readonly code: "not in the freezer" }
  | { readonly code: "past its date"; readonly discardBy: string }
  | { readonly code: "no fridge days left after thawing" }
  | { readonly code: "cooked in the future"; readonly cookedAt: string }
  | { readonly code: "cooked too long ago"; readonly daysAgo: number; readonly keepsDays: number }
  | { readonly code: "froze more than cooked"; readonly froze: number; readonly cooked: number }
  | { readonly code: "nothing to undo" }
  | { readonly code: "thawed since" };
