/** What can stand against a movement; wording in `commands/kit/say-problem.ts`. */
export type StockProblem =
  | { readonly code: "lot is gone" }
  | { readonly code: "portions not halves"; readonly asked: number }
  | { readonly code: "not so many portions"; readonly asked: number; readonly have: number }
  | { readonly code: "already frozen" }
  | { readonly code: "not in the freezer" }
  | { readonly code: "past its date"; readonly discardBy: string }
  | { readonly code: "no fridge days left after thawing" }
  | { readonly code: "cooked in the future"; readonly cookedAt: string }
  | { readonly code: "cooked too long ago"; readonly daysAgo: number; readonly keepsDays: number }
  | { readonly code: "froze more than cooked"; readonly froze: number; readonly cooked: number }
  | { readonly code: "counted so already"; readonly portions: number }
  | { readonly code: "counted more than cooked"; readonly counted: number; readonly most: number }
  | { readonly code: "none in stock" }
  | { readonly code: "all past its date" }
  | { readonly code: "thawing still"; readonly readyAt: string }
  | { readonly code: "nothing to undo" }
  | { readonly code: "thawed since" };
